/**
 * Good job files, changed at random: whatever comes of it is read, told about and marked, and nothing breaks.
 * Five hundred each time; `MUTATIONS=100000` for more, `SEED=1` and so on for others.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { expect, it } from 'vitest';
import { isFail } from '../../src/job/edit/splice.ts';
import { withMark } from '../../src/job/edit/with-mark.ts';
import { printFault } from '../../src/job/faults/faults.ts';
import { fold } from '../../src/job/fold/fold.ts';
import { judge } from '../../src/job/judge/judge.ts';
import { type Read, readJob } from '../../src/job/read.ts';
import type { Entry, Job, Wish } from '../../src/model/types.ts';
import { nextStep } from '../../src/plan/next/next.ts';
import { COVER } from './bench.ts';

const MUTATIONS = Number(process.env.MUTATIONS ?? 500);
/** ms of this thread's own work, however busy the machine is. A good file takes a few; this is a hang. */
const HANGS = 3000;
/** Bytes by which what is held grows between a tenth of the way and the end. */
const GROWS = 20e6;

const root = resolve(import.meta.dirname, '../..');
const yamlIn = (folder: string) =>
  readdirSync(join(root, folder))
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => readFileSync(join(root, folder, name), 'utf8'));
/** Most templates print no figure that could be wrong: the jobs, which do, stand for as many. */
const GOOD = [COVER, ...yamlIn('jobs'), COVER, ...yamlIn('jobs'), ...yamlIn('templates')];

/** Pieces of other files, and what breaks readers. */
const TOKENS = [
  ...[
    '{',
    '}',
    '[',
    ']',
    ':',
    ': ',
    ' #',
    '- ',
    '\n',
    '\t',
    '\r\n',
    '|',
    '>',
    '"',
    "'",
    '&a ',
    '*a',
  ],
  ...[
    '!!set ',
    '? ',
    '---\n',
    '...\n',
    '%YAML 1.1\n',
    '<<: ',
    '~',
    '\0',
    '\x1b[2J',
    '\u202e',
    '\ufeff',
  ],
  ...[
    '__proto__: ',
    'constructor: ',
    'diary:\n',
    'undo: ',
    'hole: 999',
    'hole: [1, 1]',
    'out: "! - ?"',
  ],
  ...['9'.repeat(400), '-1', '1e999', 'NaN', '[[[[[[[[', '{{{{{{{{', '🔩', 'e\u0301', '\ud800'],
  ...[
    '<<<<<<< ours\n',
    '=======\n',
    '>>>>>>> theirs\n',
    '2026-02-30T99:99:99Z',
    'thread: 9..1',
    'S*99999',
  ],
];

function random(seed: number): (below: number) => number {
  let s = seed;
  return (below) => {
    s ^= s << 13;
    s ^= s >>> 17;
    s ^= s << 5;
    return (s >>> 0) % below;
  };
}

type Mutator = (text: string, r: (below: number) => number) => string;

const cut = (text: string, from: number, to: number, put: string) =>
  text.slice(0, from) + put + text.slice(to);
const pick = <T>(list: readonly T[], r: (below: number) => number): T => list[r(list.length)] as T;

const MUTATORS: Mutator[] = [
  (t, r) => cut(t, r(t.length + 1), 0, '').concat(t.slice(r(t.length + 1))),
  (t, r) => {
    const at = r(t.length + 1);
    return cut(t, at, at, pick(TOKENS, r));
  },
  (t, r) => {
    const at = r(t.length + 1);
    return cut(t, at, at + r(40), '');
  },
  (t, r) => {
    const at = r(t.length + 1);
    return cut(t, at, at + 1, String.fromCharCode(r(256)));
  },
  (t, r) => {
    const from = r(t.length + 1);
    const at = r(t.length + 1);
    return cut(t, at, at, t.slice(from, from + r(200)));
  },
  (t, r) => {
    const lines = t.split('\n');
    const [a, b] = [r(lines.length), r(lines.length)];
    [lines[a], lines[b]] = [lines[b] ?? '', lines[a] ?? ''];
    return lines.join('\n');
  },
  (t, r) => {
    const lines = t.split('\n');
    const at = r(lines.length);
    lines[at] = ' '.repeat(r(9)) + (lines[at] ?? '').trimStart();
    return lines.join('\n');
  },
  (t, r) => {
    const bytes = Buffer.from(t);
    for (let n = r(8); n >= 0 && bytes.length > 0; n--) bytes[r(bytes.length)] = r(256);
    return bytes.toString('utf8');
  },
  (t, r) => {
    const other = pick(GOOD, r);
    return t.slice(0, r(t.length + 1)) + other.slice(r(other.length + 1));
  },
];

const stamp = { at: '2026-05-02T10:11:05+02:00', id: 'mutant01' };

