/** A mark that writes into the person's part, and its undo: above the diary each byte is as it was. */
import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { findDiary } from '../../../src/job/edit/splice.ts';
import { disk } from '../../../src/job/save/disk.ts';
import { record } from '../../../src/job/save/record.ts';
import type { Recorded, Wish } from '../../../src/model/types.ts';
import { newFolder, newJob, textOf } from './folder.ts';

const JOBS = join(import.meta.dirname, '../../../jobs');
const practice = readdirSync(JOBS)
  .filter((name) => name.endsWith('.yaml') && name !== 'bench.yaml')
  .map((name): [string, string] => [name, readFileSync(join(JOBS, name), 'utf8')]);

const HEAD = 'putback: 1\njob: Left cover\nmachine: Hollin 400 Twin\n';
const odd: [string, string][] = [
  ['no pieces, no diary', HEAD],
  ['no newline at its end', HEAD.trimEnd()],
  ['empty maps', `${HEAD}pieces: {}\ntasks: {}\nbuy: {}\nchecks: {}\nsuspects: {}\ndiary:\n`],
  ['empty keys', `${HEAD}bolts:\npieces:\ntasks:\n\nbuy:\n# parts\n\ndiary:\n`],
  ['flow style', `${HEAD}bolts: {S: M6x25}\npieces: {cover: {bolts: S S}, hose: {}}\ndiary: []\n`],
  ['a flow root', '{putback: 1, job: Left cover, pieces: {cover: {bolts: S S}, hose: {}}}\n'],
  [
    'Windows lines',
    `${HEAD}\npieces:\n  cover:\n    bolts: S S\n  hose:\n\ndiary:\n`.replaceAll('\n', '\r\n'),
  ],
  ['a byte order mark', `\uFEFF${HEAD}pieces:\n    cover: {bolts: "? ?"}\n    hose: {} # short\n`],
  [
    'remarks',
    `${HEAD}# all of it\npieces: # what comes off\n  hose: # short\n    # no bolts\n\n# end\ndiary:\n`,
  ],
];

/** One of each mark that may write there. What a file has no place for is refused, and then nothing was written. */
const wishes: Wish[] = [
  { do: 'off', piece: 'brand-new' },
  { do: 'aside', piece: 'brand-new' },
  { do: 'out', piece: 'brand-new', row: 'Q Z' },
  { do: 'out', piece: 'hose', row: 'Q .35' },
  { do: 'out', piece: 'breather-hose', row: 'Q Z' },
  { do: 'out', piece: 'cover', row: 'Q S' },
  { do: 'write', piece: 'brand-new', key: 'map', text: '1 . 2' },
  { do: 'write', piece: 'brand-new', key: 'bolts', text: '3' },
  { do: 'write', piece: 'hose', key: 'bolts', text: 'Q Q' },
  { do: 'write', piece: 'hose', key: 'torque', text: '10 N·m' },
  { do: 'write', piece: 'breather-hose', key: 'bolts', text: 'Q Q' },
  { do: 'write', piece: 'cover', key: 'routes', text: 'behind the frame tube' },
  { do: 'add', as: 'buy', text: '6204 bearing' },
  { do: 'add', as: 'do', text: 'wash the sump' },
  { do: 'add', as: 'caution', text: 'spring, goggles', piece: 'hose' },
  { do: 'add', as: 'check', text: '2' },
  { do: 'list', section: 'suspects', key: 'x', fields: { what: 'x' } },
  { do: 'list', section: 'checks', key: 'spark', fields: { look: 'blue spark' } },
  {
    do: 'take',
    piece: 'hose',
    from: 'earlier.yaml',
    pairs: [
      { path: ['pieces', 'hose', 'torque'], value: '10 N·m' },
      { path: ['bolts', 'W'], value: 'M6x16' },
    ],
  },
  { do: 'rename', kind: 'S', to: 'L20' },
];

function above(text: string): string {
  const from = findDiary(text)?.from;
  if (from !== undefined) return text.slice(0, from);
  return text.replace(/,? ?diary: *\[.*\]/s, '');
}

/** Nobody else is in the middle of saving these, and no power cut is waited for. */
const quick = { may: () => true, disk: { ...disk, fsyncSync: () => {} } };
let count = 0;
const clock = () => {
  count += 1;
  const id = `mark${String(count).padStart(4, '0')}`;
  return { now: () => '2026-05-02T10:11:05+02:00', id: () => id };
};
const wrote = (done: Recorded): boolean => done.ok && done.changed;

