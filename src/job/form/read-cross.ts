/** What one part of the file says about another: pieces, kinds, holes and steps that are named and not there. */

import { type Keys, keyRows, keysWith } from '../../model/keys/key-row.ts';
import { BUY_KEYS, PIECE_KEYS, TASK_KEYS } from '../../model/keys/keys.ts';
import { didYouMean, near } from '../../model/nearword.ts';
import type { PieceSpec, Upper } from '../../model/types.ts';
import { drawnCells } from '../../piece/map.ts';
import { holeNames } from '../../piece/order.ts';
import type { Report } from '../faults/faults.ts';
import { type Spot, valueAt } from '../yaml/spot.ts';
import { textSpotsOf } from './read-fields.ts';
import { type PlacedPiece, pairsOf } from './read-keys.ts';
import type { Placed } from './read-row.ts';
import type { PlacedUpper } from './read-upper.ts';

export function checkCross(placed: PlacedUpper, root: Spot | null, report: Report): void {
  const { upper, pieces } = placed;
  for (const piece of pieces) {
    checkNames(piece, upper, report);
    checkKinds(piece, upper, report);
    checkHoles(piece, report);
    checkSequence(piece, report);
  }
  checkCircles(pieces, report);
  checkSteps(upper, root, report);
}

function checkNames({ places }: PlacedPiece, upper: Upper, report: Report): void {
  for (const [key, row] of keyRows(PIECE_KEYS)) {
    if (row.value !== 'pieceNames') continue;
    for (const { value, at } of places[key]) {
      if (upper.pieces.has(value)) continue;
      const slip = !row.mayStay || near(value, [...upper.pieces.keys()]) !== null;
      if (slip) unknownPiece(value, at, upper, report);
    }
  }
}

function unknownPiece(value: string, at: number, upper: Upper, report: Report): void {
  report('unknown-piece', at, () => {
    const names = [...upper.pieces.keys()];
    return { value, near: didYouMean(near(value, names)), known: firstNames(names) };
  });
}

/** More names than these help nobody. */
const MOST_NAMES = 20;

/** Names for a message. */
export function firstNames(names: readonly string[]): string {
  if (names.length === 0) return 'none';
  const more = names.length > MOST_NAMES ? [`and ${names.length - MOST_NAMES} more`] : [];
  return [...names.slice(0, MOST_NAMES), ...more].join(', ');
}

/** A job without `bolts:` has rows all the same; once kinds are listed, a letter that is not is a slip. */
function checkKinds({ places }: PlacedPiece, upper: Upper, report: Report): void {
  if (upper.kinds.size === 0) return;
  const letters = [...upper.kinds.keys()];
  const said = new Set<string>();
  for (const { value, at } of places.bolts) {
    if (upper.kinds.has(value) || said.has(value) || !/^[A-Za-z][A-Za-z0-9]*$/.test(value))
      continue;
    said.add(value);
    const other = letters.find((l) => l.toLowerCase() === value.toLowerCase());
    report('unknown-kind', at, () => {
      const word = didYouMean(other ?? near(value, letters));
      return { value, near: word, like: `${value}: M6x25` };
    });
  }
}

/** Keys with names of holes, each of which must be there. */
const NAME_HOLES = keysWith(PIECE_KEYS, ({ value }) => value === 'holes' || value === 'holeNames');

/** Row, map and `holes:` speak of the same holes. */
function checkHoles(piece: PlacedPiece, report: Report): void {
  const { spec, places, at } = piece;
  if (spec.row === null && spec.map === null) return;
  const names = holeNames({ ...spec, holes: spec.row === null ? new Map() : spec.holes });
  const drawn = drawnCells(spec).map((cell) => cell.name);
  const rowAt = places.bolts[0]?.at ?? at;
  if (spec.row !== null && drawn.length > 0 && drawn.length !== spec.row.length) {
    const lettered = places.holes.filter((h) => /[a-z]$/.test(h.value) && !drawn.includes(h.value));
    if (drawn.length + lettered.length !== spec.row.length) {
      const bolts = count(spec.row.length, 'bolt');
      const all = count(drawn.length, 'hole');
      report('row-length', rowAt, { bolts, other: 'the map', holes: all });
    }
  }
  const known = new Set([...names, ...drawn]);
  const named = NAME_HOLES.flatMap((key) => places[key]);
  for (const name of named) unknownHole(spec, known, name, report);
}

