/**
 * What is printed and not so on this machine. The person's part keeps the printed text for ever; the diary says what
 * is true, and from then on the truth counts and both are shown.
 */
import { holeNames } from '../piece/order.ts';
import {
  FROM_PIECE,
  type Lens,
  OF_HOLE,
  OF_PIECE,
  OF_TASK,
  spelled,
  truthFault,
} from './figures.ts';
import type {
  Correctable,
  Correction,
  Entry,
  HoleSpec,
  Job,
  PieceSpec,
  Subject,
  TaskSpec,
  Upper,
} from './types.ts';

export { truthFault } from './figures.ts';

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

/** What was corrected, by the place of its text: the piece's third route, the torque of hole 4. */
type Held = Map<string, Correction & { borrowed: boolean }>;

/** One place: what stands there, and the same thing with another text. */
interface Slots<T> {
  spec: T;
  /** Whose texts they are. */
  of: Subject;
  lenses: readonly Lens<T>[];
  /** What counts where the thing itself says nothing, and how that is printed. */
  else?: (what: Correctable) => { text: string; printed: string } | null;
}

/**
 * The upper part with what is true in place of what was corrected, and the corrections that hold. One holds while
 * its `was` is what the file, or an earlier correction, says there; the same upper part when none does.
 */
export function correctedUpper(
  upper: Upper,
  living: readonly Entry[],
): { upper: Upper; corrections: Correction[] } {
  const held: Held = new Map();
  let now = upper;
  for (const entry of living) if (entry.verb === 'corrected') now = correct(now, entry, held);
  const said = new Map<string, Correction>();
  for (const { borrowed: _, ...c } of held.values()) {
    const { piece, hole, task, what, printed, says } = c;
    said.set(JSON.stringify([piece, hole, task, what, printed, says]), c);
  }
  return { upper: now, corrections: [...said.values()] };
}

function correct(upper: Upper, entry: Entry, held: Held): Upper {
  const what = entry.value as Correctable;
  if (truthFault(what, entry.says ?? '') !== null) return upper;
  const task = upper.tasks.get(entry.task ?? '');
  if (task) {
    const next = replaced(taskSlots(task), entry, held);
    return next === task ? upper : { ...upper, tasks: new Map(upper.tasks).set(task.key, next) };
  }
  const piece = upper.pieces.get(entry.piece ?? '');
  if (!piece) return upper;
  const next = entry.hole
    ? entry.hole.reduce((spec, hole) => inHole(spec, hole, entry, held), piece)
    : replaced(pieceSlots(piece), entry, held);
  return next === piece ? upper : { ...upper, pieces: new Map(upper.pieces).set(piece.key, next) };
}

function inHole(piece: PieceSpec, name: string, entry: Entry, held: Held): PieceSpec {
  // A hole that only the diary knows is none of the file's: a name more in it would count as a hole of the row.
  if (!isPrinted(piece, name)) return piece;
  const printed = (what: Correctable, text: string) =>
    held.get(idOf({ piece: piece.key }, what))?.printed ?? text;
  const slots = holeSlots(piece, name, printed);
  const next = replaced(slots, entry, held);
  return next === slots.spec ? piece : { ...piece, holes: new Map(piece.holes).set(name, next) };
}

/** Whether the file has this hole. */
export function isPrinted(piece: PieceSpec, hole: string): boolean {
  return piece.holes.has(hole) || holeNames(piece).includes(hole);
}

function taskSlots(spec: TaskSpec): Slots<TaskSpec> {
  return { spec, of: { task: spec.key }, lenses: OF_TASK };
}

function pieceSlots(spec: PieceSpec): Slots<PieceSpec> {
  return { spec, of: { piece: spec.key }, lenses: OF_PIECE };
}

function holeSlots(
  piece: PieceSpec,
  name: string,
  printed: (what: Correctable, text: string) => string,
): Slots<HoleSpec> {
  return {
    spec: piece.holes.get(name) ?? bareHole(name),
    of: { piece: piece.key, hole: name },
    lenses: OF_HOLE,
    else: (what) => {
      const [text] = FROM_PIECE.includes(what)
        ? OF_PIECE.filter((lens) => lens.what === what).flatMap((lens) => lens.get(piece))
        : [];
      return text === undefined ? null : { text, printed: printed(what, text) };
    },
  };
}

function bareHole(name: string): HoleSpec {
  const nothing = { note: null, thick: null, thread: null, turns: null, proud: null };
  return { name, ...nothing, at: null, torque: null, into: null, wet: false, group: null };
}

/** The thing with what is true wherever it says what the entry calls printed; the same thing where it does not. */
function replaced<T>(slots: Slots<T>, entry: Entry, held: Held): T {
  const what = entry.value as Correctable;
  const was = spelled(what, entry.was ?? '');
  const says = spelled(what, entry.says ?? '');
  let { spec } = slots;
  if (was === says) return spec;
  for (const lens of slots.lenses.filter((l) => l.what === what)) {
    const own = lens.get(spec);
    const inherited = own.length === 0 ? (slots.else?.(what) ?? null) : null;
    const texts = inherited ? [inherited.text] : own;
    const next = texts.flatMap((text, i) => {
      if (spelled(what, text) !== was) return [text];
      const id = idOf(slots.of, what, lens.way, i);
      const before = held.get(id);
      const printed = before?.printed ?? inherited?.printed ?? text;
      if (spelled(what, printed) === says) {
        held.delete(id);
        // Back to what its piece says: then it says nothing of its own, as before.
        return before?.borrowed && slots.else?.(what)?.text === printed ? [] : [printed];
      }
      const borrowed = before?.borrowed ?? inherited !== null;
      held.set(id, { ...slots.of, what, printed, says, id: entry.id, at: entry.at, borrowed });
      return [says];
    });
    if (next.join('\n') !== texts.join('\n')) spec = lens.set(spec, next);
  }
  return spec;
}

function idOf(of: Subject, what: Correctable, way = '', index = 0): string {
  return [of.task ?? '', of.piece ?? '', of.hole ?? '', what, way, index].join('\n');
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
  if (!FROM_PIECE.includes(what) || (own && lens && lens.get(own).length > 0)) return null;
  return corrections.find(here({ piece: of.piece }))?.printed ?? null;
}

/** A text with how it is printed behind it, where that is not so. */
export function withPrinted(job: Job, of: Subject, what: Correctable, text: string): string {
  const printed = printedOf(job, of, what, text);
  return printed === null ? text : besidePrinted(text, printed);
}

/** `8 N·m, bulletin 12 (not 10 N·m, manual 2-17, as printed)`. */
export function besidePrinted(text: string, printed: string): string {
  const bare = (said: string) => said.replace(/(?<!\.)\.$/, '');
  return `${bare(text)} (not ${bare(printed)}, as printed)`;
}
