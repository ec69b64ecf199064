/** Where the job stands, in words: what one reads on coming back after days. */
import type { Job, PieceNow } from '../job/types.ts';
import { nextStep } from '../plan/next.ts';
import type { Acts } from './act.ts';
import { show } from './moves.ts';
import type { Page } from './page.ts';
import { daysBetween, sayDate, sayDays } from './parts/days.ts';
import { fingerTight, lastMark, troubles } from './parts/job-now.ts';
import { names, stillIn, toSettle } from './parts/piece-now.ts';
import { sayDiffers, sayTrouble } from './parts/say-piece.ts';
import { scrolled } from './parts/scroll.ts';
import { bold, hanging, type Line, line, pad, wrap } from './parts/text.ts';
import { list } from './parts/words.ts';
import type { State } from './state.ts';

export const noteActs = {
  pieces: (state) => show(state, { screen: 'job', here: nextPiece(state) }),
} satisfies Acts;

/** The piece that the next step is about, where the list of pieces opens. */
export function nextPiece(state: State): string | null {
  return state.open ? (nextStep(state.open.job)?.piece ?? null) : null;
}

export function drawNote(state: State): Page {
  const { view } = state;
  const job = state.open?.job;
  if (!job || view.screen !== 'note') return { left: [], middle: () => [] };
  const last = lastMark(job);
  const days = last === null ? 0 : daysBetween(last, state.now);
  const since =
    last === null ? '' : days === 0 ? 'last mark today' : `${sayDays(days)} since the last mark`;
  return {
    left: line(bold(job.upper.job)),
    right: line(since),
    under: line(job.upper.machine ?? ''),
    middle: (columns, rows) => scrolled(noteLines(job, state.now, columns), view.top, rows),
    say: nextLines(job, state.columns),
  };
}

function nextLines(job: Job, columns: number): Line[] {
  const next = nextStep(job);
  return wrap(next ? `Next: ${next.say}` : 'Nothing is on its way.', columns, { bold: true });
}

const LABEL = 15;

function noteLines(job: Job, now: string, columns: number): Line[] {
  const pieces = [...job.pieces.values()];
  const row = (label: string, texts: readonly string[], none: string | null): Line[] => {
    if (texts.length === 0 && none === null) return [];
    const shown = texts.length === 0 ? [none ?? ''] : texts;
    return shown.flatMap((text, i) =>
      hanging(pad(line(i === 0 ? bold(label) : ''), LABEL), text, columns),
    );
  };
  return [
    ...row('Off', off(pieces), 'nothing'),
    ...row(
      'Aside',
      pieces.filter((p) => p.away === 'aside').map((p) => p.spec.name),
      null,
    ),
    ...row('Coming off', coming(pieces), null),
    ...row(
      'Trouble',
      perHole(pieces, troubles, (h) => (h.trouble ? sayTrouble(h.trouble) : '')),
      null,
    ),
    ...row('Differs', perHole(pieces, toSettle, sayDiffers), null),
    ...row('Finger-tight', fingers(pieces), 'nothing'),
    ...row('Last note', lastNote(job, now), null),
  ];
}

function off(pieces: readonly PieceNow[]): string[] {
  const away = pieces.filter((p) => p.away === 'removed');
  return away.map((p) => (p.tray === null ? p.spec.name : `${p.spec.name} (${p.tray})`));
}

function coming(pieces: readonly PieceNow[]): string[] {
  return pieces
    .filter((p) => p.where === 'off' && p.away === 'no')
    .map((p) => `${p.spec.name}: ${p.holes.length - stillIn(p).length} of ${p.holes.length} out`);
}

function perHole(
  pieces: readonly PieceNow[],
  which: (piece: PieceNow) => PieceNow['holes'],
  text: (hole: PieceNow['holes'][number]) => string,
): string[] {
  return pieces.flatMap((p) => which(p).map((h) => `${p.spec.name}, ${h.name}: ${text(h)}`));
}

/** More names than this are counted instead. */
const NAMED = 6;

function fingers(pieces: readonly PieceNow[]): string[] {
  return pieces.flatMap((p) => {
    const loose = fingerTight(p);
    if (loose.length === 0) return [];
    const of = `${loose.length} of ${p.holes.length}`;
    return [`${p.spec.name}: ${loose.length <= NAMED ? list(names(loose)) : of}`];
  });
}

function lastNote(job: Job, now: string): string[] {
  const entry = job.entries.findLast((e) => e.verb === 'note' && job.living.has(e.id));
  return entry ? [`${entry.value} (${sayDate(entry.at, now)})`] : [];
}
