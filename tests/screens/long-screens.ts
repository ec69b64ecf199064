/** Every screen with a text that is far longer than it: reached by keys, complete by type. */
import { Bench } from '../job/bench.ts';
import { Desk, FILE } from './desk.ts';
import type { Place } from './every-screen.ts';

/** Sentences of one text, each with a number: `Joint0 is told. Joint1 is told.` */
export function long(name: string, sentences = 70): string {
  return Array.from({ length: sentences }, (_, i) => `${name}${i} is told.`).join(' ');
}

const JOB = `putback: 1
job: Case weeps
machine: Marlow 250, 1991
bolts:
  S: M6x25 flange, 8 mm
  M: M6x35 flange, 8 mm
pieces:
  lever: {bolts: S, marks: "${long('Marks')}"}
  hose: {routes: "${long('Routes')}"}
  case-cover:
    under: [lever]
    bolts: S S M S
    torque: 10 N·m, manual 3-4
    joint: "new gasket. ${long('Joint')}"
    loose: ["2 dowels", "${long('Loose')}"]
    caution: {removal: "${long('Coming')}", fitting: "${long('Going')}"}
    tip: {removal: "${long('Tip')}"}
    note: "${long('Note')}"
    holes:
      1: {note: "${long('Hole')}"}
tasks:
  drain: {do: Drain the oil, before: case-cover off}
  clean: {do: "Clean the bench. ${long('Clean')}", takes: 10 min}
  play: {adjust: "${long('Step')}", limit: "${long('Limit')}", note: "${long('Word')}", after: lever on}
  weep: {test: Five minutes at rest, limit: "${long('Edge')}", when: "${long('When')}", after: case-cover on}
buy:
  gasket: {what: cover gasket, for: case-cover on, from: "${long('Shop')}"}
diary:
`;

const FAULT = `putback: 1
job: Won't start
suspects:
  float: {what: "Float leaks. ${long('Float')}", note: "${long('Word')}", part: "${long('Part')}"}
  coil: Coil open
checks:
  spark: {check: "Blue spark. ${long('Spark')}", bad: coil, caution: "${long('Mind')}", needs: "${long('Needs')}"}
  flow: {check: Fuel runs, bad: float, limit: "${long('Edge')}"}
pieces:
  cover: {name: "Cover. ${long('Cover')}"}
  seal: {name: "Shaft seal. ${long('Lip')}", under: cover}
tasks:
  seal: {decide: Renew the seal?, while: cover off, chance: "1 in 6", now: 12}
buy:
  gasket: {what: "Gasket. ${long('Gasket')}", once: true, for: cover on}
diary:
`;

const LATER = '2026-05-02T10:00:00+02:00';
const COVER = 'case-cover';

function begun(): Bench {
  const bench = new Bench(JOB);
  bench.mark({ do: 'out', piece: 'lever' });
  bench.mark({ do: 'off', piece: 'lever', tray: 'cup 1' });
  bench.mark({ do: 'done', task: 'drain' });
  return bench;
}

function coverOff(row?: string): Bench {
  const bench = begun();
  bench.mark({ do: 'out', piece: COVER, ...(row === undefined ? {} : { row }) });
  bench.mark({ do: 'off', piece: COVER, tray: 'cup 2' });
  return bench;
}

function coverIn(): Bench {
  const bench = coverOff();
  bench.mark({ do: 'buy', buy: 'gasket', state: 'here' });
  for (const kind of ['S', 'M']) bench.mark({ do: 'in', piece: COVER, hand: { kind } });
  return bench;
}

function coverTight(): Bench {
  const bench = coverIn();
  for (const pass of ['snug', 'full']) bench.mark({ do: 'tight', piece: COVER, pass });
  return bench;
}

/** The usual size of a terminal, and the smallest that has room for all. */
export const SIZES = [
  { columns: 80, rows: 24 },
  { columns: 60, rows: 16 },
] as const;
export type Size = (typeof SIZES)[number];

