/** What a fit says to the person: one sentence a verdict, in mm. */
import type { Kind } from '../job/types.ts';
import type { FitVerdict, Measure } from './fit.ts';
import { lookAlikes } from './lookalikes.ts';
import type { Material } from './materials.ts';
import { strongerBy } from './same.ts';
import { threadOf } from './threads.ts';

/** What the sentence is made of. */
export interface Judged {
  verdict: FitVerdict | null;
  sure: boolean;
  kind: Kind;
  own: Kind | null;
  /** The hole's own stack, where the bolt has another one under its head; else null. */
  otherStack: readonly string[] | null;
  material: Material | null;
  need: number | null;
  ownBites: number;
  open: boolean;
  most: number | null;
  engagement: number | null;
  by: number | null;
  x: number | null;
  farther: number | null;
  wet: boolean;
}

/** How to measure what is missing. */
export const MEASURES: Record<Measure, string> = {
  length: 'measure the bolt under the head',
  thread: 'try the thread against one that is known',
  head: 'compare the heads',
  thick: 'measure the piece from the seat of the head to the joint face',
  turns: 'count the turns as the right bolt comes out',
  probe: 'probe the hole: depth of thread from the joint face',
  under: 'measure what lies under the head',
  into: 'say what it is screwed into',
};

/** From here on a bolt that is longer is treated as bottoming until somebody has probed, mm. */
const MUCH_LONGER = 10;

const mm = (value: number) => `${Math.round(Math.abs(value) * 10) / 10} mm`;

function wanting(j: Judged): string {
  if (j.need !== null && j.need >= j.ownBites) return 'the right one bites with';
  return `${j.material?.name ?? 'even steel'} wants`;
}

function tooShort(j: Judged): string {
  if (j.x !== null && j.x <= 0)
    return `It would not reach the thread: ${mm(j.x)} too short to start.`;
  const bite = j.most ?? 0;
  const pitch = threadOf(j.kind.thread ?? j.own?.thread ?? null)?.pitch ?? null;
  const turns = pitch === null ? '' : ` (${Math.round(bite / pitch)} turns)`;
  const atMost = j.engagement === null ? 'At most' : 'Only';
  const wants = j.need === null ? '' : `; ${wanting(j)} ${mm(j.need)}`;
  return `${atMost} ${mm(bite)} of thread would bite${turns}${wants}.`;
}

function wrongThread(j: Judged): string {
  const [mine, its] = [j.kind, j.own];
  if (its && mine.leftHand !== its.leftHand) {
    return mine.leftHand
      ? 'A left-hand thread in a right-hand hole.'
      : 'A right-hand thread in a left-hand hole.';
  }
  const alike = lookAlikes([mine.thread ?? '', its?.thread ?? '']).length > 0;
  const warn = alike ? ' It starts, and ruins the thread.' : '';
  return `${mine.thread} in a hole for ${its?.thread}.${warn}`;
}

function wrongHead(j: Judged): string {
  const stronger = j.own && strongerBy(j.kind, j.own);
  if (stronger !== null && stronger < 0) {
    return `Marked ${j.kind.class}; the right one is ${j.own?.class}: too weak.`;
  }
  return `Head ${j.kind.head}; the right one is ${j.own?.head}.`;
}

function same(j: Judged): string {
  const stronger = j.own && strongerBy(j.kind, j.own);
  if (stronger !== null && stronger > 0) {
    return `The same size, marked ${j.kind.class} instead of ${j.own?.class}.`;
  }
  return j.sure ? 'The same bolt under another letter.' : 'The same as far as is known.';
}

function longer(j: Judged): string {
  const by = j.farther ?? (j.kind.length ?? 0) - (j.own?.length ?? 0);
  const than = `${mm(by)} longer than the right one`;
  if (j.sure) return `${than}; it neither bottoms nor sticks out.`;
  if (j.open) return `${than}, and reaches so much farther behind: look what lies there.`;
  return by >= MUCH_LONGER
    ? `${than}: take it that it bottoms, until the hole is probed.`
    : `${than}: probe the hole first.`;
}

function shorter(j: Judged): string {
  const by = j.farther ?? (j.kind.length ?? 0) - (j.own?.length ?? 0);
  const bite = j.engagement === null ? '' : `; ${mm(j.engagement)} of thread would bite`;
  return `${mm(by)} shorter than the right one${bite}.`;
}

function right(j: Judged): string {
  if (!j.sure) return 'It belongs here, but the figures of this hole contradict it: measure again.';
  if (j.otherStack === null) return 'It belongs here.';
  return j.otherStack.length === 0
    ? 'It belongs here, with nothing under the head.'
    : `It belongs here, with ${j.otherStack.join(' and ')} under the head.`;
}

/** The sentence for what was judged. */
export function sentence(j: Judged): string {
  const by = j.by ?? 0;
  const seal = j.wet ? ' A wet hole wants sealing.' : '';
  switch (j.verdict) {
    case 'right':
      return right(j);
    case 'same':
      return same(j);
    case 'wrong-thread':
      return wrongThread(j);
    case 'wrong-head':
      return wrongHead(j);
    case 'shank':
      return `The plain shank would jam ${mm((j.x ?? 0) - (j.kind.threaded ?? 0))} before the head clamps.`;
    case 'bottoms':
      return `It would bottom ${mm(by)} before the head clamps.`;
    case 'short':
      return tooShort(j);
    case 'through':
      return `It would stick out ${mm(by)} behind: look what lies there.${seal}`;
    case 'longer':
      return longer(j);
    case 'shorter':
      return shorter(j);
    case null:
      return 'Too little is known of this bolt and this hole.';
  }
}
