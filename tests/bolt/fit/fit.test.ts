import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Fit, fit, fitLength } from '../../../src/bolt/fit/fit.ts';
import type { Place } from '../../../src/bolt/fit/reach.ts';
import { readKind } from '../../../src/bolt/read/kind.ts';
import type { Kind } from '../../../src/model/types.ts';
import { type Given, holeOf, placeOf } from '../holes.ts';

const kind = (letter: string, text: string) => readKind(letter, text);
const S = kind('S', 'M6x25 flange, 8 mm');
const M = kind('M', 'M6x35 flange, 8 mm');
const L = kind('L', 'M6x55 flange, 8 mm');
const P = kind('P', 'M6x20 flange, 8 mm');

/** A hole that takes a kind, with what is said of it; into cast aluminium by the piece's word. */
const place = (takes: Kind | null, hole: Given = {}, under: string[] = []): Place =>
  placeOf(takes, hole, under, 'cast aluminium');
/** The STOP sketch: 8 mm of cover, 19 mm of thread. */
const DEEP = { thick: 8, thread: { from: 0, to: 19 } };

describe('a bolt in a hole of which everything is known', () => {
  it('bottoms by what its length is too much', () => {
    const f = fit(M, null, place(S, DEEP));
    expect(f).toEqual({
      verdict: 'bottoms',
      sure: true,
      engagement: { mm: 19, turns: 19, d: 3.167 },
      bottomsBy: 8,
      sticksOut: null,
      proud: 27,
      byLength: 10,
      measure: [],
      why: 'It would bottom 8 mm before the head clamps.',
    });
  });

  it.each<[string, Kind, Place, Partial<Fit>]>([
    [
      'belongs there',
      S,
      place(S, DEEP),
      { verdict: 'right', bottomsBy: -2, proud: 17, byLength: 0, why: 'It belongs here.' },
    ],
    [
      'is shorter and still holds',
      P,
      place(S, DEEP),
      {
        verdict: 'shorter',
        byLength: -5,
        engagement: { mm: 12, turns: 12, d: 2 },
        why: '5 mm shorter than the right one; 12 mm of thread would bite.',
      },
    ],
    [
      'has three threads in aluminium',
      S,
      place(M, { thick: 22, thread: { from: 0, to: 19 } }),
      {
        verdict: 'short',
        engagement: { mm: 3, turns: 3, d: 0.5 },
        why: 'Only 3 mm of thread would bite (3 turns); cast aluminium wants 9 mm.',
      },
    ],
    [
      'does not reach the thread',
      S,
      place(L, { thick: 30, thread: { from: 3, to: 40 } }),
      {
        verdict: 'short',
        engagement: { mm: 0, turns: 0, d: 0 },
        proud: -8,
        why: 'It would not reach the thread: 8 mm too short to start.',
      },
    ],
    [
      'sticks out into a wet case',
      M,
      place(S, { ...DEEP, wet: true }),
      {
        verdict: 'through',
        bottomsBy: null,
        sticksOut: 8,
        why: 'It would stick out 8 mm behind: look what lies there. A wet hole wants sealing.',
      },
    ],
    [
      'is longer and does no harm',
      M,
      place(S, { thick: 8, thread: { from: 0, to: 30 } }),
      {
        verdict: 'longer',
        bottomsBy: -3,
        byLength: 10,
        why: '10 mm longer than the right one; it neither bottoms nor sticks out.',
      },
    ],
    [
      'jams on its plain shank',
      { ...M, threaded: 18 },
      place(S, DEEP),
      { verdict: 'shank', why: 'The plain shank would jam 9 mm before the head clamps.' },
    ],
  ])('%s', (_name, bolt, where, expected) => {
    expect(fit(bolt, null, where)).toMatchObject({ sure: true, measure: [], ...expected });
  });

  it('a counterbore counts from where the thread starts', () => {
    const f = fit(S, null, place(S, { thick: 8, thread: { from: 3, to: 19 } }));
    expect(f).toMatchObject({ engagement: { mm: 14 }, bottomsBy: -2, proud: 14 });
  });

  it('a washer of known thickness takes its share, one of unknown thickness leaves it unknown', () => {
    const where = place(S, DEEP);
    expect(fit(M, ['washer-1.6mm'], where)).toMatchObject({ verdict: 'bottoms', bottomsBy: 6.4 });
    expect(fit(M, ['washer'], where)).toMatchObject({
      verdict: 'longer',
      sure: false,
      bottomsBy: null,
    });
    expect(fit(M, ['washer'], where).measure).toContain('under');
    const known = { ...where, thickness: new Map([['washer', 1.6]]) };
    expect(fit(M, ['washer'], known)).toMatchObject({ bottomsBy: 6.4 });
  });
});

