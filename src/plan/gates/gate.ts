/** The four moments where jobs go wrong: each a list that is built from what the job knows and what was disturbed. */

import type { Job } from '../../model/types.ts';
import { verbRow } from '../../model/verbs.ts';
import { buysOf } from '../buy/list.ts';
import { type Standing, standingOf } from '../standing.ts';
import { type Asked, type GateItem, type ItemInWords, type Moment, withTicks } from './items.ts';
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
  return { items: gateInWords(job, moment, piece, now).map(({ words: _, ...item }) => item) };
}

/** The same with each sentence in parts. */
export function gateInWords(
  job: Job,
  moment: Moment,
  piece: string | null,
  now: string,
): ItemInWords[] {
  const standing = standingOf(job, now);
  const asked = askedAt(standing, moment, piece);
  const at = { moment, piece: moment === 'start' ? null : piece };
  const since = sinceOf(standing, moment, piece);
  return withTicks(asked, standing.lines.all, { ...at, since });
}

/** Nothing stops, and everything was seen to. */
export function isPassed({ items }: Gate): boolean {
  return items.every((item) => item.done);
}

function askedAt(standing: Standing, moment: Moment, key: string | null): Asked[] {
  if (moment === 'start') return beforeStart(standing);
  const piece = key === null ? undefined : standing.job.pieces.get(key);
  if (!piece) return [];
  if (moment === 'prying') return beforePrying(standing, piece);
  if (moment === 'closing') return beforeClosing(standing, piece);
  return beforeSealing(standing, piece, buysOf(standing));
}

/** The line from which on ticks count: what was seen before the piece came off, or before more was disturbed, is old. */
function sinceOf({ lines, rounds }: Standing, moment: Moment, key: string | null): number {
  if (moment === 'start') {
    return lines.all.findLast((line) => verbRow(line.verb).disturbs)?.index ?? -1;
  }
  if (key === null) return -1;
  return moment === 'prying' ? rounds(key).before : (lines.off.get(key)?.index ?? -1);
}