function count(n: number, what: string): string {
  return `${n} ${what}${n === 1 ? '' : 's'}`;
}

function unknownHole(
  { key }: PieceSpec,
  known: ReadonlySet<string>,
  { value, at }: Placed<string>,
  report: Report,
): void {
  if (known.has(value)) return;
  report('unknown-hole', at, () => ({
    piece: key,
    value,
    near: '',
    known: firstNames([...known]),
  }));
}

function checkSequence({ spec, places }: PlacedPiece, report: Report): void {
  const { sequence } = places;
  const seen = new Set<string>();
  const known = new Set(spec.row === null && spec.map === null ? [] : holeNames(spec));
  for (const name of sequence) {
    if (seen.has(name.value)) report('sequence-twice', name.at, { value: name.value });
    else if (known.size > 0) unknownHole(spec, known, name, report);
    seen.add(name.value);
  }
  const missing = [...known].filter((name) => !seen.has(name));
  const [start] = sequence;
  if (start && missing.length > 0)
    report('sequence-missing', start.at, { value: firstNames(missing) });
}

/** Each circle once, at the `under:` that closes it. */
function checkCircles(pieces: readonly PlacedPiece[], report: Report): void {
  const byKey = new Map(pieces.map((p) => [p.spec.key, p]));
  const finished = new Set<string>();
  for (const piece of pieces) {
    // Pieces on the way down, each with what it lies under that is still to be looked at.
    const way = [{ piece, next: 0 }];
    const onWay = new Set([piece.spec.key]);
    while (way.length > 0) {
      const top = way[way.length - 1];
      const link = top?.piece.places.under[top.next];
      if (!top || !link || finished.has(top.piece.spec.key)) {
        finished.add(top?.piece.spec.key ?? '');
        onWay.delete(top?.piece.spec.key ?? '');
        way.pop();
        continue;
      }
      top.next += 1;
      const below = byKey.get(link.value);
      if (!below || finished.has(link.value)) continue;
      if (onWay.has(link.value)) {
        const from = way.findIndex((w) => w.piece.spec.key === link.value);
        const circle = way.slice(from, from + MOST_NAMES).map((w) => w.piece.spec.key);
        const rest = way.length - from > MOST_NAMES ? ['…'] : [];
        report('circle', link.at, { value: [...circle, ...rest, link.value].join(' → ') });
        continue;
      }
      way.push({ piece: below, next: 0 });
      onWay.add(link.value);
    }
  }
}

function checkSteps(upper: Upper, root: Spot | null, report: Report): void {
  const check = (section: 'tasks' | 'buy', keys: Keys) => {
    const names = keysWith(keys, ({ value }) => value === 'stepNames');
    for (const { value } of pairsOf(valueAt(root, section))) {
      for (const key of names) {
        for (const { text, at } of textSpotsOf(valueAt(value, key))) {
          checkStep(text, at, upper, section, report);
        }
      }
    }
  };
  check('tasks', TASK_KEYS);
  check('buy', BUY_KEYS);
}

const STEP = /^(.*?)\s+(off|on)$/;

/** `alternator off`, `drain`; what is bought may be for a piece as such. */
function checkStep(
  text: string,
  at: number,
  upper: Upper,
  of: 'tasks' | 'buy',
  report: Report,
): void {
  const isForPiece = of === 'buy';
  const said = text.trim();
  const [, piece = said, way] = STEP.exec(said) ?? [];
  if (way === undefined ? upper.tasks.has(said) : upper.pieces.has(piece)) return;
  if (way === undefined && upper.pieces.has(said)) {
    const word = didYouMean(`${said} off or ${said} on`);
    if (!isForPiece) report('unknown-step', at, { value: said, near: word });
    return;
  }
  report('unknown-step', at, () => {
    const steps = [...upper.pieces.keys()].flatMap((p) => [`${p} off`, `${p} on`]);
    const known = [...upper.tasks.keys(), ...steps, ...(isForPiece ? upper.pieces.keys() : [])];
    return { value: said, near: didYouMean(near(said, known)) };
  });
}
