/** Renew it while it is open, or leave it. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sayChance } from '../../src/trace/weigh/chance.ts';
import type { WeighInput } from '../../src/trace/weigh/types.ts';
import { weigh } from '../../src/trace/weigh/weigh.ts';

const amount = (price: number | null, takes: number | null) => ({ price, takes });
const NOTHING: WeighInput = {
  ...{ now: amount(null, null), later: amount(null, null) },
  ...{ chance: null, harm: null, hour: null, safety: false },
};
/** A shaft seal: the seal and 40 min now; the same, a gasket and 3 h 10 later. */
const SEAL: WeighInput = {
  now: amount(12.5, 40),
  later: amount(26.7, 190),
  chance: '1 in 2',
  harm: { chance: '1 in 20', ...amount(60, 0) },
  ...{ hour: 20, safety: false },
};

describe('with the worth of an hour', () => {
  test('money and time are one: it turns at 1 in 3, and 1 in 2 says renew it', () => {
    const { turning, said, advice, by } = weigh(SEAL);
    // (12.50 + 13.33 + 60/20) / (26.70 + 63.33)
    expect(turning.chance).toBeCloseTo(28.8333 / 90.0333, 4);
    expect(sayChance(turning.chance ?? 0)).toBe('1 in 3');
    expect({ said, advice, by }).toEqual({
      ...{ said: { chance: 0.5, rough: false }, advice: 'renew', by: 'worth' },
    });
  });

  test('it turns round if touching it went wrong more often than 1 in 3', () => {
    // (90.03/2 − 25.83) / 60
    expect(weigh(SEAL).turnsAt.harm).toBeCloseTo(0.3197, 4);
    const turned = weigh({ ...SEAL, harm: { chance: '3 in 4', ...amount(60, 0) } });
    expect(turned.advice).toBe('leave');
  });

  test('near the turning point it is close', () => {
    expect(weigh({ ...SEAL, chance: '1 in 3' }).advice).toBe('close');
  });

  test('a word for a chance reaches further: often, 1 in 2, is not far enough from 2 in 5', () => {
    const seal = { ...SEAL, harm: { chance: '1 in 5', ...amount(60, 0) } };
    expect(weigh({ ...seal, chance: '1 in 2' }).advice).toBe('close');
    expect(weigh({ ...SEAL, chance: 'about 1 in 2' }).advice).toBe('renew');
    expect(weigh({ ...SEAL, chance: 'about 43 %' }).advice).toBe('close');
    expect(weigh({ ...SEAL, chance: '43 %' }).advice).toBe('renew');
  });
});

describe('without it', () => {
  const seal = { ...SEAL, hour: null };

  test('money and time are weighed each by itself', () => {
    const { turning, advice, by } = weigh({ ...seal, chance: '3 in 4' });
    expect(turning.money).toBeCloseTo(15.5 / 26.7, 9);
    expect(turning.time).toBeCloseTo(40 / 190, 9);
    expect(turning.chance).toBe(turning.money);
    expect({ advice, by }).toEqual({ advice: 'renew', by: 'both' });
  });

  test('where they differ there is no advice, but the worth of an hour that would decide', () => {
    const { advice, turnsAt, unknown, matter } = weigh({ ...seal, chance: '40 %' });
    expect(advice).toBeNull();
    expect(unknown.slice(0, matter)).toEqual(['hour']);
    const hour = turnsAt.hour ?? 0;
    expect(weigh({ ...seal, chance: '40 %', hour: 2 * hour }).turning.chance).toBeLessThan(0.4);
    expect(weigh({ ...seal, chance: '40 %', hour: hour / 2 }).turning.chance).toBeGreaterThan(0.4);
  });
});

test('the turning point is that of what the advice goes by, not of what comes to the same', () => {
  // By money it turns at 12/26, well above one in three; by time at 40/140, near it.
  const input = { now: amount(12, 40), later: amount(26, 140), harm: null, hour: null };
  const { advice, turning } = weigh({ ...input, chance: 'about 1 in 3', safety: false });
  expect(advice).toBe('close');
  const low = weigh({ ...input, now: amount(15, 40), chance: 'about 1 in 3', safety: false });
  expect(low).toMatchObject({ advice: 'leave', turning: { chance: low.turning.money } });
  expect(turning.chance).toBeNull();
});

describe('what is not known', () => {
  test('nothing at all: no advice, and everything is asked for', () => {
    const { advice, by, turning, unknown } = weigh(NOTHING);
    expect({ advice, by, turning: turning.chance }).toEqual({
      advice: null,
      by: null,
      turning: null,
    });
    expect(unknown[0]).toBe('chance');
    expect(unknown).toHaveLength(7);
  });

  test('without a chance the turning point is told all the same', () => {
    const { turning, advice, unknown, matter } = weigh({ ...SEAL, chance: null });
    expect(turning.chance).toBeCloseTo(0.3203, 4);
    expect(advice).toBeNull();
    expect(unknown.slice(0, matter)).toEqual(['chance']);
  });

  test('what costs as much now as later is left, whatever the chance', () => {
    const input = { ...NOTHING, now: amount(30, null), later: amount(30, null) };
    expect(weigh(input)).toMatchObject({ advice: 'leave', by: 'money' });
  });

  test('what costs nothing now is renewed, whatever the chance', () => {
    const input = { ...NOTHING, now: amount(null, 0), later: amount(null, 60) };
    expect(weigh(input)).toMatchObject({ advice: 'renew', by: 'time' });
  });

  test('an advice to renew can be turned by costs of now and by harm, never by a dearer later', () => {
    const input = { ...NOTHING, now: amount(5, null), later: amount(50, null), chance: '1 in 2' };
    const { advice, unknown, matter } = weigh(input);
    expect(advice).toBe('renew');
    expect(unknown.slice(0, matter)).toEqual(['now.takes', 'harm']);
    expect(unknown.slice(matter)).toEqual(['later.takes', 'hour']);
  });

  test('a text that is no chance is told', () => {
    const harm = { chance: 'if one slips', ...amount(60, null) };
    const { notRead, said } = weigh({ ...SEAL, chance: '1 in 4 or 5', harm });
    expect({ notRead, said }).toEqual({ notRead: ['chance', 'harm.chance'], said: null });
  });
});

test('where someone may be hurt there is no figure: renew it, by the manual', () => {
  expect(weigh({ ...SEAL, safety: true })).toMatchObject({
    ...{ advice: 'renew', by: 'safety', said: null },
    turning: { chance: null, money: null, time: null },
  });
});

test('a higher chance never turns renew into leave, nor more harm leave into renew', () => {
  const figure = fc.integer({ min: 0, max: 200 });
  const rank = { leave: 0, close: 1, renew: 2 };
  fc.assert(
    fc.property(figure, figure, figure, fc.nat(100), fc.nat(100), (C, L, H, one, other) => {
      const [low, high] = [Math.min(one, other), Math.max(one, other)];
      const at = (chance: number, harm: number) => {
        const { advice } = weigh({
          ...{ ...NOTHING, now: amount(C, null), later: amount(L, null), chance: `${chance} %` },
          harm: { chance: `${harm} %`, ...amount(H, null) },
        });
        return rank[advice ?? 'close'];
      };
      expect(at(high, 10)).toBeGreaterThanOrEqual(at(low, 10));
      expect(at(50, high)).toBeLessThanOrEqual(at(50, low));
    }),
    { seed: 14 },
  );
});
