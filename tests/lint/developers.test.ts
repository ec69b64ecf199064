import { globSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = join(import.meta.dirname, '../..');
const PAGE = readFileSync(join(root, 'DEVELOPERS.md'), 'utf8');
const README = readFileSync(join(root, 'README.md'), 'utf8');

const FILES = ['src', 'tests', 'jobs', 'templates']
  .flatMap((folder) => globSync(`${folder}/**`, { cwd: root }))
  .concat(globSync('*.*', { cwd: root }));

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

/** Where a file can be that a row names alone: in the folders that the row names, or beside the files that it names. */
function foldersOf(row: string): string[] {
  return paths(row, /\//).flatMap((path) => [path.replace(/\/$/, ''), dirname(path)]);
}

/** Our own source files, by the end of their names; `*.late.ts` and `table-*.ts` are patterns. */
const SOURCE = /^[^*]+\.(?:tsx?|jsonc|js|grit)$/;

describe('the page for developers', () => {
  it.each([
    ['DEVELOPERS.md', PAGE, 100],
    ['README.md', README, 0],
  ])('%s names only folders and files that are there', (_, page, least) => {
    const named = paths(page, /^(?:src|tests|jobs)\//);
    expect(named.length).toBeGreaterThanOrEqual(least);
    expect(named.filter((path) => !isThere(path))).toEqual([]);
  });

  it('names a source file by the end of its path, or beside another that stands in the same row', () => {
    const lost = PAGE.split('\n').flatMap((row) => {
      const folders = foldersOf(row);
      const isFound = (name: string) =>
        FILES.some((f) => f === name || (name.includes('/') && f.endsWith(`/${name}`))) ||
        FILES.some((f) => folders.some((folder) => `/${f}`.endsWith(`/${folder}/${name}`)));
      return paths(row, SOURCE).filter((name) => !isFound(name));
    });
    expect(lost).toEqual([]);
  });

  it('walks from a key to the disk and back over files that are there', () => {
    const [, walk = ''] = /## From a key to the disk and back\n([\s\S]*?)\n## /.exec(PAGE) ?? [];
    const named = paths(walk, /^[a-z-]+(?:\/[a-z-]+)+\.tsx?$/);
    expect(named.length).toBeGreaterThan(20);
    const places = ['src', 'src/screens'];
    expect(named.filter((path) => !places.some((p) => isThere(`${p}/${path}`)))).toEqual([]);
  });
});
