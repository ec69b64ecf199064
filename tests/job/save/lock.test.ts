import { spawn } from 'node:child_process';
import { mkdirSync, readFileSync, utimesSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { appendEntry } from '../../../src/job/edit/splice.ts';
import { cleanFolder } from '../../../src/job/save/clean.ts';
import { type Disk, disk } from '../../../src/job/save/disk.ts';
import { type Holder, self } from '../../../src/job/save/holder.ts';
import { saveFile } from '../../../src/job/save/save.ts';
import { JOB, line, newJob, strays, textOf } from './folder.ts';
import { pauses } from './pauses.ts';

const mark = (text: string) => ({ text: appendEntry(text, line('aaaaaaa1')) });

/** A process that does nothing and is alive until the tests end. */
const idle = spawn(process.execPath, ['-e', 'setInterval(() => {}, 1e6)']);
afterAll(() => idle.kill());

/** Start time of a process, field 22 of /proc/PID/stat. */
const startOf = (pid: number) =>
  readFileSync(`/proc/${pid}/stat`, 'utf8')
    .replace(/^.*\) /s, '')
    .split(' ')[19] ?? '';

function leave(file: string, what: Partial<Holder> | string, name = 'cover.yaml.lock'): void {
  const side = join(dirname(file), '.putback');
  mkdirSync(side, { recursive: true });
  const holder = { ...self(), nonce: 'n', at: '2026-05-02T08:11:05.123Z' };
  const text = typeof what === 'string' ? what : `${JSON.stringify({ ...holder, ...what })}\n`;
  writeFileSync(join(side, name), text);
}

const other = () => ({ pid: idle.pid ?? 0, start: startOf(idle.pid ?? 0) });

test.each<[string, () => Partial<Holder> | string]>([
  ['a process that has ended', () => ({ pid: 4_194_303, start: '1' })],
  ['a process whose number another has now', () => ({ pid: idle.pid ?? 0, start: '1' })],
  ['a time before this host was started', () => ({ ...other(), boot: 'before' })],
  ['an earlier save of this very process', () => ({})],
  ['a process killed before it wrote a word', () => ''],
])('a lock left by %s is no hindrance', async (_, holder) => {
  const file = newJob();
  leave(file, holder());
  const waited = await pauses(async () => {
    expect(await saveFile(file, mark)).toMatchObject({ ok: true, changed: true });
  });
  expect(waited).toBeLessThan(1000);
  expect(strays(file)).toEqual([]);
});

test.each<[string, Partial<Holder> | string]>([
  ['another host', { host: 'elsewhere' }],
  ['nobody knows whom', 'scribble'],
])('a lock of %s counts until it has stood still for a while', async (_, holder) => {
  const file = newJob();
  leave(file, holder);
  const begun = performance.now();
  expect(await saveFile(file, mark, { patience: { wait: 300, still: 200 } })).toMatchObject({
    ok: true,
  });
  expect(performance.now() - begun).toBeGreaterThanOrEqual(200);
  expect(strays(file)).toEqual([]);
});

test('a lock of another host that moves is at work, and is left to it', async () => {
  const file = newJob();
  let n = 0;
  const work = () => leave(file, { host: 'elsewhere', nonce: `n${n++}` });
  work();
  // It moves between any two looks, however long this process is kept from looking.
  const moving: Disk = {
    ...disk,
    openSync: (path, ...how) => {
      if (String(path).endsWith('.lock')) work();
      return disk.openSync(path, ...how);
    },
  };
  const saved = await saveFile(file, mark, {
    disk: moving,
    patience: { wait: 300, still: 200 },
  });
  expect(saved).toMatchObject({ ok: false, code: 'locked' });
  expect(textOf(file)).toBe(JOB);
});

