import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { Pinned } from '../pinned.ts';

const JOB =
  'putback: 1\njob: Left cover\nbolts: {S: M6x25}\npieces:\n  cover: {bolts: S S S S S S}\ndiary:\n';

/** Each command reads the file anew, as after a restart. */
it('any number of marks are taken back, one after the other, and again; all of it stays readable', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'putback-undo-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const file = join(folder, 'job.yaml');
  writeFileSync(file, JOB);
  const pinned = new Pinned(folder);
  const stands = async () => (await pinned.run('status', 'job.yaml')).out;
  const says = [await stands()];
  const marks = [
    ...['1', '2', '3', '4', '5', '6'].map((hole) => ['out', 'job.yaml', 'cover', hole]),
    ['off', 'job.yaml', 'cover'],
    ['in', 'job.yaml', 'cover', '1', '--kind', 'S'],
    ['in', 'job.yaml', 'cover', '2', '--kind', 'S'],
    ['hole', 'job.yaml', 'cover', '3', 'pulled'],
  ];
  for (const mark of marks) {
    expect((await pinned.run(...mark)).exit).toBe(0);
    says.push(await stands());
  }
  const undone: string[] = [];
  for (let n = marks.length - 1; n >= 0; n--) {
    const { json } = await pinned.json('undo', 'job.yaml');
    undone.push(String(json.id));
    expect(await stands()).toBe(says[n]);
  }
  expect((await pinned.run('undo', 'job.yaml')).err).toBe('There is nothing to take back.\n');
  for (const id of undone.toReversed()) {
    expect((await pinned.run('undo', 'job.yaml', id)).exit).toBe(0);
  }
  expect(await stands()).toBe(says.at(-1));
  const lines = readFileSync(file, 'utf8').slice(JOB.length).trimEnd().split('\n');
  expect(lines).toHaveLength(3 * marks.length);
  const diary = (await pinned.run('diary', 'job.yaml', '--all')).out;
  expect(diary.match(/\[taken back\] Taken back/g)).toHaveLength(marks.length);
});
