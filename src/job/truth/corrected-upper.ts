/**
 * What is printed and not so on this machine. The person's part keeps the printed text for ever; the diary says what
 * is true, and from then on the truth counts and both are shown.
 */

import { HOLE_KEYS } from '../../model/keys/keys.ts';
import { ELSE_OF_PIECE, isSeveral, isWritable } from '../../model/keys/known-keys.ts';
import { asPrinted } from '../../model/said.ts';
import { bareFields } from '../../model/types/fields.ts';
import type {
  Correctable,
  Correction,
  Entry,
  HoleSpec,
  Job,
  PieceSpec,
  Subject,
  TaskSpec,
  TextSaid,
  Upper,
} from '../../model/types.ts';
import { holeNames } from '../../piece/order.ts';
import {
  HOLE_TEXTS,
  type Lens,
  PIECE_TEXTS,
  sameText,
  spelled,
  TASK_TEXTS,
  truthFault,
} from './figures.ts';

/** What was corrected, by the place of its text (`placeOf`): the piece's third route, the torque of hole 4. */
type Held = Map<string, Correction & { borrowed: boolean }>;

/** One place: what stands there, and the same thing with another text. */
export interface Slots<T> {
  spec: T;
  /** Whose texts they are. */
  of: Subject;
  lenses: readonly Lens<T>[];
  /** What counts where a hole itself says nothing: the text of its piece. */
  ofPiece?: (what: Correctable) => TextSaid | null;
}

/**
 * The upper part with what is true in place of what was corrected, and the corrections that hold. One holds while
 * its `was` is what the file, or an earlier correction, says there; the same upper part when none does.
 */
export function correctedUpper(
  upper: Upper,
  living: readonly Entry[],
): Pick<Job, 'upper' | 'corrections'> {
  const { now, held } = withTruths(upper, living);
  const said = new Map<string, Correction>();
  for (const { borrowed: _, ...c } of held.values()) {
    const { piece, hole, task, what, printed, says } = c;
    said.set(JSON.stringify([piece, hole, task, what, printed, says]), c);
  }
  return { upper: now, corrections: [...said.values()] };
}

function withTruths(upper: Upper, living: readonly Entry[]) {
  const held: Held = new Map();
  const silent: Entry[] = [];
  if (!living.some(({ verb }) => verb === 'corrected')) return { now: upper, held, silent };
  const written = lastWritten(living);
  let now = upper;
  for (const [i, entry] of living.entries()) {
    if (entry.verb !== 'corrected') continue;
    // A text that was put in anew is what counts: nobody has called that one not so.
    if (entry.hole === undefined && i < (written.get(`${entry.piece} ${entry.value}`) ?? -1))
      continue;
    const next = correct(now, entry, held);
    if (next === now) silent.push(entry);
    now = next;
  }
  return { now, held, silent };
}

/** The last place at which the one text of a key of a piece was written. */
function lastWritten(living: readonly Entry[]): Map<string, number> {
  const last = new Map<string, number>();
  for (const [i, { verb, piece, value }] of living.entries()) {
    if (verb !== 'written' || !isWritable(value) || isSeveral(value)) continue;
    last.set(`${piece} ${value}`, i);
  }
  return last;
}

/** What became of the truths that do not count. */
export interface SilentTruths {
  /** What they call printed stands in the file no longer. */
  lost: Entry[];
  /**
   * Two diaries brought together call the same printed text not so, and say two things instead: the entry that came
   * second, which does not count, and the correction that holds.
   */
  rivals: { entry: Entry; holds: Correction }[];
}

export function silentTruths(upper: Upper, living: readonly Entry[]): SilentTruths {
  const { held, silent } = withTruths(upper, living);
  const all = [...held.values()];
  const of = (entry: Entry) => (c: Correction) =>
    c.what === entry.value && c.piece === entry.piece && c.task === entry.task;
  const rivals = silent.flatMap((entry) => {
    const what = entry.value as Correctable;
    const [was, says] = [spelled(what, entry.was ?? ''), spelled(what, entry.says ?? '')];
    const holds = all
      .filter(of(entry))
      .find(
        (c) =>
          (entry.hole?.includes(c.hole ?? '') ?? c.hole === undefined) &&
          spelled(what, c.printed) === was &&
          c.says !== says,
      );
    return holds && truthFault(what, says) === null ? [{ entry, holds }] : [];
  });
  const lost = silent.filter((entry) => {
    const what = entry.value as Correctable;
    const says = entry.says ?? '';
    if (rivals.some((r) => r.entry === entry) || truthFault(what, says) !== null) return false;
    if (spelled(what, entry.was ?? '') === spelled(what, says)) return false;
    return !all.filter(of(entry)).some((c) => sameText(what, c.says, says));
  });
  return { lost, rivals };
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
  const slots = holeSlots(piece, name);
  const next = replaced(slots, entry, held);
  return next === slots.spec ? piece : { ...piece, holes: new Map(piece.holes).set(name, next) };
}

/** Whether the file has this hole. */
export function isPrinted(piece: PieceSpec, hole: string): boolean {
  return piece.holes.has(hole) || holeNames(piece).includes(hole);
}

export function taskSlots(spec: TaskSpec): Slots<TaskSpec> {
  return { spec, of: { task: spec.key }, lenses: TASK_TEXTS };
}

export function pieceSlots(spec: PieceSpec): Slots<PieceSpec> {
  return { spec, of: { piece: spec.key }, lenses: PIECE_TEXTS };
}

export function holeSlots(piece: PieceSpec, name: string): Slots<HoleSpec> {
  return {
    spec: piece.holes.get(name) ?? { name, ...bareFields(HOLE_KEYS) },
    of: { piece: piece.key, hole: name },
    lenses: HOLE_TEXTS,
    ofPiece: (what) => {
      if (!ELSE_OF_PIECE.includes(what)) return null;
      const [text] = PIECE_TEXTS.filter((lens) => lens.what === what).flatMap((l) => l.get(piece));
      return text ?? null;
    },
  };
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
    const inherited = own.length === 0 ? (slots.ofPiece?.(what) ?? null) : null;
    const texts = inherited === null ? own : [inherited];
    const next = texts.flatMap((text, i) => {
      if (!sameText(what, text.text, entry.was ?? '')) return [text];
      const id = placeOf(slots.of, what, lens.way, i);
      const before = held.get(id);
      const printed = text.printed ?? text.text;
      if (spelled(what, printed) === says) {
        held.delete(id);
        // Back to what its piece says: then it says nothing of its own, as before.
        return before?.borrowed && slots.ofPiece?.(what)?.text === printed
          ? []
          : [asPrinted(printed)];
      }
      const borrowed = before?.borrowed ?? inherited !== null;
      held.set(id, { ...slots.of, what, printed, says, id: entry.id, at: entry.at, borrowed });
      return [{ text: says, printed }];
    });
    if (!isSame(next, texts)) spec = lens.set(spec, next);
  }
  return spec;
}

function isSame(some: readonly TextSaid[], others: readonly TextSaid[]): boolean {
  const alike = ({ text, printed }: TextSaid, i: number) =>
    text === others[i]?.text && printed === others[i].printed;
  return some.length === others.length && some.every(alike);
}

/** Where a text stands: whose it is, its key, its way, and the how-manieth it is there, from 0. */
function placeOf(of: Subject, what: Correctable, way = '', index = 0): string {
  return [of.task ?? '', of.piece ?? '', of.hole ?? '', what, way, index].join('\n');
}
