/** A bench of many jobs on real files: rows as they are read, kept for the next time, and left at once. */
import { mkdtempSync, readdirSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished, vi } from 'vitest';
import { fold } from '../../../src/job/fold/fold.ts';
import { readJob } from '../../../src/job/read.ts';
import type { BenchRow, Happening } from '../../../src/screens/base/state.ts';
import { benchRow, rowOn, timelessRow } from '../../../src/screens/terminal/bench-row.ts';
import { type Files, filesIn } from '../../../src/screens/terminal/loop-files.ts';
import { type Shelf, shelf } from '../../../src/screens/terminal/shelf.ts';
import { madeBench, madeJob, older, writeAnew } from '../../find/made-bench.ts';

const NOW = '2026-05-02T10:11:05+02:00';

function made(count: number): string {
  const folder = mkdtempSync(join(tmpdir(), 'putback-many-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  madeBench(folder, count);
  return folder;
}

/** `read`: names of files whose text was asked for. */
function filesOf(folder: string, now = NOW, over: Partial<Shelf> = {}): Files {
  let n = 0;
  return filesIn(folder, { now: () => now, id: () => `id00000${n++}` }, { ...shelf, ...over });
}

async function list(files: Files, folder: string) {
  const parts: Extract<Happening, { on: 'bench' }>[] = [];
  const last = await files.hands.list({ do: 'list', folder }, (h) => {
    if (h.on === 'bench') parts.push(h);
  });
  return { parts, last: last?.on === 'bench' ? last.jobs : null };
}

const plain = (folder: string, now = NOW): BenchRow[] =>
  readdirSync(folder)
    .filter((n) => n.endsWith('.yaml'))
    .sort()
    .map((name, i) => {
      const { upper, entries, faults } = readJob(madeJob(i), name);
      return benchRow(name, { ok: true, job: fold(upper, entries), faults }, now);
    });

describe('a bench of many jobs', () => {
  it('shows its first rows before the last are read, the first first, and says how many are left', async () => {
    const folder = made(80);
    const { parts, last } = await list(filesOf(folder), folder);
    const [first] = parts;
    expect(first?.jobs.length).toBeLessThan(80);
    expect((first?.jobs.length ?? 0) + (first?.more ?? 0)).toBe(80);
    expect(first?.jobs[0]?.file).toBe('job-00000.yaml');
    expect(last).toEqual(plain(folder));
  });

  it('keeps a row for the next time, as it would be read; a changed file is read again', async () => {
    // What was changed in the last two seconds is kept for no other sitting.
    vi.useFakeTimers({ toFake: ['Date'], now: Date.now() + 3_600_000 });
    onTestFinished(() => void vi.useRealTimers());
    const folder = made(60);
    await list(filesOf(folder), folder);
    const next = '2026-05-09T10:11:05+02:00';
    // Another sitting, a week later.
    expect((await list(filesOf(folder, next), folder)).last).toEqual(plain(folder, next));
    const path = join(folder, 'job-00007.yaml');
    writeFileSync(path, 'putback: 1\njob: Another job\ndiary:\n');
    older(path);
    const { last } = await list(filesOf(folder, next), folder);
    expect(last?.[7]?.job).toBe('Another job');
    // As long as before, and the time of writing put back.
    writeAnew(path, 'putback: 1\njob: Another one\ndiary:\n');
    older(path);
    utimesSync(path, 1e9, 1e9);
    expect((await list(filesOf(folder, next), folder)).last?.[7]?.job).toBe('Another one');
    writeAnew(path, 'putback: 1\njob: Yet a third\ndiary:\n');
    utimesSync(path, 1e9, 1e9);
    expect((await list(filesOf(folder, next), folder)).last?.[7]?.job).toBe('Yet a third');
  });

  it('read again, it shows what was there before until the last is read', async () => {
    const folder = made(60);
    const files = filesOf(folder);
    await list(files, folder);
    const { parts } = await list(files, folder);
    for (const part of parts) expect([part.jobs.length, part.more]).toEqual([60, 0]);
  });

  it('is left at once: what is not read by then stays unread', async () => {
    const folder = made(120);
    const files = filesOf(folder);
    const going = files.hands.list({ do: 'list', folder }, () => files.stop());
    expect(await going).toBeNull();
  });

  it('a newer list ends the one before', async () => {
    const folder = made(60);
    const files = filesOf(folder);
    const [one, other] = await Promise.all([list(files, folder), list(files, folder)]);
    expect(one.last).toBeNull();
    expect(other.last).toHaveLength(60);
  });
});

describe('a row to be kept', () => {
  const read = (text: string) => {
    const { upper, entries, faults } = readJob(text, 'job.yaml');
    return { ok: true as const, job: fold(upper, entries), faults };
  };
  const TIGHT = `putback: 1
job: Cover weeps
pieces: {cover: {bolts: S}}
TASKS
diary:
  - {at: 2024-04-01T10:00:00+02:00, id: mark0001, piece: cover, out: S}
  - {at: 2024-04-01T10:00:01+02:00, id: mark0002, piece: cover, removed: all}
  - {at: 2024-04-01T10:01:00+02:00, id: mark0003, piece: cover, in: S}
  - {at: 2024-04-01T10:02:00+02:00, id: mark0004, piece: cover, tight: snug}
  - {at: 2024-04-01T10:03:00+02:00, id: mark0005, piece: cover, tight: full}
`;
  const done = TIGHT.replace('TASKS\n', '');

  it('is what it would be on any later day, where it is kept for long', () => {
    const kept = timelessRow('job.yaml', read(done), '2024-04-01T12:00:00+02:00');
    for (const day of ['2024-04-02', '2025-03-01', '2026-04-01'].map(
      (d) => `${d}T10:00:00+02:00`,
    )) {
      if (kept.day !== '') break;
      expect(rowOn(kept, day)).toEqual(benchRow('job.yaml', read(done), day));
    }
  });

  it('of what has a day of its own holds for that day alone', () => {
    const waits = TIGHT.replace(
      'TASKS',
      'tasks: {t: {test: Bolts, when: after 9 days, after: cover on}}',
    );
    expect(timelessRow('job.yaml', read(waits), '2024-04-02T10:00:00+02:00').day).toBe(
      '2024-04-02',
    );
  });

  it('is old when nothing has happened for a year and nothing is due', () => {
    const settled = done
      .replace('diary:', 'tasks: {t: {test: Weeps?, after: cover on}}\ndiary:')
      .concat('  - {at: 2024-04-02T10:00:00+02:00, id: mark0006, task: t, done: passed}\n');
    const row = (now: string) => benchRow('job.yaml', read(settled), now);
    expect(row('2024-05-01T10:00:00+02:00').old).toBeUndefined();
    expect(row('2026-05-01T10:00:00+02:00')).toMatchObject({ old: true, next: '' });
  });
});
