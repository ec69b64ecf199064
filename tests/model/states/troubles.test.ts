import { describe, expect, it } from 'vitest';
import { TROUBLES, troubleOf } from '../../../src/model/states/troubles.ts';
import type { Trouble } from '../../../src/model/types.ts';
import { gate } from '../../../src/plan/gates/gate.ts';
import { CHOICES } from '../../../src/screens/piece/troubles.ts';
import { jobOf, NOW } from '../../plan/make.ts';

const cover = (...lines: Parameters<typeof jobOf>[1][]) =>
  jobOf('bolts: {S: M6x25}\npieces: {cover: {bolts: S S}}', lines.flat() as never).pieces.get(
    'cover',
  )!;
const noted = (state: Trouble) => ({ piece: 'cover', hole: ['2'], state });

describe.each(TROUBLES)('%s', (trouble) => {
  const row = troubleOf(trouble);

  it('can be chosen by a letter of its own, and says what to do now', () => {
    expect(CHOICES.filter((c) => c.letter === row.letter).map((c) => c.trouble)).toEqual([trouble]);
    expect(row.advice[0]).toMatch(/\.$/);
    expect(row.said).not.toBe('');
  });

  it('of a bolt that was noted out: it is in if that is what it says', () => {
    const [, hole] = cover([{ piece: 'cover', out: 'S S' }, noted(trouble)] as never).holes;
    expect(hole?.trouble).toBe(trouble);
    expect(hole?.state).toBe(row.bolt === 'in' ? 'home' : 'out');
    expect(hole?.holds === null).toBe(row.bolt !== 'in');
  });

  it('of a bolt that is in: it is gone if that is what it says', () => {
    const [, hole] = cover([noted(trouble)] as never).holes;
    expect(hole?.state).toBe(row.bolt === 'gone' ? 'out' : 'home');
  });

  it('stops before the first start, is loud there, or has nothing of its own', () => {
    const job = jobOf('bolts: {S: M6x25}\npieces: {cover: {bolts: S S}}', [noted(trouble)]);
    const items = gate(job, 'start', null, NOW).items.filter((i) =>
      ['thread-cover', 'trouble-cover'].includes(i.key),
    );
    expect(items.map((i) => i.stops)).toEqual(
      row.atStart === null ? [] : [row.atStart === 'stops'],
    );
  });
});

it('a bolt that is noted stuck after it was noted out holds the piece', () => {
  const job = jobOf('bolts: {S: M6x25}\npieces: {cover: {bolts: S S}}', [
    { piece: 'cover', out: 'S S' },
    noted('stuck'),
  ]);
  const stops = gate(job, 'prying', 'cover', NOW).items.filter((i) => i.stops && !i.done);
  expect(stops.map((i) => i.stop)).toEqual([expect.stringContaining('2 is still in: stuck')]);
});
