/**
 * Texts of one kind, sixty thousand characters long, through what reads them and what draws them: nothing takes a
 * time that grows with the square of a text.
 */
import { describe, expect, it } from 'vitest';
import { readKind } from '../src/bolt/read/kind.ts';
import { readDepth, readLength } from '../src/bolt/read/length.ts';
import { holdAgainst } from '../src/bolt/read/reading.ts';
import { readLimit } from '../src/bolt/read/reading-limit.ts';
import { readFront } from '../src/bolt/read/spelling.ts';
import { readQuantity } from '../src/bolt/read/units.ts';
import { lookAlikes } from '../src/bolt/thread/lookalikes.ts';
import { sameThread } from '../src/bolt/thread/threads.ts';
import { readTorque } from '../src/bolt/torque/stages.ts';
import { chapters } from '../src/diary/prose.ts';
import { fold } from '../src/job/fold/fold.ts';
import { readThings } from '../src/job/fold/inside.ts';
import { readJob } from '../src/job/read.ts';
import { harmlessJson, oneLine, safe, safeLine } from '../src/model/safe.ts';
import { drawingOf } from '../src/piece/drawing.ts';
import { readMap } from '../src/piece/map.ts';
import { checkAll } from '../src/plan/check.ts';
import { nextNow } from '../src/plan/next/next-now.ts';
import { readJoint } from '../src/plan/seal/joint.ts';
import { typedRuns } from '../src/plan/typed/runs.ts';
import { drawField, field } from '../src/screens/kit/field.ts';
import { large } from '../src/screens/kit/large.ts';
import { centred, cutTo, hanging, line, pad, spread, wrap } from '../src/screens/kit/text.ts';

const N = 60_000;
const times = (text: string) => text.repeat(Math.ceil(N / text.length));

const TEXTS: Record<string, string> = {
  blanks: `x${' '.repeat(N)}y`,
  'a figure, blanks, a unit': `M6x25${' '.repeat(N)}mm`,
  tabs: times('\t'),
  'line breaks': times('a\n'),
  'empty lines': times('\n'),
  'carriage returns': times('\r'),
  'one word': times('a'),
  digits: times('6'),
  'M and digits': `M${times('6')}`,
  'M6x and digits': `M6x${times('1')}`,
  dots: times('.'),
  'combining marks': `a${times('\u0301')}`,
  'hands of several signs': times('👩‍🔧'),
  figures: times('10 '),
  torques: times('10 N·m '),
  degrees: times('90° '),
  fractions: times('1/'),
  commas: times(', '),
  semicolons: times('; '),
  colons: times('a: '),
  dashes: times('-'),
  brackets: times('('),
  quotes: times('"'),
  kinds: times('M6x25 '),
  rows: times('S+clip '),
  words: times('bolt on off '),
  and: times('rag and '),
  hashes: times(' #'),
};

const limit = readLimit('0.8..1.2 ohm');
const READERS: Record<string, (text: string) => unknown> = {
  safe,
  safeLine,
  oneLine,
  harmlessJson,
  readKind: (t) => readKind('S', t),
  readLength,
  readDepth,
  readFront,
  readQuantity,
  readTorque,
  readLimit,
  holdAgainst: (t) => limit && holdAgainst(t, limit),
  lookAlikes: (t) => lookAlikes([t, 'M6']),
  sameThread: (t) => sameThread(t, 'M6'),
  readThings,
  readMap,
  drawingOf,
  readJoint: (t) => readJoint([t]),
  typedRuns,
};
const DRAWERS: Record<string, (text: string) => unknown> = {
  wrap: (t) => wrap(t, 40),
  'wrap in one column': (t) => wrap(t, 1),
  hanging: (t) => hanging(line('- '), t, 40),
  cut: (t) => cutTo(line(t), 40),
  pad: (t) => pad(line(t), 40),
  spread: (t) => spread(line(t), line(t), 40),
  centred: (t) => centred(line(t), 40),
  large: (t) => large(t, 40),
  drawField: (t) => drawField(field(t), 40),
};

/**
 * ms of this thread's own work on one text, however busy the machine is. What grows with its length takes an eighth
 * of that at most, what grows with the square more.
 */
const TOO_LONG = 1500;

/** How many ms of work it took. */
function worked(does: () => unknown): number {
  const before = process.threadCpuUsage();
  does();
  const { user, system } = process.threadCpuUsage(before);
  return (user + system) / 1000;
}

