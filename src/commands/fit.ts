/** Every kind of a job against every hole of a piece: what would go wrong, before it does. */
import { type Fit, fit } from '../bolt/fit.ts';
import { placeOf } from '../job/place.ts';
import type { HoleNow, Job, Kind, PieceNow } from '../job/types.ts';
import { printItem } from '../piece/row.ts';
import { answer, type Call } from './command.ts';
import { openJob, unknownPiece } from './open-job.ts';

export interface HoleFits {
  hole: string;
  takes: string | null;
  fits: ({ kind: string } & Fit)[];
}

export function run(call: Call) {
  const opened = openJob(call.words[0] ?? '', call.world);
  if ('answer' in opened) return opened.answer;
  const key = call.words[1] ?? '';
  const piece = opened.job.pieces.get(key);
  if (!piece) return unknownPiece(key, opened.job);
  const kinds = kindsOf(opened.job);
  const holes = piece.holes.map((hole) => fitsOf(opened.job, piece, hole, kinds));
  return answer({ piece: key, holes }, fitText(piece, kinds, holes));
}

function kindsOf(job: Job): Kind[] {
  return [...job.upper.kinds.values()];
}

function fitsOf(job: Job, piece: PieceNow, hole: HoleNow, kinds: readonly Kind[]): HoleFits {
  const place = placeOf(piece, hole, job.upper.kinds);
  return {
    hole: hole.name,
    takes: hole.belongs ? printItem(hole.belongs) : null,
    fits: kinds.map((kind) => ({ kind: kind.letter, ...fit(kind, null, place) })),
  };
}

function fitText(piece: PieceNow, kinds: readonly Kind[], holes: readonly HoleFits[]): string {
  if (holes.length === 0) return `${piece.spec.name} has no bolts.`;
  const head = ['hole', 'takes', ...kinds.map((k) => k.letter)];
  const rows = holes.map((h) => [h.hole, h.takes ?? '?', ...h.fits.map(cell)]);
  const widths = head.map((_, i) => Math.max(...[head, ...rows].map((r) => r[i]?.length ?? 0)));
  const line = (cells: readonly string[]) =>
    cells
      .map((c, i) => c.padEnd(widths[i] ?? 0))
      .join('  ')
      .trimEnd();
  const measure = new Set(holes.flatMap((h) => h.fits.flatMap((f) => f.measure)));
  return [
    `${piece.spec.name}`,
    '',
    line(head),
    ...rows.map(line),
    '',
    `? not sure yet${measure.size > 0 ? `; to know more: ${[...measure].join(', ')}` : ''}`,
  ].join('\n');
}

/** `right`, `+10 longer?`, `bottoms 8`. */
function cell(f: { kind: string } & Fit): string {
  if (f.verdict === null) return '?';
  const by = amount(f);
  return `${f.verdict}${by}${f.sure ? '' : '?'}`;
}

function amount(f: Fit): string {
  const mm = (n: number | null) => (n === null ? '' : ` ${Math.round(Math.abs(n) * 10) / 10}`);
  if (f.verdict === 'bottoms') return mm(f.bottomsBy);
  if (f.verdict === 'through') return mm(f.sticksOut);
  if (f.verdict === 'longer' || f.verdict === 'shorter') return mm(f.byLength);
  return '';
}