test.each([...practice, ...odd])('%s: marked and taken back, the same bytes', async (_, text) => {
  const state = mkdtempSync(join(tmpdir(), 'putback-state-'));
  let marked = 0;
  for (const wish of wishes) {
    const file = newJob(text);
    // A diary that begins with this mark is there before the part above it is looked at.
    if (!findDiary(text))
      await record(file, { do: 'note', text: 'begun' }, clock(), { state, ...quick });
    const was = textOf(file);
    if (!wrote(await record(file, wish, clock(), { state, ...quick }))) continue;
    if (above(textOf(file)) !== above(was)) marked += 1;
    const undo = await record(file, { do: 'undo' }, clock(), { state, ...quick });
    expect([wish, undo.ok && undo.warnings]).toEqual([wish, []]);
    expect([wish, above(textOf(file))]).toEqual([wish, above(was)]);
  }
  expect(marked).toBeGreaterThan(5);
});

test.each(odd.slice(0, 2))('%s: also where the mark begins the diary', async (_, text) => {
  const state = newFolder();
  for (const wish of wishes) {
    const file = newJob(text);
    if (!wrote(await record(file, wish, clock(), { state, ...quick }))) continue;
    await record(file, { do: 'undo' }, clock(), { state, ...quick });
    expect([wish, above(textOf(file))]).toEqual([wish, `${text.trimEnd()}\ndiary:\n`]);
  }
});

const JOB = `${HEAD}bolts: {S: M6x25}\npieces:\n  cover: {bolts: S S}\n  hose:\n\nbuy: {}\n\ndiary:\n`;

test('one mark after the other is taken back, and all come again', async () => {
  const [file, state] = [newJob(JOB), newFolder()];
  const texts = [above(textOf(file))];
  const first = clock();
  await record(file, { do: 'write', piece: 'hose', key: 'bolts', text: 'Q Q' }, first, {
    state,
    ...quick,
  });
  texts.push(above(textOf(file)));
  await record(file, { do: 'add', as: 'buy', text: '6204 bearing' }, clock(), { state, ...quick });
  await record(file, { do: 'undo' }, clock(), { state, ...quick });
  expect(above(textOf(file))).toBe(texts[1]);
  const back = clock();
  await record(file, { do: 'undo' }, back, { state, ...quick });
  expect(above(textOf(file))).toBe(texts[0]);
  await record(file, { do: 'undo', id: back.id() }, clock(), { state, ...quick });
  expect(above(textOf(file))).toBe(texts[1]);
});

test('a letter that a later mark names stays when the mark that brought it is taken back', async () => {
  const [file, state] = [newJob(JOB), newFolder()];
  const first = clock();
  await record(file, { do: 'out', piece: 'hose', row: 'Q Q' }, first, { state, ...quick });
  await record(file, { do: 'out', piece: 'cover', row: 'S Q' }, clock(), { state, ...quick });
  await record(file, { do: 'undo', id: first.id() }, clock(), { state, ...quick });
  expect(textOf(file)).toContain('Q: not measured yet');
});

test('what was changed by hand elsewhere stays, and the rest is as it was', async () => {
  const [file, state] = [newJob(JOB), newFolder()];
  await record(file, { do: 'add', as: 'buy', text: '6204 bearing' }, clock(), { state, ...quick });
  writeFileSync(file, textOf(file).replace('Left cover', 'Left cover weeps'));
  await record(file, { do: 'undo' }, clock(), { state, ...quick });
  expect(above(textOf(file))).toBe(above(JOB).replace('Left cover', 'Left cover weeps'));
});

test('on another computer it goes by its meaning, and the answer says what may stay', async () => {
  const undoElsewhere = async (wish: Wish) => {
    const file = newJob(JOB);
    await record(file, wish, clock(), { state: newFolder(), ...quick });
    return await record(file, { do: 'undo' }, clock(), { state: newFolder(), ...quick });
  };
  expect(await undoElsewhere({ do: 'add', as: 'check', text: '2' })).toMatchObject({
    ok: true,
    warnings: [{ code: 'by-meaning' }],
  });
  expect(await undoElsewhere({ do: 'off', piece: 'brand-new' })).toMatchObject({
    warnings: [{ say: 'brand-new stays in the file, with nothing said of it.' }],
  });
});
