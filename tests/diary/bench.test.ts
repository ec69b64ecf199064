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
  it.each<[string, (path: string) => void]>([
    ['a folder of that name', (path) => mkdirSync(path)],
    ['a device without end', (path) => symlinkSync('/dev/zero', path)],
    ['no YAML', (path) => writeFileSync(path, 'commit: [\0\n')],
    ['aliases', (path) => writeFileSync(path, 'a: &a milestones\ncommit: *a\n')],
    ['other kinds of values', (path) => writeFileSync(path, 'commit: {a: b}\nwrenches: [x]\n')],
  ])('%s: a bench that commits nothing by itself', (_, make) => {
    const folder = newFolder();
    make(join(folder, 'bench.yaml'));
    expect(findBench(folder)).toEqual({ folder, commit: 'never', wrenches: [] });
  });
});
