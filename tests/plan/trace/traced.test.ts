import { describe, expect, it } from 'vitest';
import { nextOnJob } from '../../../src/plan/next/next-on-job.ts';
import { plan } from '../../../src/plan/plan.ts';
import { foundWish } from '../../../src/plan/trace/found.ts';
import { besideSaid, conflictSaid, traceRows } from '../../../src/plan/trace/say.ts';
import { traced } from '../../../src/plan/trace/traced.ts';
import { jobOf, NOW, off, type Said } from '../make.ts';

/** An invented single: a spark side, a fuel side, two looks behind one tank. */
const STARTS = `
pieces:
  seat: {takes: 2 min}
  tank: {under: seat, takes: 10 min}
  carburettor: {under: tank, care: fuel}
suspects:
  float: {what: Float needle leaks, likely: often, piece: carburettor, part: TN-31 needle}
  coil: Coil open
  plug: Plug wet
  lead: Lead broken
checks:
  spark: {check: Blue spark, bad: [coil, plug, lead], takes: 3 min}
  primary: {check: Coil primary, bad: coil, limit: 0.8..1.2 ohm, takes: 5 min, under: tank}
  through: {check: Lead has a way through, bad: lead, takes: 1 min, under: tank}
`;

const look = (check: string, looked: string, more: Said = {}): Said => ({ check, looked, ...more });
const of = (lines: Said[] = [], text = STARTS) => traced(jobOf(text, lines));
const left = (now: ReturnType<typeof traced>) =>
  now.answer.suspects.filter((s) => s.cleared.length === 0).map((s) => s.name);

describe('the way to a check', () => {
  it('is all that has to come off first, from the plan, counted with its time', () => {
    const { next } = of([look('spark', 'bad')]);
    // Seat and tank off, then the minute for the lead: 2 + 10 + 1.
    expect(next).toMatchObject({ check: 'through', minutes: 13, opens: ['seat', 'tank'] });
  });

  it('is shared by checks behind the same cover: the second costs its own time only', () => {
    const { answer } = of([look('spark', 'bad')]);
    expect(answer.way).toMatchObject({
      check: 'through',
      good: { check: 'primary', minutes: 5, opens: [] },
    });
    // 13 minutes for all; 5 more where it is not the lead, which two of three alike are.
    expect(answer.expected.minutes).toBeCloseTo(13 + (2 / 3) * 5, 9);
  });

  it('is gone when the cover is off', () => {
    const { next } = of([look('spark', 'bad'), off('seat'), off('tank')]);
    expect(next).toMatchObject({ minutes: 1, opens: [] });
  });

  it('that the file gives no time for is taken from the marks of the diary, breaks left out', () => {
    const text = STARTS.replace('{under: seat, takes: 10 min}', '{under: seat}');
    const lines = [
      look('spark', 'bad', { at: '2026-05-02T10:00:00+02:00' }),
      off('seat', '2026-05-02T10:02:00+02:00'),
      off('tank', '2026-05-02T10:20:00+02:00'),
      { at: '2026-05-02T12:30:00+02:00', piece: 'tank', fitted: 'all' },
      { at: '2026-05-02T12:31:00+02:00', piece: 'seat', fitted: 'all' },
    ];
    expect(of(lines, text).next).toMatchObject({ minutes: 2 + 18 + 1 });
  });
});

describe('looks of the diary', () => {
  it('clear by what they show, and an undo brings a suspect back', () => {
    expect(left(of([look('spark', 'good')]))).toEqual(['float']);
    expect(left(of([look('spark', 'bad'), look('primary', 'good')]))).toEqual(['plug', 'lead']);
    const back = of([look('spark', 'good'), { undo: 'i0000000' }]);
    expect(left(back)).toEqual(['float', 'coil', 'plug', 'lead']);
  });

  it('a part changed to try clears its own suspect, and only that', () => {
    const tried: Said[] = [
      { suspect: 'plug', tried: 'new plug' },
      { suspect: 'plug', looked: 'good', old: 'back' },
    ];
    expect(left(of(tried))).toEqual(['float', 'coil', 'lead']);
    expect(of(tried).answer.suspects.at(-1)).toMatchObject({ cleared: ['plug tried'] });
  });

  it('that fit nobody are told with all that may explain them', () => {
    const job = jobOf(STARTS, [
      look('spark', 'bad'),
      ...['coil', 'plug', 'lead'].flatMap((suspect): Said[] => [
        { suspect, tried: 'new' },
        { suspect, looked: 'good', old: 'back' },
      ]),
    ]);
    const { conflict } = traced(job).answer;
    expect(conflict?.diagnoses).toEqual([['something that is not on the list']]);
    expect(conflict?.doubts).toContainEqual(['spark']);
    expect(conflictSaid(job, conflict!).join('\n')).toContain('  Coil open: new part tried');
  });

  it('a suspect that is added late takes part at once', () => {
    const late = STARTS.replace('  lead: Lead broken', '  lead: Lead broken\n  tap: Tap blocked');
    expect(left(of([look('spark', 'good')], late))).toEqual(['float', 'tap']);
  });
});

