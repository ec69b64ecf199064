import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { findBench } from '../../src/diary/bench.ts';

function newFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'putback-bench-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

describe('settings of a bench that cannot be read', () => {
  const is = (what: string) => `bench.yaml is ${what}, not a plain file.`;
  it.each<[string, (path: string) => void, string | null]>([
    ['a folder of that name', (path) => mkdirSync(path), is('a folder')],
    ['a device without end', (path) => symlinkSync('/dev/zero', path), is('a link')],
    ['the terminal', (path) => symlinkSync('/dev/tty', path), is('a link')],
    ['the settings of another', (path) => symlinkSync('../other.yaml', path), is('a link')],
    ['a pipe that nobody writes', (path) => execFileSync('mkfifo', [path]), is('a pipe')],
    [
      'more than settings can be',
      (path) => writeFileSync(path, '# more\n'.repeat(200_000)),
      'bench.yaml is too large to be read.',
    ],
    ['no YAML', (path) => writeFileSync(path, 'commit: [\0\n'), null],
    ['aliases', (path) => writeFileSync(path, 'a: &a milestones\ncommit: *a\n'), null],
    ['other values', (path) => writeFileSync(path, 'commit: {a: b}\nwrenches: [x]\n'), null],
  ])('%s: a bench that commits nothing by itself, and what is odd is told', (_, make, unread) => {
    const folder = newFolder();
    make(join(folder, 'bench.yaml'));
    expect(findBench(folder)).toMatchObject({
      folder,
      commit: 'never',
      wrenches: [],
      hour: null,
      unread,
    });
  });
});