describe('a bolt in a hole of which little is known', () => {
  it.each<[string, Kind, Place, Partial<Fit>]>([
    [
      '5 mm longer: probe the hole first',
      kind('Q', 'M6x30 flange, 8 mm'),
      place(S),
      {
        verdict: 'longer',
        sure: false,
        engagement: null,
        bottomsBy: null,
        byLength: 5,
        why: '5 mm longer than the right one: probe the hole first.',
      },
    ],
    [
      '10 mm longer: treated as bottoming',
      M,
      place(S),
      {
        verdict: 'longer',
        sure: false,
        byLength: 10,
        why: '10 mm longer than the right one: assume that it bottoms until the hole is probed.',
      },
    ],
    [
      'shorter, by no one knows how many threads',
      S,
      place(M),
      {
        verdict: 'shorter',
        sure: false,
        byLength: -10,
        measure: ['turns'],
        why: '10 mm shorter than the right one.',
      },
    ],
    [
      'turns counted on the right one are enough to call another too short',
      S,
      place(M, { turns: 15 }),
      { verdict: 'short', sure: true, engagement: { mm: 5, turns: 5, d: 0.833 }, proud: 5 },
    ],
    [
      'the height of the right head says the same',
      S,
      place(M, { proud: 15 }),
      { verdict: 'short', sure: true, engagement: { mm: 5, turns: 5, d: 0.833 }, proud: 5 },
    ],
    [
      'the right bolt came out whole, so a shorter one cannot bottom',
      P,
      place(S, { turns: 17 }),
      { verdict: 'shorter', sure: true, bottomsBy: null, engagement: { mm: 12, turns: 12, d: 2 } },
    ],
    [
      'a longer one may, though the turns are known',
      M,
      place(S, { turns: 17 }),
      { verdict: 'longer', sure: false, engagement: null, proud: 27, measure: ['probe'] },
    ],
    [
      'only the thickness is known, and that is too much for it',
      S,
      place(M, { thick: 21 }),
      {
        verdict: 'short',
        sure: true,
        engagement: null,
        why: 'At most 4 mm of thread would bite (4 turns); cast aluminium wants 9 mm.',
      },
    ],
    [
      'only the thickness is known, and it ends inside the piece',
      S,
      place(M, { thick: 27 }),
      {
        verdict: 'short',
        sure: true,
        why: 'It would not reach the thread: at least 2 mm too short to start.',
      },
    ],
    [
      'it ends where the thread starts',
      S,
      place(M, { turns: 10 }),
      { verdict: 'short', sure: true, why: 'It would not reach the thread.' },
    ],
    [
      'nobody knows what belongs there, but the figures do',
      M,
      place(null, DEEP),
      { verdict: 'bottoms', sure: true, bottomsBy: 8, byLength: null },
    ],
    [
      'nobody knows anything',
      M,
      place(null),
      {
        verdict: null,
        sure: false,
        measure: ['thick', 'probe'],
        why: 'Too little is known of this bolt and this hole.',
      },
    ],
    [
      'its own length is not known',
      kind('Q', 'M6 flange'),
      place(S, DEEP),
      { verdict: null, sure: false, measure: ['length'] },
    ],
  ])('%s', (_name, bolt, where, expected) => {
    expect(fit(bolt, null, where)).toMatchObject(expected);
  });

  it('an open hole has no bottom: it reaches farther behind', () => {
    const f = fit(M, null, place(S, { wet: true }));
    expect(f).toMatchObject({ verdict: 'longer', sure: false });
    expect(f.why).toContain('reaches so much farther behind');
  });

  it('figures that contradict the bolt that came out are not believed', () => {
    const probedWrong = { turns: 17, thread: { from: 0, to: 9 } };
    expect(fit(S, null, place(S, probedWrong))).toMatchObject({
      verdict: 'right',
      sure: false,
      measure: ['turns', 'probe'],
    });
    expect(fit(P, null, place(S, probedWrong))).toMatchObject({ verdict: 'shorter', sure: false });
    const apart = { thick: 8, thread: { from: 0, to: 40 }, turns: 9 };
    expect(fit(P, null, place(S, apart))).toMatchObject({ sure: false });
  });
});

