import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = join(import.meta.dirname, '../..');
const PAGE = readFileSync(join(root, 'DEVELOPERS.md'), 'utf8');

/** Paths between back quotes; a pattern stands for all that it matches. */
function paths(text: string, looksLike: RegExp): string[] {
  return [...text.matchAll(/`([^`\s]+)`/g)].flatMap(([, path = '']) =>
    looksLike.test(path) ? [path] : [],
  );
}

const isThere = (path: string) =>
  [path, `${path}.ts`, `${path}.test.ts`, `${path}*`].some(
    (p) => globSync(p.replace(/\/$/, ''), { cwd: root }).length > 0,
  );

describe('the page for developers', () => {
  it('names only folders and files that are there', () => {
    const named = paths(PAGE, /^(?:src|tests)\//);
    expect(named.length).toBeGreaterThan(100);
    expect(named.filter((path) => !isThere(path))).toEqual([]);
  });

  it('walks from a key to the disk and back over files that are there', () => {
    const [, walk = ''] = /## From a key to the disk and back\n([\s\S]*?)\n## /.exec(PAGE) ?? [];
    const named = paths(walk, /^[a-z-]+(?:\/[a-z-]+)+\.tsx?$/);
    expect(named.length).toBeGreaterThan(20);
    const places = ['src', 'src/screens'];
    expect(named.filter((path) => !places.some((p) => isThere(`${p}/${path}`)))).toEqual([]);
  });
});
