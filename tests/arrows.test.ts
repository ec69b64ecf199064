import { spawnSync } from 'node:child_process';
import { globSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';

const root = join(import.meta.dirname, '..');
const folders: string[] = [];
afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});

/** What lint says of each of these files, if it stood in the project; by path. */
function lintAll(files: readonly (readonly [path: string, code: string])[]): string[] {
  const folder = mkdtempSync(join(tmpdir(), 'putback-arrows-'));
  folders.push(folder);
  const settings = readFileSync(join(root, 'biome.jsonc'), 'utf8');
  writeFileSync(
    join(folder, 'biome.jsonc'),
    settings.replace(/"vcs": \{[^}]*\}/, '"vcs": { "enabled": false }'),
  );
  const paths = files.map(([path, code], i) => {
    const own = path.replace('x.ts', `case${i}.ts`);
    mkdirSync(join(folder, dirname(own)), { recursive: true });
    writeFileSync(join(folder, own), `${code}\n`);
    return own;
  });
  const biome = join(root, 'node_modules/.bin/biome');
  const run = spawnSync(biome, ['lint', '--max-diagnostics=none', '--reporter=json', 'src'], {
    cwd: folder,
    encoding: 'utf8',
  });
  const { diagnostics } = JSON.parse(run.stdout) as {
    diagnostics: { category: string; location: { path: string | { file: string } } }[];
  };
  const at = (path: string | { file: string }) => (typeof path === 'string' ? path : path.file);
  return paths.map((path) =>
    diagnostics
      .filter((d) => at(d.location.path).endsWith(path))
      .map((d) => d.category)
      .join(' '),
  );
}

describe('the arrows between the rooms', () => {
  const wrong = [
    ['src/bolt/x.ts', "export { a } from '../piece/row.ts';", 'noRestrictedImports'],
    ['src/bolt/x.ts', "export { a } from '../job/fold.ts';", 'noRestrictedImports'],
    ['src/piece/x.ts', "export { a } from '../job/judge.ts';", 'noRestrictedImports'],
    ['src/piece/sequence/x.ts', "export { a } from '../../plan/next.ts';", 'noRestrictedImports'],
    ['src/job/x.ts', "export { a } from '../plan/next.ts';", 'noRestrictedImports'],
    ['src/job/x.ts', "export { a } from './save/save.ts';", 'noRestrictedImports'],
    ['src/plan/x.ts', "export { a } from '../diary/bench.ts';", 'noRestrictedImports'],
    ['src/diary/x.ts', "export { a } from '../commands/help.ts';", 'noRestrictedImports'],
    ['src/commands/x.ts', "export { a } from '../screens/update.ts';", 'noRestrictedImports'],
    ['src/screens/x.ts', "export { a } from '../commands/help.ts';", 'noRestrictedImports'],
    ['src/job/x.ts', "export const a = await import('node:fs');", 'noRestrictedImports'],
    ['src/bolt/x.ts', "import { render } from 'ink';\nexport { render };", 'noRestrictedImports'],
    ['src/piece/x.ts', 'export const a = Date.now();', 'noRestrictedGlobals'],
    ['src/job/x.ts', 'export const a = process.cwd();', 'noRestrictedGlobals'],
    ['src/plan/x.ts', 'export const a = performance.now();', 'noRestrictedGlobals'],
    ['src/screens/x.ts', 'export const a = setTimeout(() => {}, 1);', 'noRestrictedGlobals'],
    ['src/commands/x.ts', 'export const a = process.env.HOME;', 'noProcessEnv'],
    ['src/commands/x.ts', 'console.log(1);', 'noConsole'],
    [
      'src/commands/x.ts',
      Array.from({ length: 401 }, (_, i) => `export const a${i} = ${i};`).join('\n'),
      'noExcessiveLinesPerFile',
    ],
  ] as const;
  const said = lintAll(wrong.map(([path, code]) => [path, code]));
  it.each(wrong.map(([path, code, rule], i) => [path, code.slice(0, 80), rule, i] as const))(
    '%s may not: %j',
    (_path, _code, rule, i) => {
      expect(said[i]).toContain(rule);
    },
  );

  const right = [
    ['src/piece/x.ts', "export { a } from '../bolt/units.ts';"],
    ['src/bolt/x.ts', "export type { Kind } from '../job/types.ts';"],
    ['src/job/save/x.ts', "export { readFileSync } from 'node:fs';"],
    ['src/commands/x.ts', "export const a = import('../screens/open.ts');"],
  ] as const;
  it('what points downward is let through', () => {
    expect(lintAll(right).join(' ')).not.toContain('noRestricted');
  });

  it('no room that computes draws lots', () => {
    const rooms = ['bolt', 'piece', 'job', 'plan', 'paper', 'screens'];
    const files = rooms
      .flatMap((room) => globSync(`src/${room}/**/*.{ts,tsx}`, { cwd: root }))
      .filter((f) => !/^src.(job.save|screens.(open|loop))/.test(f));
    const lots = files.filter((f) =>
      /Math\.random|new Date\(\)/.test(readFileSync(join(root, f), 'utf8')),
    );
    expect(files.length).toBeGreaterThan(50);
    expect(lots).toEqual([]);
  });
});