describe('a bolt that is not the right one', () => {
  it.each<[string, string, Partial<Fit>]>([
    ['M6x1x25 flange, 8 mm', 'the same bolt under another letter', { verdict: 'same', sure: true }],
    ['M6x25', 'the same as far as is known', { verdict: 'same', sure: false, measure: ['head'] }],
    [
      'M8x25 flange',
      'another thread',
      { verdict: 'wrong-thread', sure: true, engagement: null, why: 'M8 in a hole for M6.' },
    ],
    [
      '1/4-20 x 1 flange',
      'a thread that starts and ruins',
      {
        verdict: 'wrong-thread',
        sure: true,
        why: '1/4-20 in a hole for M6. It starts, and ruins the thread.',
      },
    ],
    [
      'M6x25 LH flange',
      'the other hand',
      { verdict: 'wrong-thread', sure: true, why: 'A left-hand thread in a right-hand hole.' },
    ],
    [
      'M6x25 socket',
      'another head',
      { verdict: 'wrong-head', sure: true, why: 'Head socket; the right one is flange.' },
    ],
    ['M6x55 socket', 'another head before another length', { verdict: 'wrong-head' }],
    ['9odd x 1 flange', 'a thread it has no figures for', { sure: false }],
  ])('%s: %s', (text, _name, expected) => {
    expect(fit(kind('X', text), null, place(S, { turns: 17 }))).toMatchObject(expected);
  });

  it('a weaker mark on the head is the wrong head, a stronger one the same size', () => {
    const strong = kind('S', 'M6x25 10.9 flange');
    expect(fit(kind('X', 'M6x25 8.8 flange'), null, place(strong))).toMatchObject({
      verdict: 'wrong-head',
      why: 'Marked 8.8; the right one is 10.9: too weak.',
    });
    expect(fit(kind('X', 'M6x25 12.9 flange'), null, place(strong)).verdict).toBe('same');
  });

  it('another length of plain shank is not the same bolt', () => {
    const long = { ...kind('X', 'M6x25 flange'), threaded: 10 };
    const where = (hole = {}) => place({ ...S, threaded: 20 }, hole);
    expect(fit(long, null, where())).toMatchObject({
      verdict: 'same',
      sure: false,
      measure: ['turns'],
      why: 'The same size, threaded over 10 mm instead of 20 mm.',
    });
    expect(fit(long, null, where({ turns: 9 }))).toMatchObject({ verdict: 'same', sure: true });
    expect(fit(long, null, where({ turns: 12 }))).toMatchObject({ verdict: 'shank', sure: true });
  });

  it('less than the right one bites with is too little, where that is less than the rule', () => {
    const f = fit(P, null, place(S, { turns: 7 }));
    expect(f.verdict).toBe('short');
    expect(f.why).toBe('Only 2 mm of thread would bite (2 turns); the right one bites with 7 mm.');
  });

  it('its own bolt without the washer it had may bottom', () => {
    const where = place(S, { thick: 4, thread: { from: 0, to: 20 } }, ['copper-1.5mm']);
    expect(fit(S, null, where)).toMatchObject({ verdict: 'right', why: 'It belongs here.' });
    expect(fit(S, [], where)).toMatchObject({ verdict: 'bottoms', bottomsBy: 1 });
    expect(fit(S, [], place(S, DEEP, ['clip'])).why).toBe(
      'It belongs here, with clip under the head.',
    );
  });
});

