/** Bolts that were set to another figure than the one printed, and holes whose printed figure is for another thread. */
import { readKind } from '../../bolt/read/kind.ts';
import { convert, printQuantity } from '../../bolt/read/units.ts';
import { sameThread } from '../../bolt/thread/threads.ts';
import { fullOf, readStages } from '../../bolt/torque/stages.ts';
import { aim } from '../../bolt/torque/wrench.ts';
import type { Entry, HoleNow, Job, PassSpec, PieceNow, Quantity } from '../../model/types.ts';
import { list } from '../../model/words.ts';
import { passesAt } from '../../piece/passes.ts';
import { livingAt } from './living-of.ts';

/** A setting may be off by so much of the printed figure: the steps of a scale (common practice, no source). */
const OFF = 0.1;

/** The torque that a text says, all of it read; null: it says none. */
export function torqueIn(set: string) {
  const read = readStages(set);
  return read.rest.length === 0 ? fullOf(read) : null;
}

/** What was set is another figure than the one to set. */
export function isOff(set: string, figure: Quantity): boolean {
  return wayOff(set, figure) !== null;
}

/** Whether it was set above or below; null within a tenth, and where one of the two cannot be read. */
function wayOff(set: string, figure: Quantity): 'above' | 'below' | null {
  const typed = torqueIn(set);
  const value = typed && convert(aim(typed), typed.unit, figure.unit);
  if (value === null || value === undefined) return null;
  const [low, high] = [figure.value * (1 - OFF), (figure.to ?? figure.value) * (1 + OFF)];
  if (value > high) return 'above';
  return value < low ? 'below' : null;
}

/** `printed`: the figure to set, in its unit; `way`: on which side of it. */
export interface OtherFigure {
  hole: string;
  set: string;
  printed: string;
  way: 'above' | 'below';
}

/** Tight bolts whose last pass with a figure was set to another one, in the order of the piece. */
export function otherFigure(job: Job, piece: PieceNow): OtherFigure[] {
  const tight = piece.holes.filter((h) => h.state === 'tight');
  const marks = tight.length === 0 ? [] : ofThisRound(job, piece).filter((e) => e.verb === 'tight');
  if (marks.every((e) => e.set === undefined)) return [];
  return tight.flatMap((hole) => {
    const last = lastFigure(job, piece, hole);
    const figure = last?.torque?.quantity;
    const set = marks.findLast((e) => e.value === last?.name && isAt(e, hole))?.set;
    const way = figure && set !== undefined ? wayOff(set, figure) : null;
    if (!figure || set === undefined || way === null) return [];
    // What is printed is for another thread: nothing is held against it.
    if (otherThread(job, piece, hole) !== null) return [];
    return [{ hole: hole.name, set, printed: printQuantity(figure), way }];
  });
}

/** The last pass with a figure that this hole had. */
export function lastFigure(job: Job, { spec }: PieceNow, hole: HoleNow): PassSpec | undefined {
  return passesAt(spec, job.upper.kinds, hole.name).findLast(
    (p) => p.torque?.quantity && hole.passes.includes(p.name),
  );
}

function ofThisRound(job: Job, { spec, round }: PieceNow): Entry[] {
  return livingAt(job, spec.key).filter((e) => (job.rounds.get(e.id) ?? round) === round);
}

function isAt(entry: Entry, hole: HoleNow): boolean {
  return entry.hole === undefined || entry.hole.includes(hole.name);
}

/** `of`: the thread that the hole has since its mend; `printedFor`: that of the bolt for which the torque is printed. */
export interface OtherThread {
  of: string;
  printedFor: string;
}

/**
 * A hole that was mended to another size, by the words of its last mend ("insert M10"). Null where it was not, where
 * nobody named a size, and where the hole has a torque of its own: that was written for it.
 */
export function otherThread(job: Job, { spec }: PieceNow, hole: HoleNow): OtherThread | null {
  if (spec.holes.get(hole.name)?.torque) return null;
  const printedFor = job.upper.kinds.get(hole.claim?.kind ?? '')?.thread ?? null;
  const mend = mendOf(job, spec.key, hole);
  if (!mend || printedFor === null) return null;
  const of = threadsIn(mend.says ?? '');
  const isOther = of.length > 0 && of.every((thread) => sameThread(thread, printedFor) === false);
  return isOther ? { of: list(of), printedFor } : null;
}

/** The mend that a hole had last, in whichever round. */
export function mendOf(job: Job, piece: string, hole: HoleNow): Entry | undefined {
  const states = livingAt(job, piece).filter((e) => e.verb === 'state' && isAt(e, hole));
  return states.findLast((e) => e.value === 'mended');
}

/** A size in a text: `M10`, `M8x1`, `5/16-18`; a bare fraction or number is none. */
const SIZED =
  /\bM\s?\d+(?:[.,]\d+)?(?:\s?[x\u00d7]\s?\d(?:[.,]\d+)?)?\b|\b\d+(?:\/\d+)?\s?-\s?\d{2}\b|\b\d+\/\d+\s+UN[CF]\b/gi;

function threadsIn(text: string): string[] {
  const named = [...text.matchAll(SIZED)].flatMap(([word]) => readKind('', word).thread ?? []);
  return [...new Set(named)];
}

/** `1 set to 120 Nm, not 90 N·m`; holes alike together. Null where each is as printed. */
export function otherFigureSaid(found: readonly OtherFigure[]): string | null {
  const alike = Map.groupBy(found, ({ set, printed }) => `set to ${set}, not ${printed}`);
  const said = [...alike].map(([how, of]) => `${list(of.map((o) => o.hole))} ${how}`);
  return said.length === 0 ? null : said.join('; ');
}
