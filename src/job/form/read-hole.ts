/** What a job file says about one hole. */
import { readDepth, readLength } from '../../bolt/length.ts';
import { readNumber } from '../../bolt/numbers.ts';
import { readTorque } from '../../bolt/stages.ts';
import type { HoleSpec, Torque } from '../../model/types.ts';
import { type Spot, valueAt } from '../yaml/spot.ts';
import { asWritten, isTrueAt, type Reading, readAt, textAt } from './read-fields.ts';

export function readHole(reading: Reading, name: string, spot: Spot): HoleSpec {
  return {
    name,
    note: textAt(spot, 'note'),
    thick: readAt(reading, spot, 'thick', readLength, 'bad-length'),
    thread: readAt(reading, spot, 'thread', readDepth, 'bad-depth'),
    turns: readAt(reading, spot, 'turns', readNumber, 'bad-turns'),
    proud: readAt(reading, spot, 'proud', readLength, 'bad-length'),
    at: readPlace(reading, valueAt(spot, 'at')),
    torque: torqueAt(spot),
    into: textAt(spot, 'into'),
    wet: isTrueAt(spot, 'wet'),
    group: textAt(spot, 'group'),
    ...asWritten(spot, ['thick', 'thread', 'turns', 'proud']),
  };
}

export function torqueAt(spot: Spot | null): Torque | null {
  const text = textAt(spot, 'torque');
  return text === null ? null : readTorque(text);
}

/** Two figures in mm; left of the origin or above it they are negative. */
function readPlace({ report }: Reading, spot: Spot | null): [number, number] | null {
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
