import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fold, foldMore } from '../../../src/job/fold/fold.ts';
import { lastBought, livingAt, livingOf } from '../../../src/job/fold/living-of.ts';
import { judge } from '../../../src/job/judge/judge.ts';
import { readJob } from '../../../src/job/read.ts';
import type { Entry, Verb, Wish } from '../../../src/model/types.ts';
import { Bench, COVER } from '../bench.ts';

const upper = readJob(COVER, 'job.yaml').upper;
const ids = Array.from({ length: 12 }, (_, i) => `entry${`${i}`.padStart(3, '0')}`);

const values: Record<Verb, string[]> = {
  out: ['S', 'M+clip', 'S S M+clip L S', '! - ? S', '!', '-', '?', 'nonsense+', ''],
  in: ['S', 'M+clip', 'L', 'S S', '?', '%'],
  tight: ['snug', 'full', 'unheard'],
  state: ['stuck', 'rounded', 'sheared', 'stud', 'pulled', 'empty', 'mended'],
  settle: ['S', 'L', 'M+clip', '%'],
  removed: ['all', 'aside'],
  fitted: ['all'],
  done: ['done', 'failed'],
  note: ['a note'],
  photo: ['photos/p104.jpg'],
  keep: [...ids, 'nosuchid'],
  taken: ['other.yaml'],
  reading: ['41400 km', 'much'],
  inside: ['2 rags', 'plug', ''],
  cleared: ['1 rag', 'all', '7 rags'],
  seen: ['sealing faces', 'sealing all'],
  struck: ['sealing wrench'],
  added: ['sealing'],
  written: ['routes', 'map'],
  renamed: ['S', 'M', 'Q'],
  corrected: ['torque', 'torque', 'torque', 'caution', 'thick', 'sequence', 'limit'],
  looked: ['good', 'bad', 'unclear'],
  tried: ['new plug'],
  listed: ['Coil open'],
  chosen: ['renew seal'],
  figured: ['chance 1 in 6'],
  found: ['Coil open'],
  undo: [...ids, 'nosuchid'],
};

/** Entries as a wild merge or an editor may leave them: any verb, anywhere, ids twice. */
const entry: fc.Arbitrary<Entry> = fc
  .constantFrom(...(Object.keys(values) as Verb[]))
  .chain((verb) =>
    fc.record({
      at: fc.constant('2026-04-11T18:25:40+02:00'),
      id: fc.constantFrom(...ids),
      piece: fc.constantFrom('cover', 'lever', 'hose', 'gone'),
      hole: fc.option(fc.subarray(['1', '2', '3', '5', '77'], { minLength: 1 }), {
        nil: undefined,
      }),
      verb: fc.constant(verb),
      value: fc.constantFrom(...values[verb]),
      because: fc.option(fc.constant('so it is'), { nil: undefined }),
      was: fc.constantFrom('10 N·m, manual 2-17', '8 N·m', '9 N·m'),
      says: fc.constantFrom('10 N·m, manual 2-17', '8 N·m', '9 N·m', ''),
    }),
  )
  .map(({ hole, because, was, says, ...rest }) => ({
    ...rest,
    ...(rest.verb === 'corrected' ? { was, says } : {}),
    ...(hole ? { hole } : {}),
    ...(because ? { because } : {}),
  }));

