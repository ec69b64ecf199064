/**
 * A torque held against one bolt in one hole: does the bolt yield, does the thread strip, over friction, strength of the
 * material and threads lost. It says "would" only where it gives at the best of everything, and "fine" only where it
 * holds at the worst; between them it says so. The maker's figure goes first.
 */
import type { Quantity } from '../../model/types.ts';
import { mm, printNumber } from '../read/numbers.ts';
import { convert, printQuantity } from '../read/units.ts';
import { strengthOf } from '../thread/strength.ts';
import { type Thread, threadOf } from '../thread/threads.ts';
import { armOf, atYield } from './preload.ts';
import { ASSUMED, BREAKS, DRY } from './sane.ts';
import type { Smear } from './smeared.ts';
import { FRICTION, strip } from './stripping.ts';

export type AgainstVerdict = 'fine' | 'strips' | 'yields' | 'cannot say';

/** What is not known and would have to be. */
export type Lack = 'torque' | 'thread' | 'bite' | 'into';

export interface Against {
  verdict: AgainstVerdict;
  /** One sentence. */
  why: string;
  /** Empty where all is known; what is missing is nothing to warn of. */
  lacks: readonly Lack[];
  /** Between the two limits of the bolt, or of the thread; null: elsewhere. */
  near: 'bolt' | 'thread' | null;
  /** N·m up to which it holds at the worst of everything; null where that is not known. */
  holdsTo: number | null;
  /** N·m from which it gives at the best of everything; null for a thread without figures. */
  givesFrom: number | null;
  /** The mark reckoned with where none was known; null when it was. */
  assumed: string | null;
  source: string;
}

export interface AgainstInput {
  /** The most that is set on it; a range counts with its upper end. Null: no figure was read. */
  torque: Quantity | null;
  thread: string | null;
  class: string | null;
  /** mm of thread that bite; null: not known. */
  bite: number | null;
  /** mm that can bite at most, where it is not known better. */
  biteMost?: number | null;
  /** As `into:` says it. */
  into: string | null;
  /** What is said to be on the thread; null: nothing is said. */
  on?: Smear | 'dry' | null;
  /** Hollow or a plug, or no steel: see solid.ts. Nothing is sure of it. */
  unlike?: 'hollow' | 'not steel' | null;
  /** The mark that it most likely has, where none is noted; without it 8.8. */
  likely?: string | null;
  /** It is turned on by an angle afterwards. */
  angle?: boolean;
}

/** By what is on the thread; VDI 2230-1 table A5, from memory, and the nut factors of smeared.ts: μ is about 0.75 K. */
const SAID: Readonly<Record<Smear | 'dry', { low: number; high: number }>> = {
  dry: { low: 0.14, high: 0.18 },
  oil: { low: 0.1, high: 0.15 },
  threadlocker: { low: 0.1, high: 0.15 },
  'anti-seize': { low: 0.08, high: 0.12 },
};
/** Stainless on stainless rubs up to 0.3 (Bossard's tables for A2 and A4, at 0.1, 0.2 and 0.3). */
const STAINLESS = 0.3;
/** The strongest mark there is: an unmarked bolt may be as strong. */
const STRONGEST = '12.9';

export function againstHole(input: AgainstInput): Against {
  const t = threadOf(input.thread);
  const most =
    input.torque && convert(input.torque.to ?? input.torque.value, input.torque.unit, 'N·m');
  if (input.torque === null || most === null) return unknown('torque', 'No torque was read.');
  if (!t) {
    const name =
      input.thread === null ? 'The thread is not said' : `${input.thread} has no figures here`;
    return unknown('thread', `${name}.`);
  }
  const limits = limitsOf(t, input);
  return { ...judged(most, t, input, limits), ...shown(limits) };
}

const METHOD = 'VDI 2230-1:2015 at the yield point, FED-STD-H28/2B for the thread';

function unknown(lack: Lack, why: string): Against {
  const none = { near: null, holdsTo: null, givesFrom: null, assumed: null, source: METHOD };
  return { verdict: 'cannot say', why, lacks: [lack], ...none };
}

interface Limits {
  mark: string;
  assumed: string | null;
  /** N·m at which the bolt yields, and the thread strips: at the worst and at the best. Infinite or null: not known. */
  yields: { low: number; high: number };
  strips: { low: number | null; high: number };
  /** Name of the tapped material; null where it is not known. */
  material: string | null;
}

function frictionOf(mark: string, on: Smear | 'dry' | null): { low: number; high: number } {
  const said = on === null ? FRICTION : SAID[on];
  return /^[A-F]\d/i.test(mark) ? { low: said.low, high: STAINLESS } : said;
}