let size: Size = SIZES[1];
const at = (bench: Bench, look = {}) => new Desk(bench, { ...size, ...look });
const cover = (bench: Bench, keys = '', look = {}) => at(bench, look).open(COVER).press(keys);

/** With a row of the job marked, and opened. */
function row(bench: Bench, here: string): Desk {
  const desk = at(bench);
  desk.state = { ...desk.state, view: { screen: 'job', here } };
  return desk.press('go');
}

/** The disk says this instead of writing. */
function broken(desk: Desk, says: NonNullable<Desk['broken']>): Desk {
  desk.broken = says;
  return desk.press('go');
}

/** A refusal with many words, and what comes of it. */
function refused(keys: string): Desk {
  const desk = cover(coverOff(), 'g').press('escape go');
  desk.state = { ...desk.state, view: { screen: 'piece', piece: COVER, step: on('s') } };
  const why = { code: 'wrong-bolt', say: long('Stop'), data: {}, overrulable: true };
  return broken(desk, { ok: false, refused: why, job: desk.bench.job }).press(keys);
}

const on = (hand: string) => ({ step: 'on', here: null, typed: '', hand, fresh: true }) as const;

const NO_VIEW = { screen: 'wait' } as const;

/** The screen with its long text, on a terminal of this size. */
export function longScreen(place: Place, on: Size): Desk {
  size = on;
  return LONG[place]();
}