let marked = 0;
let readable = 0;
/** Texts that went into a changed file, and out of it again. */
let written = 0;
let corrected = 0;

/** Read, told, folded, asked what is next, and marked if that can be. */
function through(text: string): void {
  const read = readJob(text, 'job.yaml');
  const told = read.faults.map(printFault).join('\n');
  if (/^\s+at .*:\d+:\d+\)?$/m.test(told)) throw new Error('a stack trace');
  if (read.unreadable) return;
  readable += 1;
  const job = fold(read.upper, read.entries);
  nextStep(job);
  const verdict = judge(job, { do: 'note', text: 'x' }, stamp);
  if (!verdict.ok || !verdict.entry) throw new Error('a note was refused');
  const next = withMark(text, read, verdict.entry, verdict.edits, 'job.yaml');
  if (isFail(next)) return;
  marked += 1;
  intoPiece(text, read, job);
  const ids = (entries: readonly Entry[]) => entries.map((e) => e.id).join(' ');
  if (ids(next.read.entries) !== `${ids(read.entries)} mutant01`.trim()) {
    throw new Error('a mark changed others');
  }
}

/** Marks it, and says what it says then; null where that file has no room for it. */
function on(text: string, read: Read, wish: Wish, id: string) {
  const verdict = judge(fold(read.upper, read.entries), wish, { ...stamp, id });
  if (!verdict.ok || !verdict.entry) return null;
  const next = withMark(text, read, verdict.entry, verdict.edits, 'job.yaml');
  return isFail(next) ? null : { ...next, job: fold(next.read.upper, next.read.entries) };
}

/** A text into the first piece and out again; and what it says of its torque is called not so. */
function intoPiece(text: string, read: Read, job: Job): void {
  const [piece] = job.pieces.keys();
  if (piece === undefined) return;
  const routes = job.pieces.get(piece)?.spec.routes;
  const put = on(
    text,
    read,
    { do: 'write', piece, key: 'routes', text: 'by the left' },
    'mutant02',
  );
  if (put) {
    const added = { text: 'by the left', printed: null };
    expect(put.job.pieces.get(piece)?.spec.routes).toEqual([...(routes ?? []), added]);
    const out = on(put.text, put.read, { do: 'undo', id: 'mutant02' }, 'mutant03');
    if (out) {
      expect(out.job.pieces.get(piece)?.spec.routes).toEqual(routes);
      written += 1;
    }
  }
  const truth = '0.5 N·m, measured';
  const told = on(text, read, { do: 'correct', piece, what: 'torque', truth }, 'mutant04');
  if (!told) return;
  const was = job.pieces.get(piece)?.spec.torque?.text ?? '';
  expect(told.job.pieces.get(piece)?.spec.torque?.text).toBe(truth);
  expect(told.job.corrections.at(-1)).toMatchObject({ says: truth, id: 'mutant04' });
  expect(told.read.upper.pieces.get(piece)?.torque?.text ?? '').toBe(
    read.upper.pieces.get(piece)?.torque?.text ?? was,
  );
  corrected += 1;
}

setFlagsFromString('--expose-gc');
const collect: () => void = runInNewContext('gc');

/** Bytes that are in use, and not only waiting to be collected. */
function held(): number {
  collect();
  return process.memoryUsage().heapUsed;
}

/** ms */
const worked = () => {
  const { user, system } = process.threadCpuUsage();
  return (user + system) / 1000;
};

it(
  `${MUTATIONS} changed files are read, told about and marked`,
  () => {
    let early = 0;
    let worst = 0;
    for (let n = 0; n < MUTATIONS; n++) {
      const seed = 1 + n + Number(process.env.SEED ?? 0) * 1e7;
      const r = random(Math.imul(seed, 2654435761) || 1);
      let text = pick(GOOD, r);
      for (let times = r(4); times >= 0; times--)
        text = pick(MUTATORS, r)(text, r).slice(0, 60_000);
      const begun = worked();
      try {
        through(text);
      } catch (error) {
        throw new Error(`seed ${seed}: ${JSON.stringify(text.slice(0, 2000))}`, { cause: error });
      }
      worst = Math.max(worst, worked() - begun);
      if (n === Math.floor(MUTATIONS / 10)) early = held();
    }
    expect(worst).toBeLessThan(HANGS);
    expect(held() - early).toBeLessThan(GROWS);
    // Neither all broken nor all good, or nothing was tried.
    expect(readable).toBeGreaterThan(MUTATIONS / 20);
    expect(readable).toBeLessThan(MUTATIONS);
    expect(marked).toBeGreaterThan(readable / 2);
    expect(written).toBeGreaterThan(readable / 4);
    expect(corrected).toBeGreaterThan(MUTATIONS / 100);
  },
  60_000 + MUTATIONS * 100,
);
