import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/job/judge/judge.ts';
import type { Job } from '../../src/model/types.ts';
import { circlesOf } from '../../src/plan/order/relations.ts';
import { type Plan, plan } from '../../src/plan/plan.ts';
import { jobOf, NOW, off, on, type Said } from './make.ts';
import { type Drawn, declared, drawnJob, finish } from './random.ts';

const wild = drawnJob(true);
const tame = drawnJob(false).filter((d) => circlesOf(jobOf(d.text).upper).length === 0);

/** Anything that could have happened, in any order. */
const history = (drawn: Drawn): fc.Arbitrary<Said[]> => {
  const pieces = [...drawn.rows.keys()];
  const steps = [
    ...pieces.flatMap((p) => [`${p} off`, `${p} on`]),
    ...drawn.tasks.map((t) => t.key),
  ];
  return fc
    .array(fc.constantFrom(...steps), { maxLength: 12 })
    .map((all) => all.flatMap((step) => finish(drawn, step)));
};
const withHistory = (jobs: fc.Arbitrary<Drawn>) =>
  jobs.chain((drawn) => fc.record({ drawn: fc.constant(drawn), lines: history(drawn) }));

const isOpen = (p: Plan) => p.steps.filter((s) => !s.done).map((s) => s.step);

describe('every plan', () => {
  it('respects every relation among what is still to come, and what is done stands before what is open', () => {
    fc.assert(
      fc.property(withHistory(tame), ({ drawn, lines }) => {
        const { steps } = plan(jobOf(drawn.text, lines), NOW);
        const at = new Map(steps.map((s, i) => [s.step, i]));
        for (const [before, after] of declared(drawn)) {
          const [a, b] = [at.get(before), at.get(after)];
          if (a === undefined || b === undefined || steps[b]?.done) continue;
          expect([before, after, a < b]).toEqual([before, after, true]);
        }
        const firstOpen = steps.findIndex((s) => !s.done);
        if (firstOpen >= 0) expect(steps.slice(firstOpen).every((s) => !s.done)).toBe(true);
      }),
      { numRuns: 300 },
    );
  });

  it('puts back in the order of coming off turned round, where the file says nothing', () => {
    const order = fc.shuffledSubarray(['a', 'b', 'c', 'd', 'e'], { minLength: 1 });
    fc.assert(
      fc.property(order, (pieces) => {
        const text = 'pieces: {a: {}, b: {}, c: {}, d: {}, e: {}}';
        const { on: up } = plan(
          jobOf(
            text,
            pieces.map((p) => off(p)),
          ),
          NOW,
        );
        expect(up.filter((p) => pieces.includes(p))).toEqual(pieces.toReversed());
      }),
    );
  });

  it('has each open step once: it can be done, or something holds it', () => {
    fc.assert(
      fc.property(withHistory(wild), ({ drawn, lines }) => {
        const made = plan(jobOf(drawn.text, lines), NOW);
        const told = [...made.canDo.map((c) => c.step), ...made.heldBy.map((h) => h.step)];
        expect(told.toSorted()).toEqual(isOpen(made).toSorted());
        for (const held of made.heldBy) {
          expect(held.for.length > 0 || held.until !== null).toBe(true);
        }
        if (made.canDo.length === 0 && isOpen(made).length > 0) {
          expect(made.heldBy.length).toBeGreaterThan(0);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('names every piece and task of the file once, circles or not', () => {
    fc.assert(
      fc.property(wild, (drawn) => {
        const { off: down, on: up, steps } = plan(jobOf(drawn.text), NOW);
        const pieces = [...drawn.rows.keys()].toSorted();
        expect([down.toSorted(), up.toSorted()]).toEqual([pieces, pieces]);
        expect(steps).toHaveLength(2 * pieces.length + drawn.tasks.length);
      }),
    );
  });
});

/** Pieces under this one, at any depth. */
function below(drawn: Drawn, piece: string): string[] {
  const found = new Set([piece]);
  for (const key of found) {
    for (const [lower, overs] of drawn.under) if (overs.includes(key)) found.add(lower);
  }
  found.delete(piece);
  return [...found];
}

const isOff = (job: Job, key: string) => {
  const piece = job.pieces.get(key);
  return (
    piece !== undefined &&
    !['home', 'tight', 'tested'].includes(piece.where) &&
    !(piece.holes.length === 0 && piece.fitted)
  );
};

describe('who does one thing after the other that can be done', () => {
  it('gets to the end, and never puts a piece over one that is not back', () => {
    fc.assert(
      fc.property(tame, fc.infiniteStream(fc.nat()), (drawn, choices) => {
        const lines: Said[] = [];
        for (let turn = 0; turn <= 30; turn += 1) {
          const job = jobOf(drawn.text, lines);
          const { canDo, steps } = plan(job, NOW);
          if (canDo.length === 0) {
            expect(steps.filter((s) => !s.done)).toEqual([]);
            return;
          }
          const { value } = choices.next();
          const { step } = canDo[(value ?? 0) % canDo.length]!;
          const [key = '', way] = step.split(' ');
          if (way === 'on') expect(below(drawn, key).filter((p) => isOff(job, p))).toEqual([]);
          lines.push(...finish(drawn, step));
        }
        expect.unreachable('more steps than there are');
      }),
      { numRuns: 150 },
    );
  });

  it('puts nothing on over what is open, missing or inside', () => {
    const trouble = fc.array(
      fc.record({ what: fc.constantFrom('missing', 'inside'), at: fc.nat() }),
      { minLength: 1, maxLength: 3 },
    );
    fc.assert(
      fc.property(withHistory(tame), trouble, ({ drawn, lines }, troubles) => {
        const pieces = [...drawn.rows.keys()];
        const of = (what: string) =>
          troubles.filter((t) => t.what === what).map((t) => pieces[t.at % pieces.length]!);
        const buys = of('missing').map((p, i) => `  b${i}: {what: it, for: ${p} on}`);
        const text = [drawn.text, ...(buys.length > 0 ? ['buy:', ...buys] : [])].join('\n');
        const rags = of('inside').map((piece) => ({ piece, inside: 'rag' }));
        const job = jobOf(text, [...lines, ...rags]);
        const goesOn = plan(job, NOW).canDo.filter((c) => c.step.endsWith(' on'));
        for (const { step } of goesOn) {
          const [key = ''] = step.split(' ');
          const all = [key, ...below(drawn, key)];
          expect(below(drawn, key).filter((p) => isOff(job, p))).toEqual([]);
          expect(of('missing')).not.toContain(key);
          expect(all.filter((p) => of('inside').includes(p))).toEqual([]);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('and the door refuses each of them, by itself or with its first bolt', () => {
    const stamp = { at: NOW, id: 'door0000' };
    fc.assert(
      fc.property(withHistory(tame), fc.nat(), fc.nat(), ({ drawn, lines }, rag, part) => {
        const pieces = [...drawn.rows.keys()];
        const [opening, lacking] = [rag, part].map((n) => pieces[n % pieces.length]!);
        const text = `${drawn.text}\nbuy: {gasket: {what: it, for: ${lacking} on}}`;
        const more: Said[] = [
          ...(rag % 2 === 0 ? [{ piece: opening!, inside: 'rag' }] : []),
          ...(part % 2 === 0 ? [{ buy: 'gasket', done: 'ordered' }] : []),
        ];
        const job = jobOf(text, [...lines, ...more]);
        for (const { spec, away } of job.pieces.values()) {
          const { key } = spec;
          const under = below(drawn, key);
          const held =
            under.some((p) => isOff(job, p)) ||
            (rag % 2 === 0 && [key, ...under].includes(opening!)) ||
            (part % 2 === 0 && key === lacking);
          if (away === 'no' || !held) continue;
          expect(judge(job, { do: 'on', piece: key }, stamp)).toMatchObject({ ok: false });
          if (drawn.rows.get(key) === '') continue;
          const bolt = { do: 'in', piece: key, holes: ['1'], hand: { kind: 'S' } } as const;
          expect(judge(job, { ...bolt, holes: ['1'] }, stamp)).toMatchObject({ ok: false });
        }
      }),
      { numRuns: 300 },
    );
  });

  it('a piece that is back is never told to come off or go on', () => {
    const text = 'pieces: {a: {}, b: {under: a}}';
    const back = [off('a'), off('b'), on('b'), on('a')];
    expect(plan(jobOf(text, back), NOW)).toMatchObject({ canDo: [], heldBy: [] });
  });
});