describe('a bolt of which only the length is known', () => {
  it('is judged as the right bolt in that length', () => {
    expect(fitLength(25, null, place(S, DEEP)).verdict).toBe('right');
    expect(fitLength(25.3, null, place(S, DEEP)).verdict).toBe('right');
    expect(fitLength(35, null, place(S, DEEP))).toMatchObject({
      verdict: 'bottoms',
      bottomsBy: 8,
      byLength: 10,
      sure: true,
    });
    expect(fitLength(30, null, place(S))).toMatchObject({
      verdict: 'longer',
      byLength: 5,
      sure: false,
    });
    expect(fitLength(30, null, place(kind('S', 'M6 flange')))).toMatchObject({
      verdict: null,
      byLength: null,
      measure: ['length'],
    });
  });
});

/** What may lie under a head; a clip is 2.3 mm thick, which nobody needs to know. */
const STACKS = [[], ['washer-1.6mm'], ['clip'], ['clip', 'washer-1.6mm']];
const CLIP = 2.3;
const high = (under: readonly string[]) =>
  under.reduce((sum, word) => sum + (word === 'clip' ? CLIP : 1.6), 0);

/** A true hole: own bolt of length L, engaged by e, thread from a, and so much of it to spare. */
const truth = fc
  .record({
    L: fc.integer({ min: 16, max: 60 }),
    e: fc.integer({ min: 3, max: 14 }),
    a: fc.integer({ min: 0, max: 4 }),
    spare: fc.integer({ min: 0, max: 12 }),
    other: fc.integer({ min: 8, max: 80 }),
    own: fc.constantFrom(...STACKS),
    under: fc.constantFrom(...STACKS),
    wet: fc.boolean(),
    into: fc.constantFrom('cast aluminium', 'iron', 'steel', null),
  })
  .map((r) => ({ ...r, t: r.L - r.e - r.a - high(r.own) }))
  .filter((r) => r.t > 0);
const told = fc.record({
  thick: fc.boolean(),
  thread: fc.constantFrom('none', 'start', 'all'),
  turns: fc.boolean(),
  proud: fc.boolean(),
  into: fc.boolean(),
  clip: fc.boolean(),
  length: fc.boolean(),
});
type Truth = typeof truth extends fc.Arbitrary<infer T> ? T : never;
type Told = typeof told extends fc.Arbitrary<infer T> ? T : never;

/** The hole as a person has measured it. */
function measured(r: Truth, say: Told): Place {
  const thread = {
    none: null,
    start: { from: r.a, to: null },
    all: { from: r.a, to: r.a + r.e + r.spare },
  }[say.thread];
  return {
    takes: { kind: kind('A', say.length ? `M6x${r.L} hex` : 'M6 hex'), with: r.own },
    hole: holeOf('3', {
      thick: say.thick ? r.t : null,
      thread,
      turns: say.turns ? r.e : null,
      proud: say.proud ? r.e : null,
      wet: r.wet,
      into: say.into ? r.into : null,
    }),
    piece: null,
    thickness: new Map(say.clip ? [['clip', CLIP]] : []),
  };
}
const ALL: Told = {
  thick: true,
  thread: 'all',
  turns: true,
  proud: true,
  into: true,
  clip: true,
  length: true,
};
const other = (r: Truth) => kind('B', `M6x${r.other} hex`);

