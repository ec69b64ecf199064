/** What is weighed: costs of acting, of leaving and of harm, in money, in time, or in both by the worth of an hour. */
import type { Amount, Scale, WeighInput } from './types.ts';

/** C, L and H in one scale; null where a figure of now or later is missing. */
export interface Costs {
  C: number;
  L: number;
  H: number;
}

export interface Scaled {
  scale: Scale;
  costs: Costs;
}

/** What is weighed: money with time where an hour has a worth, else each of them that is known. */
export function scalesOf(input: WeighInput): Scaled[] {
  const worth = costsIn(input, 'worth');
  if (worth) return [{ scale: 'worth', costs: worth }];
  return (['money', 'time'] as const).flatMap((scale) => {
    const costs = costsIn(input, scale);
    return costs ? [{ scale, costs }] : [];
  });
}

export function costsIn({ now, later, harm, hour }: WeighInput, scale: Scale): Costs | null {
  const figure = ({ price, takes }: Amount): number | null => {
    if (scale === 'money') return reckonable(price);
    if (scale === 'time') return reckonable(takes);
    const [money, minutes, worth] = [reckonable(price), reckonable(takes), reckonable(hour)];
    return money === null || minutes === null || worth === null
      ? null
      : money + (minutes / 60) * worth;
  };
  const [C, L] = [figure(now), figure(later)];
  if (C === null || L === null) return null;
  const { price, takes } = harm ?? { price: 0, takes: 0 };
  return { C, L, H: figure({ price: reckonable(price) ?? 0, takes: reckonable(takes) ?? 0 }) ?? 0 };
}

/** A figure that can be reckoned with. */
export const reckonable = (figure: number | null | undefined): number | null =>
  figure != null && figure >= 0 && Number.isFinite(figure) ? figure : null;

/** p at which pL = C + qH; null where leaving it costs nothing even if it fails. */
export const turningOf = ({ C, L, H }: Costs, q: number): number | null =>
  L > 0 ? (C + q * H) / L : null;

/** q at which pL = C + qH. */
export function harmThatTurns({ C, L, H }: Costs, p: number | null): number | null {
  const q = p === null || H === 0 ? -1 : (p * L - C) / H;
  return q > 0 && q <= 1 ? q : null;
}

/** What an hour would have to be worth, where money says one thing and time the other. */
export function hourThatTurns(scales: readonly Scaled[], p: number, q: number): number | null {
  const gain = (scale: Scale) => {
    const costs = scales.find((one) => one.scale === scale)?.costs;
    return costs ? p * costs.L - costs.C - q * costs.H : 0;
  };
  const hour = (-60 * gain('money')) / gain('time');
  return hour > 0 && Number.isFinite(hour) ? hour : null;
}
