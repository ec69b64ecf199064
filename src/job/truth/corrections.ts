/** What can be corrected about a thing, and how what was corrected is printed. */

import type { BeforeStep, Correctable, Job, Subject, TextSaid, Upper } from '../../model/types.ts';
import { holeNames } from '../../piece/order.ts';
import { holeSlots, isPrinted, pieceSlots, type Slots, taskSlots } from './corrected-upper.ts';

export { correctedUpper, isPrinted, silentTruths } from './corrected-upper.ts';
export { truthFault } from './figures.ts';
export { besidePrinted } from './said.ts';

/** A text that can be corrected, as it counts now. */
export interface Figure extends Subject, TextSaid {
  what: Correctable;
  /** Said for one way only. */
  way?: keyof BeforeStep;
  /** Its texts in `Job.upper`: one, or both where it is said for both ways. */
  said: readonly TextSaid[];
}

/**
 * What can be corrected about a piece (its holes included) or a task, in the order of a job file: as it counts now,
 * and as printed if it was corrected. Nothing for what the file does not know.
 */
export function figuresOf(job: Job, of: { piece: string } | { task: string }): Figure[] {
  const own = merged(figuresAt(job.upper, of));
  const piece = 'task' in of ? undefined : job.upper.pieces.get(of.piece);
  if (!piece) return own;
  const names = [...new Set([...holeNames(piece), ...piece.holes.keys()])];
  const holes = names.flatMap((name) => {
    const { ofPiece: _, ...slots } = holeSlots(piece, name);
    return figuresIn(slots);
  });
  return [...own, ...holes];
}

/** What counts for a hole, its own or what its piece says. */
export function figuresOfHole(job: Job, of: { piece: string; hole: string }): Figure[] {
  const piece = job.upper.pieces.get(of.piece);
  return piece && isPrinted(piece, of.hole) ? figuresAt(job.upper, of) : [];
}

function figuresAt(upper: Upper, { task, piece, hole }: Subject): Figure[] {
  const spec = upper.tasks.get(task ?? '');
  if (spec) return figuresIn(taskSlots(spec));
  const whole = upper.pieces.get(piece ?? '');
  if (!whole) return [];
  if (hole === undefined) return figuresIn(pieceSlots(whole));
  return figuresIn(holeSlots(whole, hole));
}

function figuresIn<T>({ spec, of, lenses, ofPiece }: Slots<T>): Figure[] {
  return lenses.flatMap(({ what, way, get }) => {
    const own = get(spec);
    const inherited = own.length === 0 ? (ofPiece?.(what) ?? null) : null;
    const texts = inherited === null ? own : [inherited];
    return texts.map((said): Figure => {
      const { text, printed } = said;
      return { ...of, what, ...(way ? { way } : {}), text, printed, said: [said] };
    });
  });
}

/** A text that stands for both ways, and is printed alike, is one text. */
function merged(figures: readonly Figure[]): Figure[] {
  const found: Figure[] = [];
  for (const figure of figures) {
    const { what, way, text, printed, said } = figure;
    const twin = found.findIndex(
      (f) => way && f.what === what && f.text === text && f.printed === printed && f.way !== way,
    );
    const { way: _, ...both } = found[twin] ?? figure;
    if (twin >= 0) found[twin] = { ...both, said: [...both.said, ...said] };
    else found.push(figure);
  }
  return found;
}