describe('whatever was measured', () => {
  it('the figures are those of the one datum', () => {
    fc.assert(
      fc.property(truth, told, (r, say) => {
        const f = fit(other(r), r.under, measured(r, say));
        const reach = r.other - r.t - high(r.under);
        const [a, b] = [r.a, r.a + r.e + r.spare];
        const near = (figure: number | null | undefined, truly: number) => {
          if (figure != null) expect(figure).toBeCloseTo(truly, 2);
        };
        near(f.engagement?.mm, Math.max(0, Math.min(reach, b) - a));
        near(f.proud, reach - a);
        near(f.bottomsBy, reach - b);
        near(f.sticksOut, reach - b);
        if (say.length) expect(f.byLength).toBe(r.other - r.L);
      }),
    );
  });

  it('what is sure from little stays so when more is measured', () => {
    fc.assert(
      fc.property(truth, told, (r, say) => {
        const little = fit(other(r), r.under, measured(r, say));
        const much = fit(other(r), r.under, measured(r, ALL));
        if (little.sure) expect(much.verdict).toBe(little.verdict);
      }),
      { numRuns: 3000 },
    );
  });

  it('turns, heights, and thickness with thread are one measure', () => {
    fc.assert(
      fc.property(truth, (r) => {
        const no: Told = { ...ALL, thick: false, turns: false, proud: false };
        const ways = [
          { ...no, turns: true },
          { ...no, proud: true },
          { ...no, thick: true },
        ];
        const [first, ...others] = ways.map((say) => fit(other(r), r.under, measured(r, say)));
        for (const f of others) expect(f).toEqual(first);
      }),
    );
  });

  it("the hole's own bolt is right, and never too short", () => {
    fc.assert(
      fc.property(truth, told, (r, say) => {
        const where = measured(r, say);
        const own = fit(where.takes!.kind, null, where);
        expect(own.verdict).toBe('right');
        // All of them are shorter than 80 mm: none misses its length by more than 0.6.
        const close = own.bottomsBy !== null && own.bottomsBy > -0.6;
        if (close)
          expect([own.sure, own.measure]).toEqual(own.sure ? [true, []] : [false, ['probe']]);
        else expect([own.sure, own.measure]).toEqual([true, []]);
      }),
    );
  });

  it('a longer bolt never bites less, and what is not sure says what to measure', () => {
    fc.assert(
      fc.property(truth, told, fc.integer({ min: 1, max: 30 }), (r, say, more) => {
        const where = measured(r, say);
        const [shorter, longer] = [r.other, r.other + more].map((mm) =>
          fit(kind('B', `M6x${mm} hex`), r.under, where),
        );
        if (shorter!.engagement && longer!.engagement) {
          expect(longer!.engagement.mm).toBeGreaterThanOrEqual(shorter!.engagement.mm);
        }
        for (const f of [shorter!, longer!]) {
          expect(f.sure ? f.measure.length === 0 : f.measure.length > 0).toBe(true);
        }
      }),
    );
  });

  it('a verdict does not depend on what was asked before', () => {
    const bolts = [S, M, L, P, kind('X', '1/4-20 x 1 hex'), kind('Y', '2BA x 1/2'), kind('Z', '?')];
    const holes = [
      place(S, DEEP),
      place(M, { turns: 12 }),
      place(L),
      place(null, DEEP),
      place(kind('Y', '2BA x 1/2')),
    ];
    const pairs = bolts.flatMap((b) => holes.map((h) => [b, h] as const));
    const straight = pairs.map(([b, h]) => fit(b, null, h));
    fc.assert(
      fc.property(fc.shuffledSubarray(pairs.map((_, i) => i)), (order) => {
        for (const i of order) expect(fit(pairs[i]![0], null, pairs[i]![1])).toEqual(straight[i]);
      }),
    );
  });

  it('never throws on whatever kinds a file may hold', () => {
    fc.assert(
      fc.property(fc.string(), fc.string(), told, truth, (a, b, say, r) => {
        const where = { ...measured(r, say), takes: { kind: kind('A', a), with: [b] } };
        const f = fit(kind('B', b), [a], where);
        expect(f.why.length).toBeGreaterThan(0);
      }),
    );
  });
});
