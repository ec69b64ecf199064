/**
 * The sealant's open time: from the moment at which all before the joint was seen to be ready, the tube is open. How
 * long, says the joint, in the words of the tube.
 */

import { countsOf } from '../../job/fold/inside.ts';
import { type Instant, printInstant, readInstant } from '../../model/time.ts';
import type { Job, PieceNow } from '../../model/types.ts';
import { type DiaryLine, diaryLines, type Lines } from '../order/lines.ts';
import { isBack } from '../order/needed.ts';
import { sayTime } from '../time/days.ts';
import { jointOf } from './joint.ts';

export interface OpenTime {
  piece: string;
  name: string;
  /** RFC 3339, in the zone of now: not closed before; null where it need not stand. */
  from: string | null;
  /** The same: closed and tight by then; null where there is no hurry. */
  until: string | null;
  /** It is too late. */
  over: boolean;
}

/** Seconds for which one is told that it is too late; after that it is another day. */
const TOLD = 6 * 3600;

/** Of each piece whose joint is being made, in the order of the file. `now` is RFC 3339. */
export function openTimes(job: Job, now: string): OpenTime[] {
  const lines = diaryLines(job);
  return [...job.pieces.values()].flatMap(
    (piece) => openTime(piece, lines, readInstant(now)) ?? [],
  );
}

/** Null where none runs: not said, not begun in this round, closed, or another day. */
function openTime(piece: PieceNow, lines: Lines, now: Instant | null): OpenTime | null {
  const { open, stand } = jointOf(piece.spec);
  const last = open ?? stand;
  if (last === null || now === null || isBack(piece)) return null;
  const { key, name } = piece.spec;
  const off = lines.off.get(key)?.index ?? -1;
  // The list was ticked as a whole, or item by item: then the tube is opened once the item about its time is ticked.
  const begins = lines.all.findLast(
    (line) => line.piece === key && line.verb === 'seen' && BEGINS.includes(line.value),
  );
  if (!begins || begins.index <= off || stopped(lines, key, begins)) return null;
  const begun = readInstant(begins.at);
  if (begun === null || now.seconds - begun.seconds - last > TOLD) return null;
  const after = (seconds: number) => printInstant({ ...now, seconds: begun.seconds + seconds });
  const from = stand !== null && now.seconds < begun.seconds + stand ? after(stand) : null;
  const until = open === null ? null : after(open);
  if (from === null && until === null) return null;
  return {
    piece: key,
    name,
    from,
    until,
    over: open !== null && now.seconds > begun.seconds + open,
  };
}

/** A list ticked while something was still inside opens no tube, unless somebody went on all the same. */
function stopped({ all }: Lines, piece: string, { index, because }: DiaryLine): boolean {
  if (because !== undefined) return false;
  const before = all.slice(0, index + 1).map((line) => line.entry);
  return countsOf(before).some((thing) => thing.piece === piece && thing.count > 0);
}

const BEGINS: readonly string[] = ['sealing all', 'sealing hurry', 'sealing stand'];

/** `sealant: not closed before 18:45, closed by 18:50`, or that its time is over. */
export function sayOpenTime({ from, until, over }: OpenTime, now: string): string {
  const time = until === null ? '' : sayTime(until, now);
  if (over) return `sealant: its time was over at ${time}`;
  const stands = from === null ? [] : [`not closed before ${sayTime(from, now)}`];
  return `sealant: ${[...stands, ...(until === null ? [] : [`closed by ${time}`])].join(', ')}`;
}

/** The same with its piece, as a sentence. */
export function sayOpenTimeOf(time: OpenTime, now: string): string {
  return `${time.name}, ${sayOpenTime(time, now)}.`;
}
