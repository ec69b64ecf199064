import { spawnSync } from 'node:child_process';
import {
  cpSync,
  globSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, posix } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { ROOMS, withRooms } from './rooms.ts';

const root = join(import.meta.dirname, '../..');
const folders: string[] = [];
afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});

interface Said {
  category: string;
  line: number;
}

/** What lint says of each of these files, if it stood in the project. */
function lintAll(files: readonly (readonly [path: string, code: string])[]): Said[][] {
  const folder = mkdtempSync(join(tmpdir(), 'putback-arrows-'));
  folders.push(folder);
  const settings = readFileSync(join(root, 'biome.jsonc'), 'utf8');
  const clock = 'tests/lint/clock.grit';
  cpSync(join(root, clock), join(folder, clock), { recursive: true });
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
    // A line a refused arrow, and there are thousands.
    maxBuffer: Infinity,
  });
  const { diagnostics } = JSON.parse(run.stdout) as {
    diagnostics: { category: string; location: { path: string; start: { line: number } } }[];
  };
  const said = new Map(paths.map((path): [string, Said[]] => [path, []]));
  for (const { category, location } of diagnostics) {
    said.get(location.path)?.push({ category, line: location.start.line });
  }
  return [...said.values()];
}
const words = (said: readonly Said[] | undefined) => said?.map((d) => d.category).join(' ');

const FOLDERS = Object.keys(ROOMS).filter((folder) => folder !== '');

describe('the arrows between the rooms', () => {
  it('every folder of src is a room of the table, and the rules come from it', () => {
    const folders = globSync('src/**/*.{ts,tsx}', { cwd: root }).map((f) =>
      posix.relative('src', dirname(f).replaceAll('\\', '/')),
    );
    expect([...new Set(folders)].filter((folder) => !(folder in ROOMS))).toEqual([]);
    const settings = readFileSync(join(root, 'biome.jsonc'), 'utf8');
    expect(withRooms(settings)).toBe(settings);
  });

  it('each arrow that the table does not have is refused, each that it has is let through', () => {
    const others = (from: string) => FOLDERS.filter((to) => to !== from);
    // A file a room, with a line for each other one.
    const said = lintAll(
      FOLDERS.map((from) => {
        const lines = others(from).map((to, i) => {
          const path = posix.relative(`src/${from}`, `src/${to}/a.ts`);
          return `export { a as a${i} } from '${path.startsWith('.') ? path : `./${path}`}';`;
        });
        return [`src/${from}/x.ts`, lines.join('\n')] as const;
      }),
    );
    const odd = FOLDERS.flatMap((from, n) => {
      const refused = new Set(
        said[n]?.flatMap((d) => (d.category.includes('noRestrictedImports') ? d.line : [])),
      );
      const may = ROOMS[from]?.may ?? [];
      return others(from)
        .filter((to, i) => refused.has(i + 1) === may.includes(to))
        .map((to) => `${from} -> ${to}`);
    });
    expect(odd).toEqual([]);
    expect(FOLDERS.length).toBeGreaterThan(50);
  });

  const wrong = [
    ['src/job/fold/x.ts', "export const a = await import('node:fs');", 'noRestrictedImports'],
    [
      'src/bolt/fit/x.ts',
      "import { render } from 'ink';\nexport { render };",
      'noRestrictedImports',
    ],
    [
      'src/commands/x.ts',
      "import { render } from 'ink';\nexport { render };",
      'noRestrictedImports',
    ],
    ['src/piece/x.ts', 'export const a = Date.now();', 'plugin'],
    ['src/plan/x.ts', 'export const a = new Date();', 'plugin'],
    ['src/plan/buy/x.ts', 'const D = Date;\nexport const a = D.now();', 'plugin'],
    ['src/job/x.ts', 'export const a = process.cwd();', 'noRestrictedGlobals'],
    ['src/plan/x.ts', 'export const a = performance.now();', 'noRestrictedGlobals'],
    ['src/screens/show/x.ts', 'export const a = setTimeout(() => {}, 1);', 'noRestrictedGlobals'],
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
      expect(words(said[i])).toContain(rule);
    },
  );

  it('what a room may do is let through', () => {
    const right = [
      ['src/job/save/x.ts', "export { readFileSync } from 'node:fs';"],
      ['src/plan/x.ts', 'export const a = Date.UTC(2026, 1, 1) + new Date(5).getTime();'],
    ] as const;
    expect(lintAll(right).map(words)).toEqual(['', '']);
  });

  it('no room that computes draws lots', () => {
    const rooms = FOLDERS.filter((folder) => !ROOMS[folder]?.system);
    const files = rooms.flatMap((room) => globSync(`src/${room}/*.{ts,tsx}`, { cwd: root }));
    const lots = files.filter((f) => readFileSync(join(root, f), 'utf8').includes('Math.random'));
    expect(files.length).toBeGreaterThan(50);
    expect(lots).toEqual([]);
  });
});