describe('fold', () => {
  it('takes any history, and every hole has one state of the five', () => {
    fc.assert(
      fc.property(fc.array(entry, { maxLength: 40 }), (entries) => {
        const job = fold(upper, entries);
        for (const piece of job.pieces.values()) {
          for (const hole of piece.holes) {
            expect(['home', 'out', 'in', 'tight', 'conflict']).toContain(hole.state);
            expect(hole.state === 'conflict').toBe(hole.conflict !== null);
            if (hole.state === 'out') expect([hole.holds, hole.passes]).toEqual([null, []]);
          }
        }
        expect(job.conflicts.length).toBe(
          [...job.pieces.values()].flatMap((p) => p.holes.filter((h) => h.conflict)).length,
        );
      }),
      { numRuns: 2000 },
    );
  });

  it('leaves what it reads as it was, and says the same again', () => {
    fc.assert(
      fc.property(fc.array(entry, { maxLength: 20 }), (entries) => {
        const before = JSON.stringify(entries);
        const once = JSON.stringify([...fold(upper, entries).pieces.values()]);
        expect(JSON.stringify([...fold(upper, entries).pieces.values()])).toBe(once);
        expect(JSON.stringify(entries)).toBe(before);
      }),
      { numRuns: 300 },
    );
  });

  it('goes on from a job by one mark to what the whole diary says, and leaves that job as it was', () => {
    // A cover off, on and tested: what comes off then begins another round, and opens its tests again.
    const tests =
      'tasks:\n  fill: {do: Fill, after: cover on}\n  weep: {test: Idle, after: fill}\n';
    const bench = new Bench(COVER.replace('diary:', `${tests}diary:`));
    bench.openCover().fillCover().tightenCover();
    for (const task of ['fill', 'weep']) bench.mark({ do: 'done', task });
    const { upper: tested } = bench.job;
    const round = bench.entries;
    let goneOn = 0;
    const at = '2026-04-11T18:25:40+02:00';
    const of = { at, piece: 'hose', hole: ['1'], because: 'so it is' };
    const settled: Entry[] = [
      { ...of, id: 'came-out', verb: 'out', value: 'S' },
      { ...of, id: 'settled-', verb: 'settle', value: 'L' },
      { ...of, id: 'is-in---', verb: 'tight', value: 'full' },
    ];
    const cover = { at, piece: 'cover' };
    const renamed: Entry[] = [
      { ...cover, id: 'came-out', hole: ['1'], verb: 'out', value: 'M' },
      { at, id: 'renamed-', verb: 'renamed', value: 'Q', was: 'M' },
    ];
    const [was, says] = ['10 N·m, manual 2-17', '8 N·m'];
    const corrected: Entry[] = [
      { ...cover, id: 'is-so---', verb: 'corrected', value: 'torque', was, says },
    ];
    const cleared: Entry[] = [
      { ...cover, id: 'went-in-', verb: 'inside', value: '2 rags' },
      { ...cover, id: 'is-out--', verb: 'cleared', value: '1 rag' },
    ];
    const bolts: Verb[] = ['out', 'in', 'tight', 'state', 'settle', 'removed', 'fitted'];
    const ofBolts = entry.filter((e) => bolts.includes(e.verb) && e.piece !== 'gone');
    const mostly = fc.oneof({ weight: 1, arbitrary: entry }, { weight: 4, arbitrary: ofBolts });
    fc.assert(
      fc.property(fc.nat(round.length), fc.array(mostly, { maxLength: 20 }), (begun, wild) => {
        // Some ids stand twice, some are named by an undo before they are there; some entries are of no piece.
        const more = wild.map((e, i) => {
          const { piece: _, ...ofNone } = e;
          const n = ids.indexOf(e.id);
          return n < 4 ? e : { ...(n > 9 ? ofNone : e), id: `of-its-${i}` };
        });
        const entries = [...round.slice(0, begun), ...more];
        const jobs = [fold(tested, [])];
        for (let n = 1; n <= entries.length; n++) {
          const [some, before] = [entries.slice(0, n), jobs.at(-1)];
          const further = before && foldMore(before, tested, some, []);
          if (further) goneOn += 1;
          jobs.push(further ?? fold(tested, some));
        }
        jobs.forEach((job, n) => {
          const whole = fold(tested, entries.slice(0, n));
          expect(job).toEqual(whole);
          expect(livingOf(job)).toEqual(livingOf(whole));
          expect(livingAt(job, 'cover')).toEqual(livingAt(whole, 'cover'));
        });
      }),
      { numRuns: 500, examples: [settled, renamed, corrected, cleared].map((some) => [0, some]) },
    );
    expect(goneOn).toBeGreaterThan(1000);
  });

  it('finds what counts of a piece and of a thing to buy, wherever it stands', () => {
    const bought = fc.record({
      buy: fc.option(fc.constantFrom('seal', 'oil'), { nil: undefined }),
    });
    const any = fc.tuple(entry, bought).map(([e, { buy }]) => (buy ? { ...e, buy } : e));
    fc.assert(
      fc.property(fc.uniqueArray(any, { selector: (e) => e.id, maxLength: 12 }), (entries) => {
        const job = fold(upper, entries);
        const living = entries.filter((e) => job.living.has(e.id));
        const cover = living.filter((e) => e.piece === 'cover');
        expect(livingAt(job, 'cover')).toEqual(cover);
        const seal = living.findLast((e) => e.buy === 'seal' && e.verb === 'done');
        expect(lastBought(job, 'seal')).toEqual(seal);
      }),
    );
  });

  it('does not care in which order marks on different holes stand', () => {
    const marks: Entry[] = ['1', '2', '4', '5'].map((hole, i) => ({
      at: '2026-04-11T18:25:40+02:00',
      id: `other${i}00`,
      piece: 'cover',
      hole: [hole],
      verb: 'out',
      value: hole === '4' ? 'L' : 'S',
    }));
    fc.assert(
      fc.property(fc.shuffledSubarray(marks, { minLength: 4 }), (order) => {
        const said = (entries: Entry[]) =>
          fold(upper, entries)
            .pieces.get('cover')
            ?.holes.map((h) => h.state);
        expect(said(order)).toEqual(said(marks));
      }),
    );
  });
});

