/** The packed file: installs without network, build step or dependency, and works from anywhere. */
import { execFileSync, spawnSync } from 'node:child_process';
import {
  chmodSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { pinnedEnv } from './terminal/world.ts';

const root = resolve(import.meta.dirname, '..');
const home = mkdtempSync(join(tmpdir(), 'putback-pack-'));
const prefix = join(home, 'a prefix with blanks');
const putback = join(prefix, 'bin', 'putback');
let files: string[] = [];

/** npm without anything of whoever runs the tests, and with a registry that cannot be reached. */
const env = {
  ...pinnedEnv(home),
  npm_config_cache: join(home, 'cache'),
  npm_config_registry: 'http://127.0.0.1:9/',
  npm_config_audit: 'false',
  npm_config_fund: 'false',
  npm_config_update_notifier: 'false',
};

beforeAll(() => {
  // `prepare` would build again below the other tests' feet: what is packed is what they run.
  const packed = execFileSync(
    'npm',
    ['pack', '--ignore-scripts', '--json', '--pack-destination', home],
    {
      cwd: root,
      env,
      encoding: 'utf8',
    },
  );
  const [{ filename, files: inside }] = JSON.parse(packed);
  files = inside.map((f: { path: string }) => f.path);
  mkdirSync(prefix);
  execFileSync(
    'npm',
    ['install', '--global', '--prefix', prefix, '--offline', join(home, filename)],
    {
      cwd: home,
      env,
      stdio: 'pipe',
    },
  );
});
afterAll(() => rmSync(home, { recursive: true, force: true }));

function run(...args: string[]) {
  const { status, stdout, stderr } = spawnSync(putback, args, { cwd: home, env, encoding: 'utf8' });
  return { code: status, out: stdout, err: stderr };
}

it('holds the program, its licences, the practice jobs and the templates, and no source', () => {
  expect(files).toEqual(
    expect.arrayContaining(['dist/putback.js', 'dist/LICENSES.txt', 'LICENSE']),
  );
  expect(files.filter((f) => f.startsWith('jobs/')).length).toBeGreaterThan(0);
  expect(files.filter((f) => /^(src|tests|node_modules|dist\/made)\//.test(f))).toEqual([]);
});

it('brings nothing else into the prefix', () => {
  expect(readdirSync(join(prefix, 'lib', 'node_modules'))).toEqual(['putback']);
  expect(readdirSync(join(prefix, 'lib', 'node_modules', 'putback'))).not.toContain('node_modules');
});

it('says its version', () => {
  const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  expect(run('--version')).toEqual({ code: 0, out: `${version}\n`, err: '' });
});

it('checks a file, from a path with blanks and where nothing can be written', () => {
  const folder = join(home, 'my jobs');
  mkdirSync(folder);
  const job = join(folder, 'left cover.yaml');
  writeFileSync(
    job,
    'putback: 1\njob: Left cover\npieces:\n  cover: {bolts: S}\nbolts: {S: M6x25}\n',
  );
  const inside = join(prefix, 'lib', 'node_modules', 'putback', 'dist');
  chmodSync(inside, 0o555);
  chmodSync(folder, 0o555);
  expect(run('check', job)).toEqual({ code: 0, out: '', err: '' });
  chmodSync(inside, 0o755);
  chmodSync(folder, 0o755);
});

it('makes a practice bench from its own jobs', () => {
  const bench = join(home, 'a bench');
  const ran = run('practice', bench);
  expect(ran.code).toBe(0);
  expect(readdirSync(bench).filter((n) => n.endsWith('.yaml')).length).toBeGreaterThan(2);
});
