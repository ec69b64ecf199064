/** Every kind of a job against every hole of a piece: what would go wrong, before it does. */

import type { Fit } from '../../bolt/fit/fit.ts';
import { MEASURES } from '../../bolt/fit/fit-measure.ts';
import { lookAlikes } from '../../bolt/thread/lookalikes.ts';
import type { Against } from '../../bolt/torque/against-hole.ts';
import { heldTorque } from '../../job/fold/against.ts';
import type { Correctable, Job, Kind, PieceNow } from '../../model/types.ts';
import { list } from '../../model/words.ts';
import { printItem } from '../../piece/row.ts';
import { fitsOf, swapsIn } from '../../plan/piece/answers.ts';
import { type Answer, answer, type Call, misuse } from '../base/command.ts';
import { correctedIn, correctedLines } from '../base/corrected.ts';
import { openPiece } from '../base/open-job.ts';
import { fitLengths } from './fit-lengths.ts';

/** What decides whether a bolt fits. */
const MEASURED: readonly Correctable[] = ['thick', 'thread', 'turns', 'proud', 'into'];

export interface HoleFits {
  hole: string;
  takes: string | null;
  fits: ({ kind: string } & Fit)[];
  /** Its printed torque against this hole; null where none is printed, or the bolt is not known. */
  torque: Against | null;
}

export function run(call: Call) {
  const opened = openPiece(call);
  if ('answer' in opened) return opened.answer;
  const { job, key, piece } = opened;
  const name = call.words[2];
  if (call.options.lengths === true || name !== undefined) return oneHole(job, piece, name);
  const kinds = [...job.upper.kinds.values()];
  const fitOf = fitsOf(job, piece);
  const holes = piece.holes.map((hole) => ({
    hole: hole.name,
    takes: hole.belongs ? printItem(hole.belongs) : null,
    fits: kinds.flatMap((kind) => {
      const judged = fitOf(kind.letter, hole.name);
      return judged ? [{ kind: kind.letter, ...judged }] : [];
    }),
    torque: heldTorque(piece, hole, job.upper.kinds)?.against ?? null,
  }));
  const worst = swapsIn(job, piece);
  const alike = lookAlikes(kinds.flatMap((k) => k.thread ?? []));
  const corrections = correctedIn(job, key, MEASURED);
  const text = [
    fitText(piece, kinds, holes, worst.say),
    ...torqueLines(holes),
    ...alike.map(({ why }) => why),
    ...correctedLines(job, corrections),
  ].join('\n');
  return answer({ piece: key, holes, swaps: worst.swaps, lookAlikes: alike, corrections }, text);
}

/** One hole is asked for its lengths; both have to be said. */
function oneHole(job: Job, piece: PieceNow, name: string | undefined): Answer {
  const hole = piece.holes.find((h) => h.name === name);
  if (hole) return fitLengths(job, piece, hole);
  if (name === undefined) return misuse('usage', 'Which hole? fit FILE PIECE HOLE --lengths.');
  const has = piece.holes.map((h) => h.name);
  return misuse(
    'no-such-hole',
    `${piece.spec.name} has no hole ${name}: ${has.length === 0 ? 'no bolts of it are noted yet' : `it has ${list(has)}`}.`,
  );
}

function fitText(
  piece: PieceNow,
  kinds: readonly Kind[],
  holes: readonly HoleFits[],
  worst: string | null,
): string {
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
    'A question mark: not sure yet.',
    ...[...measure].map((m) => `To know more, ${MEASURES[m]}.`),
    ...(worst === null ? [] : ['', worst]),
  ].join('\n');
}

/** `Torque at 1 and 2: fine. 10 N·m: …`, once for all holes of which the same is said. */
function torqueLines(holes: readonly HoleFits[]): string[] {
  const said = new Map<string, string[]>();
  for (const { hole, torque } of holes) {
    if (torque === null) continue;
    const text = `${torque.verdict}. ${torque.why}`;
    said.set(text, [...(said.get(text) ?? []), hole]);
  }
  return [...said].map(([text, at]) => `Torque at ${list(at)}: ${text}`);
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