/** Drawing looks at each character by itself. */
const DRAWN = 20_000;

describe.each([
  ['read', READERS, N],
  ['drawn', DRAWERS, DRAWN],
] as const)('a long text is %s', (_, all, most) => {
  it.each(Object.keys(all))('by %s', (name) => {
    for (const [kind, text] of Object.entries(TEXTS)) {
      expect(
        worked(() => all[name]?.(text.slice(0, most))),
        kind,
      ).toBeLessThan(TOO_LONG);
    }
  });
});

it.each(Object.keys(TEXTS))(
  'a job with long texts everywhere is read, checked and told: %s',
  (kind) => {
    const t = JSON.stringify((TEXTS[kind] ?? '').slice(0, 20_000));
    const text = `putback: 1
job: ${t}
machine: ${t}
bolts: {S: ${t}, M: M6x25}
pieces:
  cover:
    name: ${t}
    bolts: M M
    torque: ${t}
    into: ${t}
    joint: ${t}
    marks: ${t}
    routes: ${t}
    loose: [${t}]
    tip: {removal: ${t}}
    caution: {fitting: ${t}}
    holes: {1: {note: ${t}, thread: ${t}}}
tasks:
  weep: {test: ${t}, limit: ${t}, after: cover on}
  fill: {do: ${t}, after: cover on, takes: ${t}}
buy:
  seal: {what: ${t}, price: ${t}, for: cover on}
diary:
  - {at: 2026-04-11T18:25:40+02:00, id: kaaaaaaa, piece: cover, hole: 1, out: ${t}}
  - {at: 2026-04-11T18:25:40+02:00, id: kbbbbbbb, piece: cover, note: ${t}}
  - {at: 2026-04-11T18:25:40+02:00, id: kccccccc, inside: ${t}}
`;
    let size = 0;
    const took = worked(() => {
      const faults = checkAll(text, 'job.yaml');
      const read = readJob(text, 'job.yaml');
      const job = fold(read.upper, read.entries);
      nextNow(job, '2026-05-02T10:11:05+02:00');
      const told = chapters(job, new Map()).flatMap((c) => c.lines.map((l) => l.say));
      size = JSON.stringify([faults.map((f) => f.say), told]).length;
    });
    expect(took).toBeLessThan(TOO_LONG);
    // Bounded by what was written.
    expect(size).toBeLessThan(40 * t.length + 100_000);
  },
);

const HEAD = 'putback: 1\njob: J\nbolts: {S: M6x25}\npieces: {a: {bolts: S S}}\ndiary:\n';
const AT = 'at: 2026-04-11T18:25:40+02:00';
const id = (n: number) => `k${String(n).padStart(7, '0')}`;
const toldOf = (text: string) => {
  const read = readJob(text, 'job.yaml');
  const all = chapters(fold(read.upper, read.entries), new Map());
  return all.flatMap((c) => c.lines.map((l) => l.say));
};

describe('undos of undos', () => {
  it('in a chain of ten thousand are told in lines of one length', () => {
    const first = `  - {${AT}, id: ${id(0)}, piece: a, hole: 1, out: S}\n`;
    const undos = Array.from(
      { length: 9999 },
      (_, i) => `  - {${AT}, id: ${id(i + 1)}, undo: ${id(i)}}\n`,
    );
    const told = toldOf(HEAD + first + undos.join(''));
    expect(told).toHaveLength(10_000);
    expect(told.slice(0, 5)).toEqual([
      '1 out: S',
      'Taken back: 1 out: S',
      'Taken back: Taken back: 1 out: S',
      'Taken back: Taken back: Taken back: 1 out: S',
      'Taken back, 4 times over: 1 out: S',
    ]);
    expect(told.at(-1)).toBe('Taken back, 9999 times over: 1 out: S');
  });

  it('that name each other, or themselves, are told, and checked', () => {
    const circle = `${HEAD}  - {${AT}, id: kaaaaaaa, undo: kbbbbbbb}\n  - {${AT}, id: kbbbbbbb, undo: kaaaaaaa}\n`;
    expect(toldOf(circle)).toEqual(['Taken back: kbbbbbbb', 'Taken back: Taken back: kbbbbbbb']);
    expect(toldOf(`${HEAD}  - {${AT}, id: kccccccc, undo: kccccccc}\n`)).toEqual([
      'Taken back: kccccccc',
    ]);
    expect(() => checkAll(circle, 'job.yaml')).not.toThrow();
  });
});
