/** How each kind of value is read: whatever stands there, each answers, and says where the names in it stand. */
import { readDepth, readLength } from '../../bolt/read/length.ts';
import { readNumber } from '../../bolt/read/numbers.ts';
import { readTorque } from '../../bolt/torque/stages.ts';
import type { ValueName } from '../../model/keys/values.ts';
import { asPrinted } from '../../model/said.ts';
import { type BeforeStep, CARE_WORDS, type PassSpec, type Values } from '../../model/types.ts';
import { readPass } from '../../piece/passes.ts';
import type { Spot } from '../yaml/spot.ts';
import { nameOfKey } from './bare.ts';
import {
  type Reading,
  readVersion,
  textAt,
  textListOf,
  textOf,
  textSpotsOf,
  textsAt,
} from './read-fields.ts';
import { type Placed, readHoleNames, readPicture, readRow } from './read-row.ts';
import { readLikely } from './read-trace.ts';

/** A value of the file that is to be read. */
export interface Here extends Reading {
  spot: Spot | null;
  /** The name of what has the key. */
  of: string;
  /** What names are in it, and where; filled as it is read. */
  placed: Placed<string>[];
}

/** Those that are read from the value alone; what has keys of its own is in read-keys. */
export type PlainName = {
  [V in ValueName]: [Values[V]] extends [never] ? never : V;
}[Exclude<ValueName, 'holes' | 'kinds' | 'pieces' | 'tasks' | 'buys' | 'suspects' | 'checks'>];

export const READ_PLAIN: { readonly [V in PlainName]: (here: Here) => Values[V] } = {
  text: ({ spot }) => textOf(spot),
  title: ({ spot }) => textOf(spot) ?? '',
  called: ({ spot, of }) => textOf(spot) ?? nameOfKey(of),
  texts: ({ spot }) => textListOf(spot),
  truth: ({ spot }) => textOf(spot) === 'true',
  torque: ({ spot }) => {
    const text = textOf(spot);
    return text === null ? null : readTorque(text);
  },
  length: (here) => readBy(here, readLength, 'bad-length'),
  depth: (here) => readBy(here, readDepth, 'bad-depth'),
  number: (here) => readBy(here, readNumber, 'bad-turns'),
  pieceNames: (here) => {
    here.placed.push(...textSpotsOf(here.spot).map((t) => ({ value: t.text, at: t.at })));
    return here.placed.map((p) => p.value);
  },
  stepNames: ({ spot }) => textListOf(spot),
  holeNames: (here) => readHoles(here) ?? [],
  order: readHoles,
  row: (here) => {
    const row = readRow(here, here.spot);
    here.placed.push(...(row ?? []).map((r) => ({ value: r.value.kind, at: r.at })));
    return row?.map((r) => r.value) ?? null;
  },
  ways: ({ spot }) => readWays(spot),
  picture: (here) => readPicture(here, here.spot),
  pitch: readPitch,
  place: readPlace,
  passes: readPasses,
  care: ({ spot }) => {
    const care = textListOf(spot);
    return care.length === 0
      ? null
      : [...CARE_WORDS, 'none' as const].filter((c) => care.includes(c));
  },
  likely: (here) => readBy(here, readLikely, 'bad-likely'),
  version: ({ spot }) => readVersion(textOf(spot) ?? ''),
};

/** Reads a text by one of the small languages; what it cannot read is a fault and null. */
function readBy<T>(
  { spot, report }: Here,
  read: (text: string) => T | null,
  code: Parameters<Reading['report']>[0],
): T | null {
  if (spot?.is !== 'text') return null;
  const answer = read(spot.text);
  if (answer === null) report(code, spot.at, { value: spot.text });
  return answer;
}

function readHoles(here: Here): string[] | null {
  const names = readHoleNames(here, here.spot);
  here.placed.push(...(names ?? []));
  return names?.map((n) => n.value) ?? null;
}

/** A plain text, or several, stands for both ways. */
function readWays(spot: Spot | null): BeforeStep {
  if (spot?.is === 'map') {
    return {
      removal: textsAt(spot, 'removal').map(asPrinted),
      fitting: textsAt(spot, 'fitting').map(asPrinted),
    };
  }
  const both = textListOf(spot).map(asPrinted);
  return { removal: both, fitting: both };
}

/** One figure for both directions, or one across and one down. */
function readPitch({ spot, report }: Here): [number, number] | null {
  const figures = textSpotsOf(spot).map((t) => {
    const mm = readLength(t.text);
    if (mm !== null && mm > 0) return mm;
    report('bad-pitch', t.at, { value: t.text });
    return null;
  });
  const [x, y = x] = figures;
  if (figures.length > 2 || typeof x !== 'number' || typeof y !== 'number') return null;
  return [x, y];
}

/** Two figures in mm; left of the origin or above it they are negative. */
function readPlace({ spot, report }: Here): [number, number] | null {
  if (spot?.is !== 'list' || spot.items.length !== 2) return null;
  const [x, y] = spot.items.map((item) => {
    if (item.is !== 'text') return null;
    const minus = /^[-−]\s*/.exec(item.text);
    const mm = readLength(minus ? item.text.slice(minus[0].length) : item.text);
    if (mm === null) report('bad-place', item.at, { value: item.text });
    return mm === null ? null : minus ? -mm : mm;
  });
  return typeof x === 'number' && typeof y === 'number' ? [x, y] : null;
}

/** Each pass a text, or a mapping of its parts; what is none is left out. */
function readPasses({ spot, report }: Here): PassSpec[] | null {
  if (spot === null) return null;
  const items = spot.is === 'list' ? spot.items : [spot];
  let angle: string | null = null;
  return items.flatMap((item) => {
    const text = item.is === 'text' ? item.text : passText(item);
    if (text === null) return [];
    const pass = readPass(text);
    if (pass === null) report('bad-pass', item.at, { value: text });
    if (pass?.name === 'angle') angle = text;
    // Nobody shall click a bolt that was turned by an angle: it is told, and no pass.
    if (pass?.name === 'final' && angle !== null) {
      report('final-after-angle', item.at, { value: `${text}, after ${angle}` });
      return [];
    }
    return pass ?? [];
  });
}

function passText(spot: Spot): string | null {
  const name = textAt(spot, 'name');
  if (name === null) return null;
  const after = textAt(spot, 'after');
  const parts = [name, textAt(spot, 'torque'), textAt(spot, 'angle'), after && `after ${after}`];
  return parts.filter((part) => part !== null && part !== '').join(' ');
}
