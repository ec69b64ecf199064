/** What of a piece, a hole or a task can be corrected, as texts: taken out, and put in the place of others. */
import { readDepth, readLength } from '../../bolt/length.ts';
import { printNumber, readNumber } from '../../bolt/numbers.ts';
import { readTorque } from '../../bolt/stages.ts';
import { oneLine } from '../../model/safe.ts';
import type {
  AsWritten,
  BeforeStep,
  Correctable,
  HoleSpec,
  PassSpec,
  PieceSpec,
  TaskSpec,
  ThreadDepth,
} from '../../model/types.ts';
import { isHoleName } from '../../piece/names.ts';
import { readPass } from '../../piece/passes.ts';

/** One kind of text of a thing: all of them in their order, and the same thing with others in their place. */
export interface Lens<T> {
  what: Correctable;
  way?: keyof BeforeStep;
  get(spec: T): string[];
  set(spec: T, texts: string[]): T;
}

type Texts<T> = { [K in keyof T]: T[K] extends string[] ? K : never }[keyof T];
type Text<T> = { [K in keyof T]: T[K] extends string | null ? K : never }[keyof T];

const many = <T>(what: Correctable, key: Texts<T>): Lens<T> => ({
  what,
  get: (spec) => spec[key] as string[],
  set: (spec, texts) => ({ ...spec, [key]: texts }),
});

const one = <T>(what: Correctable, key: Text<T>): Lens<T> => ({
  what,
  get: (spec) => (spec[key] === null || spec[key] === '' ? [] : [spec[key] as string]),
  set: (spec, texts) => ({ ...spec, [key]: texts[0] ?? null }),
});

const torque = <T extends { torque: PieceSpec['torque'] }>(): Lens<T> => ({
  what: 'torque',
  get: (spec) => (spec.torque === null ? [] : [spec.torque.text]),
  set: (spec, [text]) => ({ ...spec, torque: text === undefined ? null : readTorque(text) }),
});

/** A figure that the reader made of its text; the text is kept beside it. */
function figure<K extends keyof AsWritten, V, T extends { asWritten?: AsWritten } & Record<K, V>>(
  key: K,
  read: (text: string) => V,
  print: (value: NonNullable<V>) => string,
): Lens<T> {
  return {
    what: key,
    get: (spec) => {
      const value: V = spec[key];
      const said = spec.asWritten?.[key] ?? (value == null ? '' : print(value));
      return said === '' ? [] : [said];
    },
    set: (spec, [text]) => {
      const { [key]: _, ...rest } = spec.asWritten ?? {};
      if (text === undefined) return { ...spec, [key]: null, asWritten: rest };
      return { ...spec, [key]: read(text), asWritten: { ...rest, [key]: text } };
    },
  };
}

const mm = (value: number) => `${printNumber(value)} mm`;
const depth = ({ from, to }: ThreadDepth) =>
  `${printNumber(from)}..${to === null ? '' : printNumber(to)}`;

function step(what: 'caution' | 'tip', way: keyof BeforeStep): Lens<PieceSpec> {
  return {
    what,
    way,
    get: (spec) => spec[what][way],
    set: (spec, texts) => ({ ...spec, [what]: { ...spec[what], [way]: texts } }),
  };
}

/** In the order of a job file. */
export const OF_PIECE: readonly Lens<PieceSpec>[] = [
  torque(),
  one('into', 'into'),
  figure('thick', readLength, mm),
  figure('thread', readDepth, depth),
  many('joint', 'joint'),
  many('loose', 'loose'),
  step('caution', 'removal'),
  step('caution', 'fitting'),
  step('tip', 'removal'),
  step('tip', 'fitting'),
  many('marks', 'marks'),
  many('routes', 'routes'),
  {
    what: 'sequence',
    get: ({ sequence }) => (sequence === null || sequence.length === 0 ? [] : [sequence.join(' ')]),
    set: (spec, [text]) => ({ ...spec, sequence: text === undefined ? null : holesIn(text) }),
  },
  {
    what: 'passes',
    get: (spec) => (spec.passes ?? []).map(printPass),
    set: (spec, texts) => ({ ...spec, passes: texts.flatMap((text) => readPass(text) ?? []) }),
  },
  one('takes', 'takes'),
  one('note', 'note'),
];

