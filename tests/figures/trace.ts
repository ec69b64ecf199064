/**
 * What the next look takes to find, what it keeps in memory, and how far from the best it may be. Run by hand:
 * `node tests/figures/trace.ts`.
 */
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { trace } from '../../src/trace/trace.ts';
import type { TraceInput } from '../../src/trace/types.ts';
import { randomCase, type Sizes, seeded } from '../trace/cases.ts';
import { median, ms, quantile, type Row } from './measure.ts';

/** Milliseconds that a person does not notice as waiting. */
const WAIT = 100;
const MEMORY = 64;

setFlagsFromString('--expose-gc');
const collect: () => void = runInNewContext('gc');

const cases = (seed: number, count: number, sizes: Sizes): TraceInput[] => {
  const random = seeded(seed);
  return Array.from({ length: count }, () => randomCase(random, sizes));
};

/** Checks that each show up to half of the suspects, or only a few. */
const MANY = [0.1, 0.5] as const;
const FEW = [0.03, 0.2] as const;

interface Measured {
  /** Of the processor: what else the machine does is no part of it. */
  ms: number[];
  /** MB in use after the answer, with what was thrown away meanwhile. */
  memory: number[];
  ratios: number[];
  exact: number;
}

function measured(inputs: readonly TraceInput[]): Measured {
  const all: Measured = { ms: [], memory: [], ratios: [], exact: 0 };
  for (const input of inputs) {
    collect();
    const used = () => process.memoryUsage().heapUsed + process.memoryUsage().arrayBuffers;
    const before = used();
    const from = process.cpuUsage().user;
    const { expected } = trace(input);
    all.ms.push((process.cpuUsage().user - from) / 1000);
    all.memory.push((used() - before) / 1e6);
    all.ratios.push(expected.ratio ?? Number.POSITIVE_INFINITY);
    if (expected.exact) all.exact += 1;
  }
  return all;
}

function timeRow(what: string, { ms: times, exact }: Measured): Row {
  const middle = median(times);
  return {
    ...{ what: `next look: ${what}, ${exact} of ${times.length} exact`, against: `${WAIT} ms` },
    ...{ ratio: middle / WAIT, goal: 1 },
    measured: `${ms(middle)}, p95 ${ms(quantile(times, 0.95))}`,
  };
}

function memoryRow(what: string, { memory }: Measured): Row {
  const most = Math.max(...memory);
  return {
    ...{ what: `memory for the next look: ${what}`, against: `${MEMORY} MB` },
    ...{ ratio: most / MEMORY, goal: 1, measured: `${most.toFixed(1)} MB at most` },
  };
}

function boundRow(what: string, { ms: times, ratios, exact }: Measured): Row {
  return {
    what: `next look: ${what}, the worst of ${ratios.length}, ${exact} exact`,
    ...{ against: 'its lower bound', ratio: Math.max(...ratios), goal: 1.25 },
    measured: `middle ${median(ratios).toFixed(3)}, ${ms(median(times))}`,
  };
}

export function rows(): Row[] {
  measured(cases(1, 5, { suspects: 16, checks: 24, covers: 2, shows: MANY }));
  const exact = (covers: number) =>
    measured(cases(2, 21, { suspects: 16, checks: 24, covers, shows: MANY }));
  const [none, three, twelve] = [exact(0), exact(3), exact(12)];
  const thirty = (shows: Sizes['shows'], count: number) =>
    measured(
      [20, 30, 40, 50].flatMap((checks) =>
        cases(checks, count / 4, { suspects: 30, checks, covers: 0, shows }),
      ),
    );
  const large = (shows: Sizes['shows']) =>
    measured(cases(4, 3, { suspects: 200, checks: 300, covers: 0, shows }));
  return [
    timeRow('16 suspects, 24 checks', none),
    timeRow('16 suspects, 24 checks behind 3 covers', three),
    timeRow('16 suspects, 24 checks behind 12 covers', twelve),
    memoryRow('16 suspects, 24 checks', none),
    memoryRow('16 suspects, 24 checks behind 12 covers', twelve),
    boundRow('30 suspects, 20 to 50 checks', thirty(MANY, 200)),
    boundRow('30 suspects, 20 to 50 checks that show few', thirty(FEW, 200)),
    boundRow('200 suspects, 300 checks', large(MANY)),
    boundRow('200 suspects, 300 checks that show few', large(FEW)),
  ];
}

if (import.meta.main) console.table(rows());
