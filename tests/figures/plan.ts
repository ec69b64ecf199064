/**
 * How long the plan of a large job takes: 900 pieces and 200 tasks are 2,000 steps. Run by hand:
 * `node tests/figures/plan.ts`. Each time is the middle one of several, on the machine of the day.
 */

import type { Job } from '../../src/model/types.ts';
import { gate } from '../../src/plan/gates/gate.ts';
import { backAfter } from '../../src/plan/next/back.ts';
import { reach } from '../../src/plan/order/reach.ts';
import { plan } from '../../src/plan/plan.ts';
import { boltsOff, boltsOn, done, jobOf, NOW, type Said } from '../plan/make.ts';
import { median, type Row } from './measure.ts';

const PIECES = 900;
const TASKS = 200;
const ROUNDS = 9;
/** Milliseconds that a person does not notice as waiting. */
const GOAL = 100;

const pieces = Array.from({ length: PIECES }, (_, i) => `p${i}`);
const tasks = Array.from({ length: TASKS }, (_, i) => i);

type Shape = (i: number) => number[];

/** What each piece lies under, as places in the list: two above it, one long stack, or nothing said. */
const SHAPES: Record<string, Shape> = {
  'each under two others': (i) => (i < 3 ? [] : [Math.floor(i / 2), Math.floor(i / 3)]),
  'one stack': (i) => (i === 0 ? [] : [i - 1]),
  'nothing said': () => [],
};

function textOf(shape: Shape): string {
  const piece = (i: number) =>
    `  p${i}: {bolts: S S S T, joint: new gasket, under: [${shape(i)
      .map((over) => `p${over}`)
      .join(', ')}]}`;
  const task = (i: number) => {
    const at = `p${i * 4}`;
    if (i % 4 === 0) return `  t${i}: {wait: "24 h, sealant cures", after: ${at} on}`;
    if (i % 4 === 1) return `  t${i}: {do: Clean, while: ${at} off}`;
    return `  t${i}: {test: No drop of oil, after: [${at} on, t${i - (i % 4)}]}`;
  };
  return [
    'bolts: {S: M6x25, T: M8x60 once}',
    'pieces:',
    ...pieces.map((_, i) => piece(i)),
    'tasks:',
    ...tasks.map(task),
    'buy:',
    ...tasks.map((i) => `  b${i}: {what: gasket, once: true, for: p${i * 3} on}`),
  ].join('\n');
}

const ROW = 'S S S T';
const away = pieces.flatMap((p) => boltsOff(p, ROW));
const here = [...pieces.map((p) => `${p}-t`), ...tasks.map((i) => `b${i}`)].map(
  (buy): Said => ({ buy, done: 'here' }),
);
const clean = tasks.filter((i) => i % 4 === 1).map((i) => done(`t${i}`));
/** Half of them back, from the bottom. */
const half = pieces.toReversed().slice(0, PIECES / 2);

const back = pieces.toReversed().flatMap((p) => boltsOn(p, ROW));

const HISTORIES: [string, Said[]][] = [
  ['untouched', []],
  ['all off', away],
  ['off for the second time', [...away, ...back, ...away]],
  ['half back', [...away, ...here, ...clean, ...half.flatMap((p) => boltsOn(p, ROW))]],
];

/** Each time of a job of its own: what is worked out once for a job would be asked for no second time. */
type Asked = { make: () => Job; ask: (job: Job) => unknown };

function middle(asked: Asked): number {
  for (let warm = 0; warm < 3; warm += 1) once(asked);
  return median(Array.from({ length: ROUNDS }, () => once(asked)));
}

function once({ make, ask }: Asked): number {
  const job = make();
  const from = performance.now();
  ask(job);
  return performance.now() - from;
}

function row(what: string, asked: Asked, how = middle): Row {
  const ms = how(asked);
  return {
    what,
    against: `${GOAL} ms`,
    ratio: ms / GOAL,
    goal: 1,
    measured: `${ms.toFixed(1)} ms`,
  };
}

export function rows(): Row[] {
  const made: Row[] = [];
  const ask = (job: Job) => plan(job, NOW);
  for (const [shape, under] of Object.entries(SHAPES)) {
    const text = textOf(under);
    for (const [history, lines] of HISTORIES) {
      const make = () => jobOf(text, lines);
      const what = `plan of 2,000 steps: ${shape}, ${history}`;
      // What `putback plan` does: once, before anything is warm.
      if (made.length === 0)
        made.push(row(`${what}, the first of the program`, { make, ask }, once));
      const { length } = ask(make()).steps;
      if (length !== 2000) throw new Error(`${length} steps`);
      made.push(row(what, { make, ask }));
    }
  }
  const stack = textOf(SHAPES['one stack'] ?? (() => []));
  const plain = textOf(SHAPES['nothing said'] ?? (() => []));
  const halfBack = () => jobOf(plain, HISTORIES.at(-1)?.[1] ?? []);
  const bottom = `p${PIECES - 1}`;
  made.push(
    row('what must come off to reach the bottom of that stack', {
      make: () => jobOf(stack, []),
      ask: (job) => reach(job, bottom),
    }),
    row('the note after days away, of 2,000 steps half back', {
      make: halfBack,
      ask: (job) => backAfter(job, NOW),
    }),
    row('the gate before the first start, of 2,000 steps half back', {
      make: halfBack,
      ask: (job) => gate(job, 'start', null, NOW),
    }),
  );
  return made;
}

if (import.meta.main) console.table(rows());
