/** The five moments where jobs go wrong: each a list that is built from what the job knows and what was disturbed. */

import { isNewer, unreadSaid } from '../../job/fold/unread.ts';
import { readInstant } from '../../model/time.ts';
import type { Job, PieceNow } from '../../model/types.ts';
import { verbRow } from '../../model/verbs/verbs.ts';
import { list } from '../../model/words.ts';
import { buysOf } from '../buy/list.ts';
import { type Standing, standingOf } from '../order/standing.ts';
import { atTime } from '../time/at-time.ts';
import {
  type AskedItem,
  type GateItem,
  type ItemInWords,
  type Moment,
  stopped,
  withTicks,
} from './items.ts';
import { beforeLoosening } from './loosening.ts';
import { beforeClosing, beforePrying, beforeSealing } from './piece.ts';
import { beforeStart } from './start.ts';

export interface Gate {
  items: GateItem[];
}

/**
 * `piece` is needed for all but `start`; without it, or with a name that the job has not, there is nothing to ask.
 * `now` is RFC 3339, for waits that may still run; without it each wait that has begun counts as running.
 */
export function gate(job: Job, moment: Moment, piece: string | null = null, now = ''): Gate {
  return {
    items: gateInWords(job, moment, piece, now).map(({ words: _, known: __, ...item }) => item),
  };
}

/** The same with each sentence in parts. */
export function gateInWords(
  job: Job,
  moment: Moment,
  piece: string | null,
  now: string,
): ItemInWords[] {
  const standing = standingOf(job, now);
  const { lines } = standing;
  const row = ROWS[moment];
  if ('ofJob' in row) {
    const at = { moment, piece: null, since: row.since(standing) };
    return withTicks([...unread(job), ...row.ofJob(standing)], lines.all, at);
  }
  const found = piece === null ? undefined : job.pieces.get(piece);
  const asked = found ? [...unread(job), ...row.ofPiece(standing, found)] : [];
  const since = piece === null ? -1 : row.since(standing, piece);
  return withTicks(asked, lines.all, { moment, piece, since });
}

/** What a line that could not be read would have asked for, nobody knows: it stops at every moment. */
function unread(job: Job): AskedItem[] {
  const stop = unreadSaid(job);
  if (stop === null) return [];
  const lines = list([...new Set(job.unread.map(({ line }) => `${line}`))]);
  const way = isNewer(job)
    ? 'Get a newer putback.'
    : 'putback check on the file says why, and the way out.';
  const say = `Lines that could not be read: ${lines}.`;
  return [stopped('unread', say, `${stop} ${way}`, { to: 'file' })];
}

/** The same, kept while the job and the time stay. */
export function gateOf(job: Job, moment: Moment, piece: string | null, now: string): ItemInWords[] {
  const make = () => gateInWords(job, moment, piece, now);
  return atTime(job, now, `gate ${moment} ${piece ?? ''}`, make);
}

/** Nothing stops, and everything was seen to. */
export function isPassed({ items }: Gate): boolean {
  return items.every((item) => item.done);
}

/**
 * Each moment: what is asked at it, of the job or of one piece, and the line from which on ticks count. What was seen
 * before the piece came off, or before more was disturbed, is old.
 */
type MomentRow =
  | { ofJob: (standing: Standing) => AskedItem[]; since: (standing: Standing) => number }
  | {
      ofPiece: (standing: Standing, piece: PieceNow) => AskedItem[];
      since: (standing: Standing, piece: string) => number;
    };

const sinceDisturbed = ({ lines }: Standing) =>
  lines.all.findLast((line) => verbRow(line.verb).disturbs)?.index ?? -1;

const sinceOff = ({ lines }: Standing, piece: string) => lines.off.get(piece)?.index ?? -1;

/** s. What was looked at in an open machine so long ago is looked at again. */
const LEFT = 12 * 3600;

/**
 * While it is off, also not before it was last left alone for so long: what somebody saw in an open case weeks ago says
 * nothing of it today.
 */
const sinceLeft = (standing: Standing, piece: string) => {
  const off = sinceOff(standing, piece);
  if (standing.job.pieces.get(piece)?.away === 'no') return off;
  let next = standing.now.seconds;
  for (const { at, index } of standing.lines.all.toReversed()) {
    const { seconds } = readInstant(at) ?? { seconds: next };
    if (next - seconds > LEFT) return Math.max(off, index);
    next = seconds;
  }
  return off;
};

const sinceRound = ({ rounds }: Standing, piece: string) => rounds(piece).before;

const ROWS: Readonly<Record<Moment, MomentRow>> = {
  loosening: { ofPiece: beforeLoosening, since: sinceRound },
  prying: { ofPiece: beforePrying, since: sinceRound },
  sealing: {
    ofPiece: (standing, piece) => beforeSealing(standing, piece, buysOf(standing)),
    since: sinceLeft,
  },
  closing: { ofPiece: beforeClosing, since: sinceLeft },
  start: { ofJob: (standing) => beforeStart(standing, buysOf(standing)), since: sinceDisturbed },
};