test('a lock that working processes hold by turns is waited for: its turn comes', async () => {
  const file = newJob();
  let turns = 12;
  const taken = () => leave(file, { ...other(), nonce: `n${turns}` });
  taken();
  // Another one has it at each look, for longer than one holder is waited for.
  const moving: Disk = {
    ...disk,
    openSync: (path, ...how) => {
      if (String(path).endsWith('.lock') && turns > 0) {
        turns -= 1;
        if (turns > 0) taken();
        else disk.unlinkSync(path);
      }
      return disk.openSync(path, ...how);
    },
  };
  const saved = await saveFile(file, mark, { disk: moving, patience: { wait: 100, still: 100 } });
  expect(saved).toMatchObject({ ok: true, changed: true });
});

test('a working process is waited for, and then named', async () => {
  const file = newJob();
  leave(file, other());
  expect(await saveFile(file, mark, { patience: { wait: 200, still: 100 } })).toEqual({
    ok: false,
    code: 'locked',
    say: `cover.yaml is held by process ${idle.pid} on ${hostname()} since 2026-05-02 08:11:05 UTC.`,
    fix: 'See whether that putback hangs or is stopped, end it, then try again.',
  });
  expect(textOf(file)).toBe(JOB);
  expect(strays(file)).toEqual(['cover.yaml.lock']);
});

test('who died while taking a dead lock away is no hindrance either', async () => {
  const file = newJob();
  leave(file, { pid: 4_194_303, start: '1' });
  leave(file, { pid: 4_194_302, start: '1' }, 'cover.yaml.break');
  expect(await saveFile(file, mark)).toMatchObject({ ok: true, changed: true });
  expect(strays(file)).toEqual([]);
});

test('a second lock of nobody, an hour old, is no hindrance', async () => {
  const file = newJob();
  leave(file, { pid: 4_194_303, start: '1' });
  leave(file, { host: 'elsewhere' }, 'cover.yaml.break');
  const hour = Date.now() / 1000 - 3600;
  utimesSync(join(dirname(file), '.putback', 'cover.yaml.break'), hour, hour);
  expect(await saveFile(file, mark)).toMatchObject({ ok: true, changed: true });
  expect(strays(file)).toEqual([]);
});

test('the start clears what dead processes left, and touches nothing of living ones', async () => {
  const file = newJob();
  leave(file, { pid: 4_194_303, start: '1' });
  leave(file, 'half', 'cover.yaml.0123456789abcdef.tmp');
  leave(file, 'half', 'gone.yaml.0123456789abcdef.tmp');
  leave(file, other(), 'lid.yaml.lock');
  leave(file, 'being written', 'lid.yaml.fedcba9876543210.tmp');
  leave(file, 'what a person put there', 'mine.txt');
  expect(await pauses(() => cleanFolder(dirname(file)))).toBe(0);
  expect(strays(file).toSorted()).toEqual([
    'lid.yaml.fedcba9876543210.tmp',
    'lid.yaml.lock',
    'mine.txt',
  ]);
  expect(textOf(file)).toBe(JOB);
});

test.each<[string, Partial<Holder> | string]>([
  ['another host', { host: 'elsewhere' }],
  ['nobody knows whom', 'scribble'],
  ['nobody yet', ''],
])('the start never waits for a lock of %s', async (_, holder) => {
  const file = newJob();
  leave(file, holder);
  expect(await pauses(() => cleanFolder(dirname(file)))).toBe(0);
  expect(strays(file)).toEqual(['cover.yaml.lock']);
});

test('cleaning a folder that is not there does nothing', async () => {
  await expect(cleanFolder(join(dirname(newJob()), 'no', 'such'))).resolves.toEqual([]);
});

test('the start clears a lock that was left without a word, and not one that is just being made', async () => {
  const old = newJob();
  leave(old, '');
  const side = join(dirname(old), '.putback', 'cover.yaml.lock');
  const before = (Date.now() - 2000) / 1000;
  utimesSync(side, before, before);
  await cleanFolder(dirname(old));
  expect(strays(old)).toEqual([]);

  const young = newJob();
  leave(young, '');
  await cleanFolder(dirname(young));
  expect(strays(young)).toEqual(['cover.yaml.lock']);
});