describe('what was found', () => {
  const lines = [
    look('primary', 'bad', { result: '0.4 ohm', limit: '0.8..1.2 ohm' }),
    look('spark', 'bad'),
    { suspect: 'coil', found: 'Coil open' },
  ];

  it('is no suspect any more, and the look that showed it is the next', () => {
    const now = of(lines);
    expect(left(now)).toEqual(['float', 'plug', 'lead']);
    expect(now).toMatchObject({ proof: 'spark', proved: false });
    expect(now.next).toMatchObject({ check: 'spark', minutes: 3, good: [], bad: ['plug', 'lead'] });
  });

  it('is proved by that look, or by its test', () => {
    expect(of([...lines, look('spark', 'good')])).toMatchObject({ proved: true, next: null });
    const text = `${STARTS}tasks:\n  proof-coil: {test: Blue spark, proves: spark}\n`;
    const tested = of([...lines, { task: 'proof-coil', done: 'passed' }], text);
    expect(tested).toMatchObject({ proved: true, next: null });
    expect(tested.answer.conflict).toBe(null);
  });

  it('begins a second round with what is not cleared where the trouble is still there', () => {
    const now = of([...lines, look('spark', 'bad')]);
    expect(now.proved).toBe(false);
    expect(left(now)).toEqual(['plug', 'lead']);
    expect(now.next).toMatchObject({ check: 'through' });
    expect(now.answer.conflict).toBe(null);
  });

  it('keeps out what a good look cleared before it', () => {
    const now = of([look('through', 'good'), ...lines, look('spark', 'bad')]);
    expect(left(now)).toEqual(['plug']);
  });

  it('puts the readings before and behind it side by side', () => {
    const again = look('primary', 'good', { result: '0.94 ohm', limit: '0.8..1.2 ohm' });
    const job = jobOf(STARTS, [...lines, again]);
    expect(besideSaid(job, traced(job))).toEqual([
      'Coil primary: before 0.4 ohm (bad), now 0.94 ohm (good)',
    ]);
    expect(traceRows(job, traced(job)).at(-1)).toMatchObject({ share: 'found', what: 'Coil open' });
  });

  it('brings its part on the list, its piece next, and its test among the tasks', () => {
    const before = jobOf(STARTS, [look('spark', 'good')]);
    expect(foundWish(before, 'float')).toEqual({
      do: 'found',
      suspect: 'float',
      buy: { key: 'tn-31-needle', fields: { what: 'TN-31 needle', for: 'carburettor on' } },
      mend: {
        key: 'mend-float',
        fields: { do: 'Put right: Float needle leaks', while: 'carburettor off' },
      },
      test: {
        key: 'proof-float',
        fields: { test: 'Test: try whether it is gone', after: 'carburettor on' },
      },
    });
    expect(foundWish(jobOf(STARTS, lines.slice(0, 1)), 'coil').test).toEqual({
      key: 'proof-coil',
      fields: {
        after: 'mend-coil',
        test: 'Coil primary, once more',
        limit: '0.8..1.2 ohm',
        proves: 'primary',
      },
    });
    const next = (more: Said[]) => {
      const job = jobOf(STARTS, [{ suspect: 'float', found: 'Float needle leaks' }, ...more]);
      return nextOnJob(job, { plan: plan(job, NOW), cures: [], now: NOW })?.say;
    };
    expect(next([])).toBe('Seat: take it off.');
    expect(next([off('seat')])).toBe('Tank: take it off.');
  });
});

it('relabelling suspects and checks changes nothing but the names', () => {
  const other = STARTS.replace(
    /\b(float|coil|plug|lead|spark|primary|through)\b(?=[,:\]])/g,
    'x-$1',
  )
    .replace('bad: coil', 'bad: x-coil')
    .replace('bad: lead', 'bad: x-lead')
    .replace(/\[x-coil, x-plug, lead/, '[x-coil, x-plug, x-lead');
  const named = (now: ReturnType<typeof traced>) => JSON.stringify(now.answer).replaceAll('x-', '');
  expect(named(of([], other))).toBe(named(of()));
});

describe('two that were found', () => {
  const TWO = `
suspects: {plug: Plug wet, tap: Tap blocked, lead: Lead broken}
checks:
  spark: {check: Blue spark, bad: [plug, lead], takes: 3 min}
  flow: {check: Runs freely, bad: tap, takes: 2 min}
tasks:
  proof-plug: {test: Blue spark, proves: spark}
  proof-lead: {test: Blue spark, proves: spark}
`;
  const found = (suspect: string): Said => ({ suspect, found: suspect });
  const both = [look('spark', 'bad'), look('flow', 'bad'), found('plug'), found('tap')];

  it('are proved each by its own look, the last one first', () => {
    const now = of([...both, look('flow', 'good')], TWO);
    expect(now.found.map(({ proved }) => proved)).toEqual([false, true]);
    expect(now.next).toMatchObject({ check: 'spark', good: [] });
    const job = jobOf(TWO, [...both, look('flow', 'good')]);
    expect(traceRows(job, now).find(({ name }) => name === 'plug')?.by).toContain('not proved');
    const all = of([...both, look('flow', 'good'), look('spark', 'good')], TWO);
    expect(all.found.map(({ proved }) => proved)).toEqual([true, true]);
    expect(all.next).toBeNull();
    const share = (at: typeof now) => traceRows(job, at).find(({ name }) => name === 'lead')?.share;
    expect([share(now), share(all)]).toEqual(['may be', 'cleared']);
  });

  it('by the same look are both proved where it is made once', () => {
    const lines = [look('spark', 'bad'), found('plug'), found('lead')];
    const job = jobOf(TWO, [...lines, { task: 'proof-lead', done: 'passed' }]);
    expect(job.tasks.get('proof-plug')?.done).toBe('passed');
    expect(traced(job).found.map(({ proved }) => proved)).toEqual([true, true]);
  });
});
