/** What of a piece, a hole or a task can be corrected, as texts: taken out, and put in the place of others. */
import { readDepth, readLength } from '../../bolt/read/length.ts';
import { printNumber, readNumber } from '../../bolt/read/numbers.ts';
import { readTorque } from '../../bolt/torque/stages.ts';
import { fieldOf, type Keys, keyRows } from '../../model/keys/key-row.ts';
import { HOLE_KEYS, PIECE_KEYS, TASK_KEYS } from '../../model/keys/keys.ts';
import { type MeasureKey, valueNameOf } from '../../model/keys/known-keys.ts';
import type { CorrectedValue } from '../../model/keys/values.ts';
import { oneLine } from '../../model/safe.ts';
import { asPrinted } from '../../model/said.ts';
import type {
  AsWritten,
  BeforeStep,
  Correctable,
  HoleSpec,
  PassSpec,
  PieceSpec,
  TaskSpec,
  TextSaid,
  ThreadDepth,
  Torque,
} from '../../model/types.ts';
import { isHoleName } from '../../piece/names.ts';
import { readPass } from '../../piece/passes.ts';

/** One kind of text of a thing: all of them in their order, and the same thing with others in their place. */
export interface Lens<T> {
  what: Correctable;
  way?: keyof BeforeStep;
  get(spec: T): TextSaid[];
  set(spec: T, texts: TextSaid[]): T;
}

/** How texts of a kind of value are taken out and put in, compared, and when they can be read. */
interface Texts {
  of(what: Correctable, field: string): Lens<Fields>[];
  /** In the spelling in which two are compared. */
  spelled?(text: string): string;
  /** In another spelling the same all the same. */
  same?(one: string, other: string): boolean;
  /** Whether it can be read, and what it is where not. */
  good?: [(text: string) => boolean, string];
}

/** A thing as its fields; which of them is a text, a list or a figure is what the table of keys says. */
type Fields = Record<string, unknown> & { asWritten?: AsWritten };

/** The thing with the text of a figure or a list kept beside it, or without one. */
function withWritten(spec: Fields, key: keyof AsWritten, said: TextSaid | undefined): Fields {
  const { asWritten, ...bare } = spec;
  const { [key]: _, ...rest } = asWritten ?? {};
  const all = said === undefined ? rest : { ...rest, [key]: said };
  return Object.keys(all).length === 0 ? bare : { ...bare, asWritten: all };
}

/** A figure that the reader made of its text; the text is kept beside it. */
function measure<V>(
  read: (text: string) => V | null,
  print: (value: V) => string,
  no: string,
): Texts {
  return {
    of: (what, field) => [
      {
        what,
        get: (spec) => {
          const value = spec[field] as V | null;
          const said = spec.asWritten?.[field as MeasureKey];
          if (said) return [said];
          return value === null ? [] : [asPrinted(print(value))];
        },
        set: (spec, [said]) => {
          const value = said === undefined ? null : read(said.text);
          return withWritten({ ...spec, [field]: value }, field as MeasureKey, said);
        },
      },
    ],
    good: [(text) => read(text) !== null, no],
  };
}

/** One text, and what else was read of it. */
function single<V extends TextSaid>(read: (said: TextSaid) => V): Texts['of'] {
  return (what, field) => [
    {
      what,
      get: (spec) => {
        const said = spec[field] as V | null;
        return said === null || said.text === '' ? [] : [said];
      },
      set: (spec, [said]) => ({ ...spec, [field]: said === undefined ? null : read(said) }),
    },
  ];
}

const mm = (value: number) => `${printNumber(value)} mm`;
const depth = ({ from, to }: ThreadDepth) =>
  `${printNumber(from)}..${to === null ? '' : printNumber(to)}`;
const asItIs = (said: TextSaid) => said;

