/**
 * What can be set, in a bench (`bench.yaml`) and by the user (`settings.yaml`): one row a setting. Read as job files
 * are: what cannot be read is told with its place and the way out, and counts as not said. No setting names a command.
 */
import { readLength } from '../bolt/read/length.ts';
import { convert, readQuantity } from '../bolt/read/units.ts';
import type { Wrench } from '../bolt/torque/wrench.ts';
import { collector, type Report } from '../job/faults/faults.ts';
import { toFaults } from '../job/faults/place.ts';
import { openYaml } from '../job/yaml/doc.ts';
import { type PairSpot, type Spot, whatIs } from '../job/yaml/spot.ts';
import { type Hours, NO_HOURS } from '../model/hours.ts';
import { near } from '../model/nearword.ts';
import type { Fault } from '../model/types.ts';
import { readHours } from './hours.ts';

/** What is said at the place of a value. */
interface At {
  key: string;
  takes: string;
  like: string;
  report: Report;
}

interface Setting<T> {
  takes: string;
  /** As it stands in the file, behind the key. */
  like: string;
  /** Where it is not said. */
  none: T;
  /** Null: it cannot be read, and why was told. */
  read: (value: Spot, at: At) => T | null;
}

function wrong(value: Spot, { key, takes, like, report }: At): null {
  report('wrong-type', value.at, { key, takes, what: whatIs(value), like: `${key}: ${like}` });
  return null;
}

/** A text that means nothing here. */
function unreadable(value: { at: number; text: string }, { key, like, report }: At): null {
  report('bad-setting', value.at, { value: value.text, key, like: `${key}: ${like}` });
  return null;
}

/** One of a few words; `none` where it is not said. */
function choice<const T extends string, N extends T | null>(
  words: readonly [T, ...T[]],
  none: N,
  like: T,
): Setting<T | N> {
  const takes = `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`;
  const read = (value: Spot, at: At): T | null => {
    if (value.is !== 'text') return wrong(value, at);
    const found = words.find((word) => word === value.text);
    if (found !== undefined) return found;
    const close = near(value.text, words);
    at.report('bad-choice', value.at, {
      value: value.text,
      key: at.key,
      near: close === null ? '' : `Did you mean ${close}? `,
      known: words.join(', '),
    });
    return null;
  };
  return { takes, like, none, read };
}

/** One text or a list of them. */
function texts(value: Spot, at: At): string[] | null {
  if (value.is === 'text') return [value.text];
  if (value.is !== 'list') return wrong(value, at);
  return value.items.flatMap((item) =>
    item.is === 'text' ? [item.text] : (wrong(item, at) ?? []),
  );
}

/** An amount of money for an hour, in whatever coin: `40`, `40.50`. */
function price(value: Spot, at: At): number | null {
  if (value.is !== 'text') return wrong(value, at);
  return /^\d{1,6}(\.\d{1,2})?$/.test(value.text) ? Number(value.text) : unreadable(value, at);
}

// ---------------------------------------------------------------- torque wrenches

const WRENCH_KEYS = ['range', 'step', 'length'] as const;

function wrenches(value: Spot, at: At): Wrench[] | null {
  if (value.is !== 'map') return wrong(value, at);
  return [...value.pairs.values()].flatMap((pair) => wrench(pair, at) ?? []);
}

/** `{range: 5..25 N·m, step: 0.5, length: 380}`; without a range it is no torque wrench. */
function wrench({ key: name, at: place, value }: PairSpot, at: At): Wrench | null {
  if (value.is !== 'map') return wrong(value, at);
  reportUnknown(value.pairs, WRENCH_KEYS, 'a torque wrench', at.report);
  const part = (key: (typeof WRENCH_KEYS)[number]) => value.pairs.get(key)?.value;
  const range = part('range');
  if (range === undefined || range.is === 'nothing') {
    at.report('missing', place, { key: 'range', like: 'range: 5..25 N·m' });
    return null;
  }
  const read = range.is === 'text' ? readQuantity(range.text) : null;
  if (range.is !== 'text')
    return wrong(range, { ...at, key: 'range', takes: 'two torques', like: '5..25 N·m' });
  const isTorque = read !== null && convert(read.value, read.unit, 'N·m') !== null;
  if (!isTorque || read.to === null || !(read.value >= 0) || read.to <= read.value)
    return unreadable(range, { ...at, key: 'range', like: '5..25 N·m' });
  const mm = (key: 'step' | 'length', like: string): number | null => {
    const spot = part(key);
    if (spot === undefined || spot.is === 'nothing') return null;
    const found = spot.is === 'text' ? readLength(spot.text) : null;
    if (found !== null && found > 0) return found;
    return spot.is === 'text'
      ? unreadable(spot, { ...at, key, like })
      : wrong(spot, { ...at, key, takes: 'a figure', like });
  };
  return {
    name,
    from: read.value,
    to: read.to,
    unit: read.unit,
    step: mm('step', '0.5'),
    length: mm('length', '240'),
  };
}

// ---------------------------------------------------------------- presses of keys

/** A press given to a key of the screens, as it was written; offsets of both into the text. */
export interface GivenPress {
  key: string;
  keyAt: number;
  press: string;
  at: number;
}

