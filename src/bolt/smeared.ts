/** What oil, threadlocker and anti-seize do to a torque: words and a range, never a figure to set. */

export type Smear = 'oil' | 'threadlocker' | 'anti-seize';

/**
 * Nut factors K: dry 0.20–0.25, oiled 0.15–0.20, anti-seize 0.12–0.16 (handbook ranges after Shigley and Machinery's
 * Handbook). Wet threadlocker slides about as oil does: common practice, no source.
 */
const K = {
  dry: [0.2, 0.25],
  oil: [0.15, 0.2],
  threadlocker: [0.15, 0.2],
  'anti-seize': [0.12, 0.16],
} as const;

const ASK =
  'Ask the manual whether its torque is for dry threads; nothing here is a figure to set.';

/** How many times as hard the same torque pulls as on dry threads, from and to, and a sentence. */
export function smeared(what: Smear): { from: number; to: number; say: string } {
  const [dryLow, dryHigh] = K.dry;
  const [low, high] = K[what];
  const [from, to] = [dryLow / high, dryHigh / low];
  const times = `${from.toFixed(1)} to ${to.toFixed(1)} times as hard`;
  return { from, to, say: `With ${what} the same torque pulls ${times} as dry. ${ASK}` };
}

const WORDS: readonly [Smear, RegExp][] = [
  [
    'anti-seize',
    /\b(?:anti-?sei[zs]e|copper (?:grease|paste)|moly(?:bdenum)? (?:grease|paste))\b/i,
  ],
  ['threadlocker', /\b(?:thread-?lock(?:er|ing)?|thread lock(?:er|ing)?|locking compound)\b/i],
  ['oil', /\b(?:oil(?:ed)?|greased?|lubricated|waxed)\b/i],
];

/** What a note says is on the thread; null when it says nothing of the kind. */
export function smearIn(text: string): Smear | null {
  if (/\b(?:dry|no oil|without oil|oil-free)\b/i.test(text)) return null;
  return WORDS.find(([, pattern]) => pattern.test(text))?.[0] ?? null;
}