/** Each kind of value of which a manual can have a text wrong. */
const TEXTS: { readonly [V in CorrectedValue]: Texts } = {
  text: { of: single(asItIs) },
  verb: { of: (what) => single(asItIs)(what, 'say') },
  texts: {
    of: (what, field) => [
      {
        what,
        get: (spec) => spec[field] as TextSaid[],
        set: (spec, texts) => ({ ...spec, [field]: texts }),
      },
    ],
  },
  torque: {
    of: single(({ text, printed }): Torque => ({ ...readTorque(text), printed })),
    same: sameTorque,
  },
  length: measure(readLength, mm, 'no length: 25, 25 mm or 1-1/2 in'),
  depth: measure(readDepth, depth, 'no depth of thread: 3..19, 19 or 1/4..3/4 in'),
  number: measure(readNumber, printNumber, 'no number of turns: 15 or 7.5'),
  order: {
    of: (what, field) => [
      {
        what,
        get: (spec) => {
          const holes = spec[field] as string[] | null;
          return holes === null || holes.length === 0
            ? []
            : [spec.asWritten?.sequence ?? asPrinted(holes.join(' '))];
        },
        set: (spec, [said]) => {
          const next = { ...spec, [field]: said === undefined ? null : holesIn(said.text) };
          // As printed it is what its holes say.
          return withWritten(next, 'sequence', said?.printed ? said : undefined);
        },
      },
    ],
    spelled: (text) => holesIn(text).join(' '),
    good: [isOrder, 'no order of holes, each once: 1 4 2 3'],
  },
  ways: {
    of: (what, field) =>
      (['removal', 'fitting'] as const).map((way) => ({
        what,
        way,
        get: (spec) => (spec[field] as BeforeStep)[way],
        set: (spec, texts) => ({
          ...spec,
          [field]: { ...(spec[field] as BeforeStep), [way]: texts },
        }),
      })),
  },
  passes: {
    of: (what, field) => [
      {
        what,
        get: (spec) =>
          ((spec[field] as PassSpec[] | null) ?? []).map((pass) => ({
            text: printPass(pass),
            printed: pass.printed,
          })),
        set: (spec, texts) => ({
          ...spec,
          [field]: texts.flatMap(({ text, printed }) => {
            const pass = readPass(text);
            return pass ? [{ ...pass, printed }] : [];
          }),
        }),
      },
    ],
    spelled: (text) => {
      const pass = readPass(text);
      return pass ? printPass(pass) : oneLine(text).trim();
    },
    good: [
      (text) => readPass(text) !== null,
      'no pass: snug, part 5 N·m, part 50 %, full, angle 90°, final or again after 50 km',
    ],
  },
};

/** What can be corrected of a thing with these keys, in their order. */
function lensesOf<T>(keys: Keys): Lens<T>[] {
  const lenses = keyRows(keys).flatMap(([key, row]) =>
    row.corrected === true ? TEXTS[row.value].of(key as Correctable, fieldOf(key, row)) : [],
  );
  // The fields are those of the table that the type of the thing is made from.
  return lenses as unknown as Lens<T>[];
}

export const PIECE_TEXTS: readonly Lens<PieceSpec>[] = lensesOf(PIECE_KEYS);
export const HOLE_TEXTS: readonly Lens<HoleSpec>[] = lensesOf(HOLE_KEYS);
const STEP = TEXTS.verb.of('step', 'say') as unknown as Lens<TaskSpec>[];
export const TASK_TEXTS: readonly Lens<TaskSpec>[] = [...STEP, ...lensesOf<TaskSpec>(TASK_KEYS)];

/** `part 5 N·m`, `angle 90°`, `again after 50 km`: a pass as one writes it. */
function printPass({ name, torque, angle, after }: PassSpec): string {
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
  return TEXTS[valueNameOf(what)].spelled?.(text) ?? oneLine(text).trim();
}

/** The same text, or the same torque of the same page in another spelling (`10 Nm` for `10 N·m`). */
export function sameText(what: Correctable, one: string, other: string): boolean {
  if (spelled(what, one) === spelled(what, other)) return true;
  return TEXTS[valueNameOf(what)].same?.(one, other) ?? false;
}

function sameTorque(one: string, other: string): boolean {
  const [a, b] = [readTorque(one), readTorque(other)];
  if (!a?.quantity || !b?.quantity) return false;
  const { value, to, unit } = a.quantity;
  const same = value === b.quantity.value && to === b.quantity.to && unit === b.quantity.unit;
  return same && (a.where ?? '').trim() === (b.where ?? '').trim();
}

function isOrder(text: string): boolean {
  const holes = holesIn(text);
  return holes.length > 0 && holes.every(isHoleName) && new Set(holes).size === holes.length;
}

/** What is wrong with a text typed as true for this figure, in a sentence; null when nothing is. */
export function truthFault(what: Correctable, text: string): string | null {
  if (text.trim() === '') return 'Say what is true here.';
  const [good, say] = TEXTS[valueNameOf(what)].good ?? [];
  return good === undefined || good(text) ? null : `${oneLine(text)} is ${say}.`;
}
