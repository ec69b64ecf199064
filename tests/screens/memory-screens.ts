/** Screens of what is remembered: last time on this machine, words found, older jobs: reached by keys. */
import type { Held } from '../../src/find/question.ts';
import type { Before } from '../../src/memory/last.ts';
import type { Opening } from '../../src/screens/base/start.ts';
import type { BenchRow } from '../../src/screens/base/state.ts';
import { Bench } from '../job/bench.ts';
import { LEFT_COVER } from './covers.ts';
import { Desk, FILE } from './desk.ts';

type Look = Partial<Omit<Opening, 'on'>> & { on?: Opening['on'] };

const PIECE = 'alternator';

/** The cover was off a while ago, and something was learnt of it. */
export function before(): Before[] {
  const bench = new Bench(LEFT_COVER);
  for (const over of ['gear-lever', 'sprocket-cover', PIECE]) {
    bench.mark({ do: 'out', piece: over });
    if (over === PIECE)
      bench.mark({ do: 'state', piece: PIECE, hole: '9', state: 'stuck', says: 'heat helped' });
    bench.mark({ do: 'off', piece: over, tray: 'cup 2', because: 'it came' });
  }
  bench.mark({ do: 'note', piece: PIECE, text: 'the lead goes behind the frame tube' });
  bench.mark({ do: 'keep' });
  return [{ file: 'cover-2025.yaml', job: bench.job, same: 'name', day: '2026-04-11' }];
}

/** The same job once more, half a year later. */
export function again(look: Look = {}, bench = new Bench(LEFT_COVER)): Desk {
  const desk = new Desk(bench, { now: '2026-11-02T10:00:00+01:00', ...look });
  return desk.happen({ on: 'earlier', file: FILE, before: before(), older: 2 });
}

export const HELD: readonly Held[] = [
  {
    ...{ file: FILE, line: 23, job: 'Left cover weeps oil', machine: 'Hollin 400 Twin, 1998' },
    ...{ piece: PIECE, day: '2026-04-11', score: 12, when: '2026-04-11', undone: false },
    text: '- {at: 2026-04-11T18:26:10+02:00, id: Qe81mTd2, piece: alternator, hole: 9, state: stuck, says: "heat helped"}',
  },
  {
    ...{ file: 'tarn.yaml', line: 8, job: "Won't hold its idle", machine: 'Tarn 125' },
    ...{ piece: null, day: null, score: 8, when: '', undone: false },
    text: 'needle: {what: float needle, stuck once, price: 9.80}',
  },
];

export function finding(look: Look = {}, typed = 'stuck'): Desk {
  const desk = new Desk(new Bench(LEFT_COVER), { on: { folder: '/Repairs' }, ...look });
  desk.lines = (text) => (text.startsWith('st') ? HELD : []);
  return desk.press('/').type(typed);
}

/** A bench on which all but the first are done since long. */
export function olderJobs(look: Look = {}): Desk {
  const desk = new Desk(new Bench(LEFT_COVER), { on: { folder: '/Repairs' }, ...look });
  const row = desk.state.bench?.jobs?.[0] as BenchRow;
  const old = Array.from(
    { length: 3 },
    (_, i): BenchRow => ({
      ...{ file: `old-${i}.yaml`, job: `Old job ${i}`, machine: 'Tarn 125', old: true },
      ...{ stands: 'tested 2 years', loud: '', next: '' },
    }),
  );
  return desk.happen({ on: 'bench', jobs: [row, ...old], more: 7 });
}

/** What follows from two jobs of the bench. */
export function dueJobs(look: Look = {}): Desk {
  const desk = new Desk(new Bench(LEFT_COVER), { on: { folder: '/Repairs' }, ...look });
  const cover = { file: FILE, job: 'Left cover weeps oil', machine: 'Hollin 400 Twin, 1998' };
  desk.due = [
    {
      ...{ ...cover, piece: PIECE, task: 'again', say: 'Alternator cover: tighten again, cold.' },
      ...{ when: 'after 50 km', by: 'distance', due: null, at: '41280 km', left: '-20 km' },
      state: 'due',
    },
    {
      ...{ file: 'tarn.yaml', job: 'Belt', machine: 'Tarn 125', piece: null, task: 'belt' },
      ...{ say: 'Look at the belt', when: 'after 6 months', by: 'days', due: '2026-11-11' },
      ...{ at: null, left: null, state: 'later' },
    },
  ];
  return desk.press('d');
}

export const MEMORY: Record<string, (look: Look) => Desk> = {
  'job, with last time': again,
  'piece, with last time': (look) => again(look).open(PIECE),
  'last time': (look) => again(look).open(PIECE).press('e'),
  'last time, of all pieces': (look) => again(look).press('e'),
  find: (look) => finding(look),
  'find, nothing': (look) => finding(look, 'zebra'),
  'bench, older jobs folded away': olderJobs,
  due: dueJobs,
};
