/** What can be corrected about a thing, and how what was corrected is printed. */

import { ELSE_OF_PIECE } from '../../model/known-keys.ts';
import type { Correctable, Correction, Job, Subject } from '../../model/types.ts';
import { holeNames } from '../../piece/order.ts';
import { holeSlots, isPrinted, pieceSlots, type Slots, taskSlots } from './corrected-upper.ts';
import { OF_HOLE, spelled } from './figures.ts';
import { inWords, type Said } from './said.ts';

export { correctedUpper, isPrinted, silentTruths } from './corrected-upper.ts';
export { truthFault } from './figures.ts';
export { besidePrinted } from './said.ts';

/** A text that can be corrected. */
export interface Figure extends Subject {
  what: Correctable;
  /** Said for one way only. */
  way?: 'removal' | 'fitting';
  /** As it counts now. */
  text: string;
  /** As printed, where it was corrected. */
  printed: string | null;
}

/**
 * What can be corrected about a piece (its holes included) or a task, in the order of a job file: as it counts now,
 * and as printed if it was corrected. Nothing for what the file does not know.
 */
export function figuresOf(job: Job, of: { piece: string } | { task: string }): Figure[] {
  if ('task' in of) {
    const task = job.upper.tasks.get(of.task);
    return task ? figures(job, taskSlots(task)) : [];
  }
  const piece = job.upper.pieces.get(of.piece);
  if (!piece) return [];
  const names = [...new Set([...holeNames(piece), ...piece.holes.keys()])];
  const holes = names.flatMap((name) =>
    figures(job, { ...holeSlots(piece, name, (_, t) => t), else: () => null }),
  );
  return [...figures(job, pieceSlots(piece)), ...holes];
}

/** What counts for a hole, its own or what its piece says. */
export function figuresOfHole(
  job: Job,
  { piece: key, hole }: { piece: string; hole: string },
): Figure[] {
  const piece = job.upper.pieces.get(key);
  if (!piece || !isPrinted(piece, hole)) return [];
  return figures(
    job,
    holeSlots(piece, hole, (_, text) => text),
  );
}

function figures<T>(job: Job, slots: Slots<T>): Figure[] {
  const found: Figure[] = [];
  for (const { what, way, get } of slots.lenses) {
    const own = get(slots.spec);
    const inherited = own.length === 0 ? (slots.else?.(what) ?? null) : null;
    for (const text of inherited ? [inherited.text] : own) {
      const twin = found.find((f) => way && f.what === what && f.text === text && f.way !== way);
      // A text that stands for both ways is one text.
      if (twin) delete twin.way;
      else
        found.push({
          ...slots.of,
          what,
          ...(way ? { way } : {}),
          text,
          printed: printedOf(job, slots.of, what, text),
        });
    }
  }
  return found;
}

/** How the text that now counts is printed; null where nothing was corrected. */
export function printedOf(job: Job, of: Subject, what: Correctable, text: string): string | null {
  const { corrections } = job;
  if (corrections.length === 0) return null;
  const says = spelled(what, text);
  const here =
    ({ piece, hole, task }: Subject) =>
    (c: Correction) =>
      c.piece === piece && c.hole === hole && c.task === task && c.what === what && c.says === says;
  const found = corrections.find(here(of));
  if (found || of.hole === undefined || of.piece === undefined) return found?.printed ?? null;
  const own = job.upper.pieces.get(of.piece)?.holes.get(of.hole);
  const lens = OF_HOLE.find((l) => l.what === what);
  if (!ELSE_OF_PIECE.includes(what) || (own && lens && lens.get(own).length > 0)) return null;
  return corrections.find(here({ piece: of.piece }))?.printed ?? null;
}

/** A text, and how it is printed where that is not so. */
export function saidOf(job: Job, of: Subject, what: Correctable, text: string): Said {
  return { text, printed: printedOf(job, of, what, text) };
}

/** The same in words alone. */
export function withPrinted(job: Job, of: Subject, what: Correctable, text: string): string {
  return inWords([saidOf(job, of, what, text)]);
}