const hole = fc.constantFrom('1', '2', '3', '4', '5');
const wish: fc.Arbitrary<Wish> = fc.oneof(
  fc.record({
    do: fc.constant('out' as const),
    piece: fc.constant('cover'),
    holes: fc.array(hole, { minLength: 1, maxLength: 3 }),
  }),
  fc.record({
    do: fc.constant('out' as const),
    piece: fc.constant('cover'),
    row: fc.constantFrom('s s m+clip l s', 's ! m+clip l l', 's'),
  }),
  fc.record({
    do: fc.constant('in' as const),
    piece: fc.constantFrom('cover', 'lever'),
    holes: hole.map((h) => [h]),
    hand: fc.constantFrom({ kind: 'S' }, { kind: 'M' }, { length: 55 }),
  }),
  fc.record({
    do: fc.constant('in' as const),
    piece: fc.constant('cover'),
    hand: fc.constantFrom({ kind: 'S' }, { kind: 'M' }, { kind: 'L' }),
  }),
  fc.record({ do: fc.constant('tight' as const), piece: fc.constant('cover') }),
  fc.record({
    do: fc.constant('tight' as const),
    piece: fc.constant('cover'),
    holes: hole.map((h) => [h]),
  }),
  fc.record({
    do: fc.constantFrom('off' as const, 'on' as const, 'aside' as const),
    piece: fc.constantFrom('cover', 'lever', 'hose'),
  }),
  fc.record({
    do: fc.constant('state' as const),
    piece: fc.constant('cover'),
    hole,
    state: fc.constantFrom('stuck' as const, 'pulled' as const, 'mended' as const),
  }),
  fc.record({
    do: fc.constant('settle' as const),
    piece: fc.constant('cover'),
    hole,
    kind: fc.constantFrom('S', 'L'),
  }),
  fc.record({ do: fc.constant('undo' as const) }),
);

describe('judge and fold', () => {
  it('what was let in through the door without a reason never makes a conflict', () => {
    fc.assert(
      fc.property(fc.array(wish, { maxLength: 30 }), (wishes) => {
        const bench = new Bench();
        for (const w of wishes) if (bench.ask(w).ok && notAlready(bench, w)) bench.mark(w);
        expect(bench.job.conflicts).toEqual([]);
      }),
      { numRuns: 200 },
    );
  });

  it('an undo gives back exactly what was before', () => {
    fc.assert(
      fc.property(fc.array(wish, { maxLength: 20 }), wish, (wishes, last) => {
        const bench = new Bench();
        for (const w of wishes) if (bench.ask(w).ok && notAlready(bench, w)) bench.mark(w);
        if (last.do === 'undo' || !bench.ask(last).ok || !notAlready(bench, last)) return;
        const holes = () =>
          JSON.stringify(
            [...bench.job.pieces.values()].map((p) => [
              p.where,
              p.holes.map((h) => [h.state, h.holds, h.passes, h.trouble]),
            ]),
          );
        const before = holes();
        const { id } = bench.mark(last);
        bench.mark({ do: 'undo', id });
        expect(holes()).toBe(before);
      }),
      { numRuns: 200 },
    );
  });

  it('a second time is already so, or refused: never noted twice', () => {
    fc.assert(
      fc.property(fc.array(wish, { maxLength: 15 }), wish, (wishes, last) => {
        const bench = new Bench();
        for (const w of wishes) if (bench.ask(w).ok && notAlready(bench, w)) bench.mark(w);
        if (last.do === 'undo' || last.do === 'tight' || !bench.ask(last).ok) return;
        if (notAlready(bench, last)) bench.mark(last);
        const again = judge(bench.job, last, { at: '2026-04-11T18:25:40+02:00', id: 'seconded' });
        expect(again.ok && again.entry !== null).toBe(false);
      }),
      { numRuns: 200 },
    );
  });
});

function notAlready(bench: Bench, w: Wish): boolean {
  const verdict = bench.ask(w);
  return verdict.ok && verdict.entry !== null;
}
