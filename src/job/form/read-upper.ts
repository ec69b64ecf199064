/** The person's part of a job file: kinds, pieces, tasks, what to buy. Filled as well as the file allows. */
import { type KindParts, kindFromParts, readKind } from '../../bolt/kind.ts';
import { oneLine } from '../../model/safe.ts';
import type { BuySpec, Kind, TaskSpec, TaskVerb, Upper } from '../../model/types.ts';
import { readItem, UNKNOWN } from '../../piece/row.ts';
import { NAME } from '../diary/entry.ts';
import { type PairSpot, type Spot, valueAt } from '../yaml/spot.ts';
import { isTrueAt, type Reading, textAt, textSpotAt, textsAt } from './read-fields.ts';
import { type PlacedPiece, readPiece } from './read-piece.ts';
import { nameOfKey } from './spec.ts';

export const TASK_VERBS: readonly TaskVerb[] = ['do', 'wait', 'adjust', 'test', 'decide'];

const KIND_PARTS = [
  'thread',
  'length',
  'head',
  'tool',
  'class',
  'threaded',
  'lh',
  'once',
  'note',
] as const satisfies readonly (keyof KindParts)[];

export interface PlacedUpper {
  upper: Upper;
  pieces: PlacedPiece[];
}

export function readUpper(reading: Reading, root: Spot | null): PlacedUpper {
  const pieces = pairsAt(root, 'pieces')
    .filter((p) => NAME.test(p.key))
    .map((p) => readPiece(reading, p.key, p.at, p.value));
  const upper: Upper = {
    version: readVersion(root),
    job: textAt(root, 'job') ?? '',
    machine: textAt(root, 'machine'),
    machineId: textAt(root, 'machine-id'),
    like: textsAt(root, 'like'),
    complaint: textAt(root, 'complaint'),
    found: textAt(root, 'found'),
    done: textAt(root, 'done'),
    kinds: mapOf(
      pairsAt(root, 'bolts').filter((p) => isKind(p.key)),
      readKindAt,
    ),
    pieces: new Map(pieces.map((p) => [p.spec.key, p.spec])),
    tasks: mapOf(
      pairsAt(root, 'tasks').filter((p) => NAME.test(p.key)),
      readTask,
    ),
    buys: mapOf(
      pairsAt(root, 'buy').filter((p) => NAME.test(p.key)),
      readBuy,
    ),
  };
  return { upper, pieces };
}

export function readVersion(root: Spot | null): number {
  const text = textAt(root, 'putback') ?? '';
  return /^[1-9][0-9]{0,8}$/.test(text) ? Number(text) : 1;
}

export function isKind(letter: string): boolean {
  return letter !== UNKNOWN && readItem(letter)?.with.length === 0;
}

export function pairsAt(root: Spot | null, key: string): PairSpot[] {
  const value = valueAt(root, key);
  return value?.is === 'map' ? [...value.pairs.values()] : [];
}

function mapOf<T>(pairs: readonly PairSpot[], read: (pair: PairSpot) => T): Map<string, T> {
  return new Map(pairs.map((pair) => [pair.key, read(pair)]));
}

function readKindAt({ key, value }: PairSpot): Kind {
  if (value.is !== 'map') return readKind(key, value.is === 'text' ? oneLine(value.text) : '');
  const parts: KindParts = {};
  for (const part of KIND_PARTS) {
    const text = textAt(value, part);
    if (text !== null) parts[part] = text;
  }
  return kindFromParts(key, parts);
}

/** A task without a verb is a fault, and is shown by its name. */
function readTask({ key, value }: PairSpot): TaskSpec {
  const verb = TASK_VERBS.find((v) => textSpotAt(value, v)) ?? 'do';
  return {
    key,
    verb,
    say: textAt(value, verb) ?? nameOfKey(key),
    before: textsAt(value, 'before'),
    after: textsAt(value, 'after'),
    while: textsAt(value, 'while'),
    limit: textAt(value, 'limit'),
    when: textAt(value, 'when'),
    takes: textAt(value, 'takes'),
    note: textAt(value, 'note'),
  };
}

function readBuy({ key, value }: PairSpot): BuySpec {
  const short = value.is === 'text' ? oneLine(value.text) : null;
  return {
    key,
    what: short ?? textAt(value, 'what') ?? nameOfKey(key),
    price: textAt(value, 'price'),
    count: textAt(value, 'count'),
    from: textAt(value, 'from'),
    once: isTrueAt(value, 'once'),
    for: textsAt(value, 'for'),
    note: textAt(value, 'note'),
  };
}