function limitsOf(
  t: Thread,
  { class: marked, likely = null, bite, biteMost = null, into, on = null }: AgainstInput,
): Limits {
  const known = strengthOf(marked, t.d) ? marked : null;
  const mark = known ?? likely ?? ASSUMED;
  const mu = frictionOf(mark, on);
  const at = (friction: number, share: number) =>
    atYield(t, mark, friction, share)?.torque ?? Number.POSITIVE_INFINITY;
  const high = at(mu.high, 1);
  // The best that an unmarked bolt may be is not known: beyond this no ordinary one stands.
  const ordinary = BREAKS * (atYield(t, ASSUMED, DRY, 0.9)?.torque ?? Number.POSITIVE_INFINITY);
  const yields = { low: at(mu.low, 1), high: known ? high : Math.max(high, ordinary) };
  const shears = (engagement: number | null, by: string) =>
    engagement === null || into === null
      ? null
      : strip({ thread: t.name, engagement, into, class: by });
  const torque = (load: number, friction: number) => (load * armOf(t, friction, friction)) / 1000;
  const [least, best] = [shears(bite, mark), shears(bite ?? biteMost, known ?? STRONGEST)];
  return {
    mark,
    assumed: known === null ? mark : null,
    yields,
    strips: {
      low: least && torque(least.load.low, mu.low),
      high: best ? torque(best.load.high, mu.high) : Number.POSITIVE_INFINITY,
    },
    material: (best ?? shears(1, mark))?.material.name ?? null,
  };
}

function shown({ yields, strips, assumed }: Limits) {
  const holdsTo = strips.low === null ? null : Math.min(yields.low, strips.low);
  const givesFrom = Math.min(yields.high, strips.high);
  return { holdsTo, givesFrom, assumed, source: METHOD };
}

const nm = (value: number) => printNumber(value, 3);

type Judged = Pick<Against, 'verdict' | 'why' | 'lacks' | 'near'>;

const UNLIKE = {
  hollow: 'A plug or a hollow part: only the maker knows what it stands.',
  'not steel': 'A bolt that is not of steel: only the maker knows what it stands.',
} as const;

function judged(most: number, t: Thread, input: AgainstInput, limits: Limits): Judged {
  const { yields, strips } = limits;
  const bolt = `${t.name} ${limits.mark}${limits.assumed ? ' (assumed)' : ''}`;
  const torque = input.torque === null ? '' : printQuantity(input.torque);
  const say = (verdict: AgainstVerdict, why: string): Judged => ({
    verdict,
    why,
    lacks: [],
    near: null,
  });
  const lacking = (lack: Lack, why: string) => ({ ...say('cannot say', why), lacks: [lack] });
  if (most > Math.min(yields.high, strips.high)) {
    const yielding = `${bolt} yields at ${nm(yields.low)} to ${nm(yields.high)} N·m`;
    return strips.high < yields.high
      ? say('strips', `${torque} would strip the thread: ${holding(input, limits)}.`)
      : say('yields', `${torque} would break the bolt: ${yielding}.`);
  }
  if (input.unlike) return say('cannot say', UNLIKE[input.unlike]);
  if (input.into === null) return lacking('into', 'What it is screwed into is not said.');
  if (limits.material === null) return lacking('into', `Of ${input.into} nothing is known here.`);
  if (strips.low === null) {
    return lacking('bite', 'Not known how much thread bites: count the turns.');
  }
  if (input.angle) {
    return say('cannot say', 'Turned on by an angle, it pulls as hard as the maker means it to.');
  }
  if (most <= Math.min(yields.low, strips.low)) {
    const stands = `${bolt} stands ${nm(yields.low)} N·m and more`;
    return say('fine', `${torque}: ${stands}, and ${holding(input, limits)}.`);
  }
  if (strips.low < yields.low) {
    const why = `${torque} is near what the thread holds: ${holding(input, limits)}.`;
    return { ...say('cannot say', why), near: 'thread' };
  }
  const from = `${bolt} yields at ${nm(yields.low)} N·m where it slides well, at ${nm(yields.high)} dry`;
  return {
    ...say('cannot say', `${torque} is near what the bolt stands: ${from}.`),
    near: 'bolt',
  };
}

/** `9 mm in cast aluminium hold 14.2 to 30.1 N·m`. */
function holding({ bite, biteMost = null }: AgainstInput, { strips, material }: Limits): string {
  const reach = bite === null ? `no more than ${mm(biteMost ?? 0)}` : mm(bite);
  const from = strips.low === null ? 'at most' : `${nm(strips.low)} to`;
  return `${reach} in ${material} hold ${from} ${nm(strips.high)} N·m`;
}
