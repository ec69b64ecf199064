import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';

const root = join(import.meta.dirname, '../..');
const EXPORTED =
  /^export (?:async )?(?:function\*?|const|let|class|interface|type|enum) ([A-Za-z_$][\w$]*)/gm;

/** Every exported name with the files that say what it is; what only hands a name on says nothing. */
function exported(): Map<string, string[]> {
  const names = new Map<string, string[]>();
  for (const file of globSync('src/**/*.{ts,tsx}', { cwd: root })) {
    const text = readFileSync(join(root, file), 'utf8');
    for (const [, name = ''] of text.matchAll(EXPORTED))
      names.set(name, [...(names.get(name) ?? []), file.replaceAll('\\', '/')]);
  }
  return names;
}

it('no exported name means two things', () => {
  const names = exported();
  expect(names.size).toBeGreaterThan(2000);
  const twice = [...names].filter(([, files]) => files.length > 1);
  // Each command is a file with what runs it, and the table names it by its file.
  const [run, ...others] = twice.sort(([a], [b]) => (a === 'run' ? -1 : b === 'run' ? 1 : 0));
  expect(run?.[0]).toBe('run');
  expect(run?.[1].filter((file) => !file.startsWith('src/commands/'))).toEqual([]);
  expect(others).toEqual([]);
});