export const OF_HOLE: readonly Lens<HoleSpec>[] = [
  torque(),
  figure('thick', readLength, mm),
  figure('thread', readDepth, depth),
  figure('turns', readNumber, printNumber),
  figure('proud', readLength, mm),
  one('into', 'into'),
  one('note', 'note'),
];

/** What holds for a hole that has nothing of its own is what its piece says. */
export const FROM_PIECE: readonly Correctable[] = ['torque', 'thick', 'thread', 'into'];

export const OF_TASK: readonly Lens<TaskSpec>[] = [
  one('step', 'say'),
  one('limit', 'limit'),
  one('when', 'when'),
  one('takes', 'takes'),
  one('note', 'note'),
];

/** `part 5 N·m`, `angle 90°`, `again after 50 km`: a pass as one writes it. */
export function printPass({ name, torque, angle, after }: PassSpec): string {
  const turn = angle === null ? [] : [`${printNumber(angle)}°`];
  const later = after === null ? [] : [`after ${after}`];
  return [name, ...(torque === null ? [] : [torque.text]), ...turn, ...later].join(' ');
}

/** The words of an order of holes, whatever stands between them. */
export function holesIn(text: string): string[] {
  return text.match(/[^\s,;]+/g) ?? [];
}

/** A text in the spelling in which it is compared. */
export function spelled(what: Correctable, text: string): string {
  if (what === 'sequence') return holesIn(text).join(' ');
  const pass = what === 'passes' ? readPass(text) : null;
  return pass ? printPass(pass) : oneLine(text).trim();
}

/** The same text, or the same torque of the same page in another spelling (`10 Nm` for `10 N·m`). */
export function sameText(what: Correctable, one: string, other: string): boolean {
  if (spelled(what, one) === spelled(what, other)) return true;
  if (what !== 'torque') return false;
  const [a, b] = [readTorque(one), readTorque(other)];
  if (!a?.quantity || !b?.quantity) return false;
  const { value, to, unit } = a.quantity;
  const same = value === b.quantity.value && to === b.quantity.to && unit === b.quantity.unit;
  return same && (a.where ?? '').trim() === (b.where ?? '').trim();
}

const GOOD: Partial<Record<Correctable, [(text: string) => boolean, string]>> = {
  thick: [(text) => readLength(text) !== null, 'no length: 25, 25 mm or 1-1/2 in'],
  proud: [(text) => readLength(text) !== null, 'no length: 25, 25 mm or 1-1/2 in'],
  thread: [(text) => readDepth(text) !== null, 'no depth of thread: 3..19, 19 or 1/4..3/4 in'],
  turns: [(text) => readNumber(text) !== null, 'no number of turns: 15 or 7.5'],
  passes: [
    (text) => readPass(text) !== null,
    'no pass: snug, part 5 N·m, part 50 %, full, angle 90°, final or again after 50 km',
  ],
  sequence: [isOrder, 'no order of holes, each once: 1 4 2 3'],
};

function isOrder(text: string): boolean {
  const holes = holesIn(text);
  return holes.length > 0 && holes.every(isHoleName) && new Set(holes).size === holes.length;
}

/** What is wrong with a text typed as true for this figure, in a sentence; null when nothing is. */
export function truthFault(what: Correctable, text: string): string | null {
  if (text.trim() === '') return 'Say what is true here.';
  const [good, say] = GOOD[what] ?? [];
  return good === undefined || good(text) ? null : `${oneLine(text)} is ${say}.`;
}
