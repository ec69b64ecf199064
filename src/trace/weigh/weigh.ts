/**
 * Renew it now, while it is open, or leave it: the chance at which the one becomes cheaper than the other.
 *
 * Cost and loss (Thompson, On the operational deficiencies in categorical weather forecasts, Bull. AMS 33, 1952; Murphy,
 * Monthly Weather Review 105, 1977; both from memory): to act costs C, to leave it costs L with the chance p; act where
 * p > C/L. Acting may do harm, H with the chance q, which is paid like C: act where p > (C + qH)/L.
 *
 * Money and time are weighed each by itself, and together only where the person says what an hour is worth.
 */
import { type Chance, readChance } from './chance.ts';
import { type Costs, costsIn, harmThatTurns, hourThatTurns, scalesOf, turningOf } from './costs.ts';
import type { Advice, Scale, Weighed, WeighInput } from './types.ts';
import { mayTurn, unknownIn } from './unknown.ts';

/** Pure; nothing is thrown. What cannot be read or is missing is told. */
export function weigh(input: WeighInput): Weighed {
  if (input.safety) return BY_THE_MANUAL;
  const chance = read(input.chance);
  const harmChance = read(input.harm?.chance ?? null);
  const [p, q] = [chance?.p ?? null, harmChance?.p ?? 0];
  const margin = chance?.rough ? ROUGH : CLOSE;
  const scales = scalesOf(input);
  const weighed = scales.map(({ costs }) => adviceOf(costs, p, q, margin));
  const advice = together(weighed);
  const turning = (scale: Scale) => {
    const costs = costsIn(input, scale);
    return costs && turningOf(costs, q);
  };
  const unknown = unknownIn(input, chance, harmChance);
  const matters = unknown.filter((one) => mayTurn(one, advice, p, scales));
  return {
    turning: {
      chance: chanceFor(
        advice,
        scales.flatMap(({ costs }, i) =>
          advice === null || weighed[i] === advice ? [turningOf(costs, q)] : [],
        ),
      ),
      money: turning('money'),
      time: turning('time'),
    },
    said: chance && { chance: chance.p, rough: chance.rough },
    advice,
    by: scales.length > 1 ? 'both' : (scales[0]?.scale ?? null),
    turnsAt: {
      harm: least(scales.map(({ costs }) => harmThatTurns(costs, p))),
      hour: p === null ? null : hourThatTurns(scales, p, q),
    },
    unknown: [...matters, ...unknown.filter((one) => !matters.includes(one))],
    matter: matters.length,
    notRead: [
      ...(input.chance !== null && !chance ? (['chance'] as const) : []),
      ...(input.harm?.chance && !harmChance ? (['harm.chance'] as const) : []),
    ],
  };
}

const BY_THE_MANUAL: Weighed = {
  turning: { chance: null, money: null, time: null },
  ...{ said: null, advice: 'renew', by: 'safety', turnsAt: { harm: null, hour: null } },
  ...{ unknown: [], matter: 0, notRead: [] },
};

/** Costs that differ by less than this come to the same; a chance said by a word reaches halfway to the next word. */
const CLOSE = 1.25;
const ROUGH = Math.SQRT2;

const read = (text: string | null): Chance | null => (text === null ? null : readChance(text));

function adviceOf({ C, L, H }: Costs, p: number | null, q: number, margin: number): Advice | null {
  const acting = C + q * H;
  if (p === null && acting > 0 && acting < L) return null;
  const leaving = (p ?? 1) * L;
  if (p !== null && leaving < acting * margin && acting < leaving * margin) return 'close';
  if (leaving === acting) return p === null && L > 0 ? 'leave' : 'close';
  return leaving > acting ? 'renew' : 'leave';
}

/** The same advice by all, those left out that are close; null where they differ or one is not known. */
function together(all: readonly (Advice | null)[]): Advice | null {
  const firm = all.filter((one) => one !== 'close');
  const [first = all.length > 0 ? 'close' : null] = firm;
  return firm.every((one) => one === first) ? first : null;
}

/** Of the scales that advise so, the chance beyond which none of them advises otherwise. */
function chanceFor(advice: Advice | null, turning: readonly (number | null)[]): number | null {
  const all = turning.filter((one) => one !== null);
  if (all.length < 2) return all[0] ?? null;
  if (advice === 'renew') return Math.max(...all);
  return advice === 'leave' ? Math.min(...all) : null;
}

const least = (all: readonly (number | null)[]): number | null => {
  const some = all.filter((one) => one !== null);
  return some.length > 0 ? Math.min(...some) : null;
};