function presses(value: Spot, at: At): GivenPress[] | null {
  if (value.is !== 'map') return wrong(value, at);
  return [...value.pairs.values()].flatMap((pair) => {
    const spots = pair.value.is === 'list' ? pair.value.items : [pair.value];
    const like = `${pair.key}: z`;
    if (spots.length === 0)
      at.report('wrong-type', pair.value.at, {
        key: pair.key,
        takes: 'a press',
        what: 'none',
        like,
      });
    return spots.flatMap((spot) =>
      spot.is === 'text'
        ? [{ key: pair.key, keyAt: pair.at, press: spot.text, at: spot.at }]
        : (wrong(spot, { ...at, key: pair.key, takes: 'a press', like: 'z' }) ?? []),
    );
  });
}

// ---------------------------------------------------------------- the tables

const BENCH = {
  commit: choice(['milestones', 'never'], 'never', 'milestones'),
  wrenches: {
    takes: 'torque wrenches by name',
    like: '{small: {range: 5..25 N·m, step: 0.5, length: 240}}',
    none: [],
    read: wrenches,
  } as Setting<Wrench[]>,
  hours: {
    takes: 'days with the hours you work',
    like: '{mon-fri: "18:00-21:00", sat: "9:00-17:00"}',
    none: NO_HOURS,
    read: (value, at) =>
      value.is === 'map'
        ? readHours(value.pairs, (text) => unreadable(text, at))
        : wrong(value, at),
  } as Setting<Hours>,
  photos: choice(['stay', 'copy'], null, 'copy'),
  'photos-from': {
    takes: 'folders where a camera puts its pictures',
    like: '[/media/camera/DCIM]',
    none: [],
    read: texts,
  } as Setting<string[]>,
  'photos-git': choice(['ignore', 'add'], 'ignore', 'add'),
  hour: {
    takes: 'what an hour of work is worth',
    like: '40',
    none: null,
    read: price,
  } as Setting<number | null>,
};

const USER = {
  benches: {
    takes: 'folders of benches',
    like: '[~/repairs, /mnt/old/repairs]',
    none: [],
    read: texts,
  } as Setting<string[]>,
  colours: choice(['usual', 'safe', 'none'], 'usual', 'safe'),
  'read-out': choice(['never', 'always'], 'never', 'always'),
  keys: {
    takes: 'names of keys with their presses',
    like: '{undo: [backspace, z]}',
    none: [],
    read: presses,
  } as Setting<GivenPress[]>,
  paper: choice(['a4', 'letter'], 'a4', 'letter'),
  signs: choice(['any', 'ascii'], 'any', 'ascii'),
};

type Read<S> = { [K in keyof S]: S[K] extends Setting<infer T> ? T : never };
export type BenchSettings = Read<typeof BENCH>;
export type UserSettings = Read<typeof USER>;

/** Keys that the table does not have. */
function reportUnknown(
  pairs: ReadonlyMap<string, PairSpot>,
  keys: readonly string[],
  owner: string,
  report: Report,
): void {
  for (const { key, at } of pairs.values()) {
    if (keys.includes(key)) continue;
    const close = near(key, keys);
    report('unknown-key', at, {
      key,
      owner,
      near: close === null ? '' : `Did you mean ${close}? `,
      known: close === null ? `Known here: ${keys.join(', ')}.` : '',
    });
  }
}

type Table = Readonly<Record<string, Setting<unknown>>>;

/** A line that can be written: `commit: milestones`. */
function first(table: Table): string {
  const [[key, { like }]] = Object.entries(table) as [[string, Setting<unknown>]];
  return `${key}: ${like}`;
}

function readAll<S extends Table>(
  table: S,
  owner: string,
  text: string,
  file: string,
  also: (settings: Read<S>, report: Report) => void = () => {},
): { settings: Read<S>; faults: Fault[] } {
  const { root, found } = openYaml(text);
  const { found: more, report } = collector();
  const pairs = root?.is === 'map' ? root.pairs : new Map<string, PairSpot>();
  if (root && root.is !== 'map' && root.is !== 'nothing')
    report('not-settings', root.at, { what: whatIs(root), owner, like: first(table) });
  reportUnknown(pairs, Object.keys(table), owner, report);
  const read = Object.entries(table).map(([key, { takes, like, none, read: reads }]) => {
    const value = pairs.get(key)?.value;
    if (value === undefined || value.is === 'nothing') return [key, none];
    return [key, reads(value, { key, takes, like, report }) ?? none];
  });
  const settings = Object.fromEntries(read) as Read<S>;
  also(settings, report);
  return {
    settings,
    faults: toFaults([...found, ...more], text, file),
  };
}

/** The settings of a bench; `file` is only named in the faults. Never throws. */
export const readBenchSettings = (text: string, file: string) =>
  readAll(BENCH, 'the settings of a bench', text, file);

/**
 * A user's own settings; `file` is only named in the faults. `also` may tell of more: which keys there are is known where
 * the screens are. Never throws.
 */
export const readUserSettings = (
  text: string,
  file: string,
  also?: (settings: UserSettings, report: Report) => void,
) => readAll(USER, 'your settings', text, file, also);
