import { globSync, readFileSync } from 'node:fs';
import { join, posix } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = join(import.meta.dirname, '../..');
const FILES = globSync('src/screens/**/*.{ts,tsx}', { cwd: root }).map((f) =>
  f.replaceAll('\\', '/'),
);

/** What each file imports of the others, types included. */
const IMPORTS = new Map(
  FILES.map((file) => {
    const text = readFileSync(join(root, file), 'utf8');
    const specs = [...text.matchAll(/(?:from|import\() ?'(\.[^']*)'/g)].map((m) => m[1] ?? '');
    return [file, specs.map((spec) => posix.join(posix.dirname(file), spec))] as const;
  }),
);

/** Whether `to` is imported by `from`, or by what that imports. */
function reaches(from: string, to: string): boolean {
  const seen = new Set<string>();
  const look = (file: string): boolean =>
    (IMPORTS.get(file) ?? []).some((next) => {
      if (next === to) return true;
      if (seen.has(next)) return false;
      seen.add(next);
      return look(next);
    });
  return look(from);
}

describe('the files of the screens', () => {
  it('import each other in no circle, types included', () => {
    expect(FILES.length).toBeGreaterThan(100);
    expect(FILES.filter((file) => reaches(file, file))).toEqual([]);
  });
});

describe('the rooms that every screen stands on', () => {
  const COMMON = ['kit', 'now', 'base', 'show', 'terminal'];
  const room = (file: string) => file.split('/')[2] ?? '';

  it('know no screen by its file: the list of screens alone does', () => {
    const named = FILES.filter((file) => COMMON.includes(room(file))).filter((file) =>
      (IMPORTS.get(file) ?? []).some(
        (to) => to.startsWith('src/screens/') && !COMMON.includes(room(to)),
      ),
    );
    expect(named).toEqual(['src/screens/show/screens.ts']);
  });
});