export const LONG: Record<Place, () => Desk> = {
  wait: () => {
    const desk = at(new Bench(JOB));
    desk.state = { ...desk.state, view: NO_VIEW, open: null };
    return desk;
  },
  bench: () => {
    const desk = at(begun(), { on: { folder: '/Repairs' }, now: LATER });
    const [job] = desk.state.bench?.jobs ?? [];
    if (!job || !desk.state.bench) throw new Error('no job');
    const jobs = Array.from({ length: 30 }, (_, i) => ({
      ...job,
      file: `${i}.yaml`,
      job: `Job${i}`,
    }));
    desk.state = { ...desk.state, bench: { ...desk.state.bench, jobs } };
    return desk;
  },
  find: () => {
    const desk = at(begun(), { on: { folder: '/Repairs' }, now: LATER });
    const text = long('Line');
    desk.lines = () =>
      Array.from({ length: 30 }, (_, i) => ({
        ...{ file: `${i}.yaml`, line: i + 1, job: `Job${i}`, machine: null, piece: null },
        ...{ day: null, text, score: 1, when: '', undone: false },
      }));
    return desk.press('/').type('line');
  },
  due: () => {
    const desk = at(begun(), { on: { folder: '/Repairs' }, now: LATER });
    desk.due = Array.from({ length: 12 }, (_, i) => ({
      ...{ file: `${i}.yaml`, job: `Job${i}`, machine: 'Marlow 250', piece: COVER, task: 'again' },
      ...{ say: long(`Due${'abcdefghijkl'[i]}`), when: 'after 50 km', by: 'distance' as const },
      ...{ due: null, at: '1050 km', left: '3 km', state: 'later' as const },
    }));
    return desk.press('d');
  },
  last: () => {
    const old = coverOff();
    for (let i = 0; i < 12; i++) {
      const hole = `${(i % 3) + 1}`;
      old.mark({ do: 'note', piece: COVER, hole, text: long(`Kept${'abcdefghijkl'[i]}`) });
      old.mark({ do: 'keep' });
    }
    const desk = at(new Bench(JOB));
    const before = [{ file: 'old.yaml', job: old.job, same: 'name' as const, day: '2026-04-11' }];
    desk.happen({ on: 'earlier', file: FILE, before, older: 0 });
    return desk.press('e');
  },
  job: () => at(begun()),
  note: () => {
    const bench = coverOff();
    bench.mark({ do: 'correct', piece: COVER, what: 'torque', truth: long('True') });
    return at(bench, { now: LATER });
  },
  faults: () => {
    const fault = { code: 'x', severity: 'error', file: FILE, line: 7, column: 3 } as const;
    const says = { say: long('Fault'), fix: long('Mend'), excerpt: '  cover:\n  ^' };
    return broken(cover(begun(), 'go go'), { ok: false, faults: [{ ...fault, ...says }] });
  },
  unsaved: () =>
    broken(cover(begun(), 'go go'), {
      ok: false,
      unsaved: { code: 'no-space', say: long('Disk'), fix: long('Room') },
    }),
  look: () => cover(begun(), '1'),
  read: () => cover(begun(), 'go'),
  off: () => cover(begun(), 'go go'),
  'off-row': () => {
    const desk = cover(begun(), 'r go').type('s s m s');
    const why = { code: 'no-such', say: long('Row'), data: {}, overrulable: false };
    desk.broken = { ok: false, refused: why, job: desk.bench.job };
    return desk.press('enter');
  },
  'off-count': () => cover(begun(), 'go go go go go go'),
  settle: () => cover(coverOff('S S S S'), 'go'),
  on: () => {
    const desk = cover(coverOff());
    desk.state = { ...desk.state, view: { screen: 'piece', piece: COVER, step: on('') } };
    return desk.press('1');
  },
  tight: () => cover(coverIn(), 'tab 1'),
  trouble: () => cover(coverIn(), '1 -'),
  advice: () => cover(coverIn(), 'go 1 !'),
  unmark: () => {
    const bench = coverOff();
    bench.mark({ do: 'inside', piece: COVER, what: long('Rag') });
    return cover(bench, '1 ]');
  },
  answer: () => cover(coverIn(), 'l').type('9 s, 9 m').press('enter'),
  stop: () => refused(''),
  sure: () => {
    const bench = coverTight();
    bench.mark({ do: 'note', piece: COVER, text: long('Earlier') });
    return cover(bench, 'backspace', { now: LATER });
  },
  gate: () => cover(coverOff(), 'g'),
  parts: () => at(begun()).press('b'),
  task: () => row(begun(), ':play'),
  tests: () => at(coverTight()).press('t'),
  round: () => {
    const bench = coverTight();
    bench.mark({ do: 'done', task: 'weep', result: 'failed', says: long('Drop') });
    return row(bench, ':weep').press('go');
  },
  within: () => at(begun()).press('m').type('4 h').press('enter'),
  paper: () => {
    const name = `case-cover:\n    name: "${long('Name')}"\n`;
    const desk = at(new Bench(JOB.replace('case-cover:\n', name)));
    const view = { screen: 'paper', piece: COVER, here: null, under: desk.state.view } as const;
    desk.state = { ...desk.state, view };
    return desk;
  },
  photos: () => {
    const bench = coverOff();
    for (const picture of ['photos/a.jpg', 'photos/b.jpg']) {
      bench.mark({ do: 'photo', piece: COVER, picture, says: long('Light') });
    }
    return cover(bench, 'x');
  },
  draw: () => cover(begun(), 'z'),
  known: () => cover(begun(), 'k'),
  add: () =>
    cover(begun(), '+')
      .happen({ on: 'paste', text: long('Line') })
      .press('enter'),
  weigh: () => {
    const desk = at(new Bench(FAULT));
    desk.state = { ...desk.state, view: { screen: 'job', here: ':seal' } };
    return desk.press('space');
  },
  'within-reach': () => {
    const bench = new Bench(FAULT);
    bench.mark({ do: 'off', piece: 'cover' });
    return at(bench).open('cover').press('k o');
  },
  trace: () => at(new Bench(FAULT)).press('k'),
  starts: () => at(new Bench(FAULT)).press('k l'),
  field: () => refused('w'),
  keys: () => cover(coverOff(), '?'),
};
