import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { counters } from '../../src/memory/counters.ts';
import { sameMachine } from '../../src/memory/machine.ts';
import { secondsOf } from '../../src/model/time.ts';
import type { Job } from '../../src/model/types.ts';
import { readingsIn } from '../../src/plan/time/due.ts';
import { jobOf } from '../paper/jobs.ts';
import { runs } from '../runs.ts';

const machine = fc.record({
  machine: fc.constantFrom('Tarn 125, 1971', 'tarn 125, 300 h', 'Velde GS 90, 12100 h', 'Velde'),
  id: fc.constantFrom(null, 'A-1', 'a-1', 'B-2'),
  like: fc.constantFrom(null, 'Velde GS 90', 'A-1'),
  said: fc.array(fc.tuple(fc.integer({ min: 1, max: 9 }), fc.integer({ min: 1, max: 999 })), {
    maxLength: 3,
  }),
});

const jobs = fc
  .array(machine, { maxLength: 8 })
  .map((all) =>
    all.map((one, n) =>
      jobOf(
        [
          `putback: 1\njob: ${n}\nmachine: ${one.machine}`,
          ...(one.id === null ? [] : [`machine-id: ${one.id}`]),
          ...(one.like === null ? [] : [`like: ${one.like}`]),
          'diary:',
          ...one.said.map(
            ([day, h], i) =>
              `  - {at: 2026-01-0${day}T10:00:00Z, id: read${n}00${i}, reading: ${h} h}`,
          ),
          '',
        ].join('\n'),
      ),
    ),
  );

/** As it is meant, each job held against each. */
function plain(all: readonly Job[], asked: Job): string | null {
  const isOne = (a: Job) => {
    const same = sameMachine(a.upper, asked.upper);
    const both = a.upper.machineId !== null && asked.upper.machineId !== null;
    return same === 'id' || (same === 'name' && !both);
  };
  const seconds = (at: string) => (at === '' ? Number.NEGATIVE_INFINITY : secondsOf(at));
  const latest = all
    .filter(isOne)
    .flatMap(readingsIn)
    .reduce((most, r) => Math.max(most, seconds(r.at)), Number.NEGATIVE_INFINITY);
  const values = all
    .filter(isOne)
    .flatMap(readingsIn)
    .filter((r) => seconds(r.at) === latest)
    .map((r) => `${r.value} ${r.unit} ${r.at}`);
  return values.length === 0 ? null : [...new Set(values)].sort().join();
}

describe('what the counter of a machine said last', () => {
  it('is what all of its jobs say, as if each were held against each', () => {
    let told = 0;
    fc.assert(
      fc.property(jobs, (all) => {
        const kept = counters();
        for (const job of all) kept.add(job);
        for (const job of all) {
          const found = kept.of(job.upper);
          const meant = plain(all, job);
          expect(found === null).toBe(meant === null);
          if (found === null) continue;
          told++;
          expect(meant?.split(',')).toContain(`${found.value} ${found.unit} ${found.at}`);
        }
      }),
      { numRuns: runs(300) },
    );
    expect(told).toBeGreaterThan(100);
  });
});
