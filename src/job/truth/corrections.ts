/** What can be corrected about a thing, and how what was corrected is printed. */

import type { BeforeStep, Correctable, Job, Subject } from '../../model/types.ts';
import { holeNames } from '../../piece/order.ts';
import {
  holeSlots,
  isPrinted,
  pieceSlots,
  placeOfPiece,
  placeOfText,
  type Slots,
  taskSlots,
} from './corrected-upper.ts';
import { inWords, type TextSaid } from './said.ts';

export { correctedUpper, isPrinted, placeOfText, silentTruths } from './corrected-upper.ts';
export { truthFault } from './figures.ts';
export { besidePrinted } from './said.ts';

/** A text that can be corrected, as it counts now. */
export interface Figure extends Subject, TextSaid {
  what: Correctable;
  /** Said for one way only. */
  way?: keyof BeforeStep;
  /** Where it stands: one place, or both where it is said for both ways. */
  places: readonly string[];
}

/**
 * What can be corrected about a piece (its holes included) or a task, in the order of a job file: as it counts now,
 * and as printed if it was corrected. Nothing for what the file does not know.
 */
export function figuresOf(job: Job, of: { piece: string } | { task: string }): Figure[] {
  const own = merged(figuresAt(job, of));
  const piece = 'task' in of ? undefined : job.upper.pieces.get(of.piece);
  if (!piece) return own;
  const names = [...new Set([...holeNames(piece), ...piece.holes.keys()])];
  const holes = names.flatMap((name) => {
    const { ofPiece: _, ...slots } = holeSlots(piece, name);
    return figuresIn(job, slots);
  });
  return [...own, ...holes];
}

/** What counts for a hole, its own or what its piece says. */
export function figuresOfHole(job: Job, of: { piece: string; hole: string }): Figure[] {
  const piece = job.upper.pieces.get(of.piece);
  return piece && isPrinted(piece, of.hole) ? figuresAt(job, of) : [];
}

/**
 * The texts of one key as they count, in the order of the file; of a caution or a tip for one way, where one is named. Of a
 * hole that says nothing, what its piece says.
 */
export function textsSaid(
  job: Job,
  of: Subject,
  what: Correctable,
  way?: keyof BeforeStep,
): TextSaid[] {
  return figuresAt(job, of)
    .filter((f) => f.what === what && (f.way === undefined || way === undefined || f.way === way))
    .map(({ text, printed, places: [place = ''] }) => ({ text, printed, place }));
}

/** The one text of a key; null where nothing is said. */
export function textSaid(job: Job, of: Subject, what: Correctable): TextSaid | null {
  return textsSaid(job, of, what)[0] ?? null;
}

/** The same in words alone. */
export function textInWords(job: Job, of: Subject, what: Correctable): string | null {
  const said = textSaid(job, of, what);
  return said && inWords([said]);
}

function figuresAt(job: Job, { task, piece, hole }: Subject): Figure[] {
  const spec = job.upper.tasks.get(task ?? '');
  if (spec) return figuresIn(job, taskSlots(spec));
  const whole = job.upper.pieces.get(piece ?? '');
  if (!whole) return [];
  if (hole === undefined) return figuresIn(job, pieceSlots(whole));
  return figuresIn(job, holeSlots(whole, hole));
}

function figuresIn<T>(job: Job, { spec, of, lenses, ofPiece }: Slots<T>): Figure[] {
  return lenses.flatMap(({ what, way, get }) => {
    const own = get(spec);
    const inherited = own.length === 0 ? (ofPiece?.(what) ?? null) : null;
    const texts = inherited === null ? own : [inherited];
    return texts.map((text, i): Figure => {
      const place = inherited === null ? placeOfText(of, what, way, i) : placeOfPiece(of, what);
      const printed = job.correctedAt.get(place)?.printed ?? null;
      return { ...of, what, ...(way ? { way } : {}), text, printed, places: [place] };
    });
  });
}

/** A text that stands for both ways, and is printed alike, is one text. */
function merged(figures: readonly Figure[]): Figure[] {
  const found: Figure[] = [];
  for (const figure of figures) {
    const { what, way, text, printed, places } = figure;
    const twin = found.findIndex(
      (f) => way && f.what === what && f.text === text && f.printed === printed && f.way !== way,
    );
    const { way: _, ...both } = found[twin] ?? figure;
    if (twin >= 0) found[twin] = { ...both, places: [...both.places, ...places] };
    else found.push(figure);
  }
  return found;
}
