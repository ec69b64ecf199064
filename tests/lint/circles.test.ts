import { globSync, readFileSync } from 'node:fs';
import { join, posix } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = join(import.meta.dirname, '../..');
const FILES = globSync('src/**/*.{ts,tsx}', { cwd: root }).map((f) => f.replaceAll('\\', '/'));

type Imports = ReadonlyMap<string, readonly string[]>;

/** What a file imports of the others, types and what is only handed on included. */
function importsOf(file: string, text: string): string[] {
  const specs = [...text.matchAll(/(?:\bfrom|\bimport|\bimport\() *'(\.[^']*)'/g)];
  return specs.map(([, spec = '']) => posix.join(posix.dirname(file), spec));
}

const IMPORTS: Imports = new Map(
  FILES.map((file) => [file, importsOf(file, readFileSync(join(root, file), 'utf8'))] as const),
);

/** The shortest way from a file back to itself over what is imported; null where there is none. */
function circleFrom(start: string, imports: Imports): string[] | null {
  const before = new Map<string, string>();
  const queue = [start];
  for (const file of queue) {
    for (const next of imports.get(file) ?? []) {
      if (next === start) {
        const way = [start];
        for (let at: string | undefined = file; at !== undefined; at = before.get(at))
          way.unshift(at);
        return way;
      }
      if (before.has(next)) continue;
      before.set(next, file);
      queue.push(next);
    }
  }
  return null;
}

function circles(imports: Imports): string[] {
  return [...imports.keys()].flatMap((file) => circleFrom(file, imports)?.join(' → ') ?? []);
}

describe('the files of src', () => {
  it('import each other in no circle, types included', () => {
    expect(FILES.length).toBeGreaterThan(500);
    // Every file is imported by another, but for those that start something: so the imports are found.
    const imported = new Set([...IMPORTS.values()].flat());
    expect(FILES.filter((file) => !imported.has(file)).length).toBeLessThan(10);
    expect(circles(IMPORTS)).toEqual([]);
  });

  it('a circle of types, of what is handed on or of imports on demand is told file by file', () => {
    const texts = {
      'src/a.ts': "import type { B } from './b/b.ts';",
      'src/b/b.ts': "export * from './c.ts';\nimport { d } from './d.ts';",
      'src/b/c.ts': "const a = () => import('../a.ts');",
      'src/b/d.ts': "import './d.ts';",
      'src/e.ts': "import {\n  type B,\n  b,\n} from './b/b.ts';",
    };
    const imports = new Map(
      Object.entries(texts).map(([file, text]) => [file, importsOf(file, text)] as const),
    );
    expect(circles(imports)).toEqual([
      'src/a.ts → src/b/b.ts → src/b/c.ts → src/a.ts',
      'src/b/b.ts → src/b/c.ts → src/a.ts → src/b/b.ts',
      'src/b/c.ts → src/a.ts → src/b/b.ts → src/b/c.ts',
      'src/b/d.ts → src/b/d.ts',
    ]);
  });
});

describe('the rooms that every screen stands on', () => {
  const SCREENS = FILES.filter((file) => file.startsWith('src/screens/'));
  const COMMON = ['kit', 'base', 'show', 'terminal'];
  const room = (file: string) => file.split('/')[2] ?? '';

  it('know no screen by its file: the list of screens alone does', () => {
    const named = SCREENS.filter((file) => COMMON.includes(room(file))).filter((file) =>
      (IMPORTS.get(file) ?? []).some(
        (to) => to.startsWith('src/screens/') && !COMMON.includes(room(to)),
      ),
    );
    expect(named).toEqual(['src/screens/show/screens.ts']);
  });
});
