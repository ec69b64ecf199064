/** What a job file says about one piece. */
import { readDepth, readLength } from '../../bolt/length.ts';
import { oneLine } from '../../model/safe.ts';
import { type BeforeStep, CARES, type PassSpec, type PieceSpec } from '../../model/types.ts';
import { isHoleName } from '../../piece/names.ts';
import { readPass } from '../../piece/passes.ts';
import { type Spot, valueAt } from '../yaml/spot.ts';
import {
  asWritten,
  type Reading,
  readAt,
  textAt,
  textSpotAt,
  textSpotsOf,
  textsAt,
} from './read-fields.ts';
import { readHole, torqueAt } from './read-hole.ts';
import { type Placed, readHoleNames, readPicture, readRow } from './read-row.ts';
import { barePiece } from './spec.ts';

/** A piece, and where the names and kinds in it stand. */
export interface PlacedPiece {
  spec: PieceSpec;
  at: number;
  row: Placed<string>[];
  sequence: Placed<string>[];
  first: Placed<string>[];
  under: Placed<string>[];
  along: Placed<string>[];
  bridges: Placed<string>[];
  holes: Placed<string>[];
}

export function readPiece(reading: Reading, key: string, at: number, spot: Spot): PlacedPiece {
  const bare = barePiece(key);
  const row = readRow(reading, valueAt(spot, 'bolts'));
  const sequence = readHoleNames(reading, valueAt(spot, 'sequence'));
  const first = readHoleNames(reading, valueAt(spot, 'first')) ?? [];
  const [under, along, bridges] = [
    placedTexts(spot, 'under'),
    placedTexts(spot, 'along'),
    placedTexts(spot, 'bridges'),
  ];
  const holes = holePairs(spot);
  const care = textsAt(spot, 'care');
  const spec: PieceSpec = {
    ...bare,
    name: textAt(spot, 'name') ?? bare.name,
    under: under.map((u) => u.value),
    row: row?.map((r) => r.value) ?? null,
    torque: torqueAt(spot),
    into: textAt(spot, 'into'),
    thick: readAt(reading, spot, 'thick', readLength, 'bad-length'),
    thread: readAt(reading, spot, 'thread', readDepth, 'bad-depth'),
    joint: textsAt(spot, 'joint'),
    loose: textsAt(spot, 'loose'),
    caution: readSteps(valueAt(spot, 'caution')),
    tip: readSteps(valueAt(spot, 'tip')),
    marks: textsAt(spot, 'marks'),
    routes: textsAt(spot, 'routes'),
    tray: textAt(spot, 'tray'),
    map: readPicture(reading, valueAt(spot, 'map')),
    pitch: readPitch(reading, spot),
    holes: new Map(holes.map((h) => [h.value, readHole(reading, h.value, h.spot)])),
    sequence: sequence?.map((s) => s.value) ?? null,
    passes: readPasses(reading, valueAt(spot, 'passes')),
    care: care.length === 0 ? null : [...CARES, 'none' as const].filter((c) => care.includes(c)),
    first: first.map((f) => f.value),
    along: along.map((a) => a.value),
    bridges: bridges.map((b) => b.value),
    takes: textAt(spot, 'takes'),
    note: textAt(spot, 'note'),
    ...asWritten(spot, ['thick', 'thread']),
  };
  const kinds = row?.map((r) => ({ value: r.value.kind, at: r.at })) ?? [];
  const names = { under, along, bridges };
  return { spec, at, row: kinds, sequence: sequence ?? [], first, ...names, holes };
}

function placedTexts(spot: Spot, key: string): Placed<string>[] {
  return textSpotsOf(valueAt(spot, key)).map((t) => ({ value: t.text, at: t.at }));
}

function holePairs(spot: Spot): (Placed<string> & { spot: Spot })[] {
  const holes = valueAt(spot, 'holes');
  if (holes?.is !== 'map') return [];
  return [...holes.pairs.values()]
    .filter((pair) => isHoleName(pair.key))
    .map((pair) => ({ value: pair.key, at: pair.at, spot: pair.value }));
}

/** A plain text, or several, stands for both ways. */
function readSteps(spot: Spot | null): BeforeStep {
  if (spot?.is === 'map') {
    return { removal: textsAt(spot, 'removal'), fitting: textsAt(spot, 'fitting') };
  }
  const both = textSpotsOf(spot).map((t) => oneLine(t.text));
  return { removal: both, fitting: both };
}

/** Each pass a text, or a mapping of its parts; what is none is left out. */
function readPasses({ report }: Reading, spot: Spot | null): PassSpec[] | null {
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

/** One figure for both directions, or one across and one down. */
function readPitch({ report }: Reading, spot: Spot): [number, number] | null {
  const value = valueAt(spot, 'pitch');
  const figures = textSpotsOf(value).map((t) => {
    const mm = readLength(t.text);
    if (mm !== null && mm > 0) return mm;
    report('bad-pitch', t.at, { value: t.text });
    return null;
  });
  const [x, y = x] = figures;
  if (figures.length > 2 || typeof x !== 'number' || typeof y !== 'number') return null;
  return textSpotAt(spot, 'pitch') || figures.length > 0 ? [x, y] : null;
}
