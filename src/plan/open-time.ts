/**
 * The sealant's open time: from the moment at which all before the joint was seen to be ready, the tube is open. How
 * long, says the joint, in the words of the tube.
 */
import { countsOf } from '../job/fold/inside.ts';
import { type Instant, printInstant, readInstant } from '../model/time.ts';
import type { Job, PieceNow } from '../model/types.ts';
import { sayTime } from './days.ts';
import { readJoint } from './joint.ts';
import { type Line, type Lines, linesOf } from './lines.ts';
import { isBack } from './needed.ts';

export interface OpenTime {
  piece: string;
  name: string;
  /** RFC 3339, in the zone of now: closed and tight by then. */
  until: string;
  /** It is too late. */
  over: boolean;
}

/** Seconds for which one is told that it is too late; after that it is another day. */
const TOLD = 6 * 3600;

/** Of each piece whose joint is being made, in the order of the file. `now` is RFC 3339. */
export function openTimes(job: Job, now: string): OpenTime[] {
  const lines = linesOf(job);
  return [...job.pieces.values()].flatMap(
    (piece) => openTime(piece, lines, readInstant(now)) ?? [],
  );
}

/** Null where none runs: not said, not begun in this round, closed, or another day. */
function openTime(piece: PieceNow, lines: Lines, now: Instant | null): OpenTime | null {
  const { open } = readJoint(piece.spec.joint);
  if (open === null || now === null || isBack(piece)) return null;
  const { key, name } = piece.spec;
  const off = lines.off.get(key)?.index ?? -1;
  // Ticked one by one, the last thing ticked is the hurry.
  const begins = lines.all.findLast(
    (line) => line.piece === key && line.verb === 'seen' && BEGINS.includes(line.value),
  );
  if (!begins || begins.index <= off || stopped(lines, key, begins)) return null;
  const from = readInstant(begins.at);
  if (from === null) return null;
  const seconds = from.seconds + open;
  if (now.seconds - seconds > TOLD) return null;
  const until = printInstant({ seconds, offset: now.offset });
  return { piece: key, name, until, over: now.seconds > seconds };
}

/** A list ticked while something was still inside opens no tube, unless somebody went on all the same. */
function stopped({ all }: Lines, piece: string, { index, because }: Line): boolean {
  if (because !== undefined) return false;
  const before = all.slice(0, index + 1).map((line) => line.entry);
  return countsOf(before).some((thing) => thing.piece === piece && thing.count > 0);
}

const BEGINS: readonly string[] = ['sealing all', 'sealing hurry'];

/** `sealant: closed by 18:50`, or that its time is over. */
export function sayOpenTime({ until, over }: OpenTime, now: string): string {
  const time = sayTime(until, now);
  return over ? `sealant: its time was over at ${time}` : `sealant: closed by ${time}`;
}
