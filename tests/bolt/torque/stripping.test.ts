import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { materialOf } from '../../../src/bolt/thread/materials.ts';
import { allThreads } from '../../../src/bolt/thread/threads.ts';
import { strip } from '../../../src/bolt/torque/stripping.ts';

const INTO = [
  'cast aluminium',
  'wrought aluminium',
  'magnesium',
  'iron',
  'steel',
  'brass',
  'plastic',
  'wire insert',
];
const threads = fc.constantFrom(...allThreads().map((t) => t.name));
const into = fc.constantFrom(...INTO);
const ORDER = ["don't", 'tight', 'plenty'];

describe('will it strip', () => {
  // M6 at the trade's own 10 N·m into a cast cover: common practice, no source.
  it.each([
    [3, "don't"],
    [5, "don't"],
    [7.5, 'tight'],
    [9, 'plenty'],
    [12, 'plenty'],
  ])('M6, %d mm in cast aluminium at 10 N·m: %s', (engagement, verdict) => {
    expect(strip({ thread: 'M6', engagement, into: 'cast aluminium', torque: 10 })?.verdict).toBe(
      verdict,
    );
  });

  it('is a range on both sides, and says what it took for granted', () => {
    const s = strip({ thread: 'M6x1', engagement: 9, into: 'cast aluminium' })!;
    expect(s.load.low).toBeLessThan(s.load.high);
    expect(s.pull.low).toBeLessThan(s.pull.high);
    expect(s.assumed).toBe('8.8');
    expect(s.required).toEqual({ value: expect.any(Number), unit: 'mm' });
    expect(s.source).toContain('FED-STD-H28/2B');
    expect(strip({ thread: 'M6', engagement: 9, into: 'iron', class: '10.9' })!.assumed).toBeNull();
  });

  it('is silent about a thread or a material without figures', () => {
    expect(strip({ thread: '2BA', engagement: 9, into: 'iron' })).toBeNull();
    expect(strip({ thread: 'M6', engagement: 9, into: 'cheese' })).toBeNull();
  });

  it('more engagement never strips sooner, and the engagement asked for is plenty', () => {
    const mm = fc.double({ min: 0, max: 60, noNaN: true });
    const torque = fc.option(fc.double({ min: 1, max: 200, noNaN: true }));
    fc.assert(
      fc.property(threads, into, mm, mm, torque, (thread, where, a, b, t) => {
        const of = (engagement: number) => strip({ thread, engagement, into: where, torque: t })!;
        const [less, more] = [of(Math.min(a, b)), of(Math.max(a, b))];
        expect(more.load.low).toBeGreaterThanOrEqual(less.load.low);
        expect(more.load.high).toBeGreaterThanOrEqual(less.load.high);
        expect(ORDER.indexOf(more.verdict)).toBeGreaterThanOrEqual(ORDER.indexOf(less.verdict));
        expect(of(less.required.value + 1e-6).verdict).toBe('plenty');
        expect(of(less.required.value * 0.99).verdict).not.toBe('plenty');
      }),
    );
  });

  it('a wire insert holds more than the aluminium round it, thread for thread', () => {
    fc.assert(
      fc.property(threads, (thread) => {
        const bare = strip({ thread, engagement: 10, into: 'cast aluminium' })!;
        const insert = strip({ thread, engagement: 10, into: 'wire insert in cast aluminium' })!;
        expect(insert.load.low).toBeGreaterThan(bare.load.low);
      }),
    );
  });
});

describe('what a bolt is screwed into', () => {
  it.each([
    ['cast aluminium', 'cast aluminium'],
    ['cast aluminum', 'cast aluminium'],
    ['die-cast alloy', 'cast aluminium'],
    ['aluminium casting, LM24', 'cast aluminium'],
    ['6061-T6', 'wrought aluminium'],
    ['aluminium', 'aluminium'],
    ['magnesium', 'magnesium'],
    ['cast iron', 'iron'],
    ['steel nut', 'steel'],
    ['brass', 'brass'],
    ['nylon', 'plastic'],
    ['wire insert in magnesium', 'wire insert'],
    ['alloy steel', 'steel'],
    ['cast alloy steel', 'steel'],
    ['stainless steel', 'steel'],
    ['alloy', 'aluminium'],
    ['cast alloy', 'cast aluminium'],
    ['weld nut', 'steel'],
    ['nyloc nut', 'steel'],
    ['aluminium bronze', 'brass'],
  ])('%s', (text, name) => {
    expect(materialOf(text)?.name).toBe(name);
  });

  it.each([
    'rubber well-nut',
    'Rubber well-nut M6',
    'titanium alloy',
    'zinc alloy',
    'rivnut',
    'rivet nut in sheet',
    'wire insert in zinc',
  ])('of %s nothing is known, whatever its words look like', (text) => {
    expect(materialOf(text)).toBeNull();
  });

  it('an insert is as strong as what is round it', () => {
    expect(materialOf('wire insert in magnesium')?.shear).toEqual(materialOf('magnesium')?.shear);
    expect(materialOf('who knows')).toBeNull();
    expect(materialOf(null)).toBeNull();
  });
});
