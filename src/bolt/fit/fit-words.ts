/** What a fit says to the person: one sentence a verdict, in mm. */

import { lookAlikes } from '../thread/lookalikes.ts';
import { threadOf } from '../thread/threads.ts';
import type { FitKnown } from './fit-known.ts';
import type { FitVerdict } from './fit-types.ts';
import { strongerBy } from './same.ts';

/** From here on a bolt that is longer is treated as bottoming until somebody has probed, mm. */
const MUCH_LONGER = 10;

const mm = (value: number) => `${Math.round(Math.abs(value) * 10) / 10} mm`;

/** The rule, unless the right bolt does with less. */
function wanting(k: FitKnown): string {
  if (k.need === null) return '';
  if (k.ownBites < k.need) return `; the right one bites with ${mm(k.ownBites)}`;
  return `; ${k.material?.name ?? 'even steel'} wants ${mm(k.need)}`;
}

function tooShort(k: FitKnown): string {
  const bite = k.most ?? 0;
  if (bite <= 0) {
    const by = k.reach.xMost ?? 0;
    const least = k.reach.x === null ? 'at least ' : '';
    const lacks = by < 0 ? `: ${least}${mm(by)} too short to start` : '';
    return `It would not reach the thread${lacks}.`;
  }
  const pitch = threadOf(k.kind.thread ?? k.own?.thread ?? null)?.pitch ?? null;
  const turns = pitch === null ? '' : ` (${Math.round(bite / pitch)} turns)`;
  const atMost = k.engagement === null ? 'At most' : 'Only';
  return `${atMost} ${mm(bite)} of thread would bite${turns}${wanting(k)}.`;
}

function wrongThread(k: FitKnown): string {
  const [mine, its] = [k.kind, k.own];
  if (its && mine.leftHand !== its.leftHand) {
    return mine.leftHand
      ? 'A left-hand thread in a right-hand hole.'
      : 'A right-hand thread in a left-hand hole.';
  }
  const alike = lookAlikes([mine.thread ?? '', its?.thread ?? '']).length > 0;
  const warn = alike ? ' It starts, and ruins the thread.' : '';
  return `${mine.thread} in a hole for ${its?.thread}.${warn}`;
}

function wrongHead(k: FitKnown): string {
  const stronger = k.own && strongerBy(k.kind, k.own);
  if (stronger !== null && stronger < 0) {
    return `Marked ${k.kind.class}; the right one is ${k.own?.class}: too weak.`;
  }
  return `Head ${k.kind.head}; the right one is ${k.own?.head}.`;
}

function same(k: FitKnown, sure: boolean): string {
  const stronger = k.own && strongerBy(k.kind, k.own);
  if (stronger !== null && stronger > 0) {
    return `The same size, marked ${k.kind.class} instead of ${k.own?.class}.`;
  }
  const [mine, its] = [k.kind.threaded, k.own?.threaded ?? null];
  if (mine !== null && its !== null && mine !== its) {
    return `The same size, threaded over ${mm(mine)} instead of ${mm(its)}.`;
  }
  if (sure) return 'The same bolt under another letter.';
  return k.disputed
    ? 'The same as the right one, but the figures of this hole contradict it: measure again.'
    : 'The same as far as is known.';
}

function longer(k: FitKnown, sure: boolean): string {
  const by = k.reach.farther ?? (k.kind.length ?? 0) - (k.own?.length ?? 0);
  const than = `${mm(by)} longer than the right one`;
  if (sure) return `${than}; it neither bottoms nor sticks out.`;
  if (k.open) return `${than}, and reaches so much farther behind: look what lies there.`;
  return by >= MUCH_LONGER
    ? `${than}: assume that it bottoms until the hole is probed.`
    : `${than}: probe the hole first.`;
}

function shorter(k: FitKnown): string {
  const by = k.reach.farther ?? (k.kind.length ?? 0) - (k.own?.length ?? 0);
  const bite = k.engagement === null ? '' : `; ${mm(k.engagement)} of thread would bite`;
  return `${mm(by)} shorter than the right one${bite}.`;
}

function right(k: FitKnown): string {
  if (k.disputed)
    return 'It belongs here, but the figures of this hole contradict it: measure again.';
  if (k.ownStack === null) return 'It belongs here.';
  return k.ownStack.length === 0
    ? 'It belongs here, with nothing under the head.'
    : `It belongs here, with ${k.ownStack.join(' and ')} under the head.`;
}

/** The sentence for what was judged. */
export function fitSentence(k: FitKnown, verdict: FitVerdict | null, sure: boolean): string {
  const by = k.by ?? 0;
  const seal = k.wet ? ' A wet hole wants sealing.' : '';
  switch (verdict) {
    case 'right':
      return right(k);
    case 'same':
      return same(k, sure);
    case 'wrong-thread':
      return wrongThread(k);
    case 'wrong-head':
      return wrongHead(k);
    case 'shank':
      return `The plain shank would jam ${mm((k.reach.x ?? 0) - (k.kind.threaded ?? 0))} before the head clamps.`;
    case 'bottoms':
      return `It would bottom ${mm(by)} before the head clamps.`;
    case 'short':
      return tooShort(k);
    case 'through':
      return `It would stick out ${mm(by)} behind: look what lies there.${seal}`;
    case 'longer':
      return longer(k, sure);
    case 'shorter':
      return shorter(k);
    case null:
      return 'Too little is known of this bolt and this hole.';
  }
}
