import { execFileSync } from 'node:child_process';
import {
  existsSync,
  linkSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { Pinned } from '../pinned.ts';

let folder: string;
let pinned: Pinned;
const at = (...parts: string[]) => join(folder, ...parts);
const git = (repo: string, ...args: string[]) =>
  execFileSync('git', args, { cwd: at(repo), encoding: 'utf8' }).trim();

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'putback-bench-'));
  pinned = new Pinned(folder);
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

describe('putback new', () => {
  it('alone starts a job of four lines and no second file', async () => {
    expect((await pinned.run('new', 'alone.yaml')).exit).toBe(0);
    expect(readFileSync(at('alone.yaml'), 'utf8')).toBe('putback: 1\njob: Alone\ndiary:\n');
    expect(readdirSync(at('.')).filter((name) => !name.startsWith('.'))).toEqual(['alone.yaml']);
  });

  it('in a bench starts a job of which check is silent, pointing editors at the schema', async () => {
    writeFileSync(at('bench.yaml'), 'commit: never\n');
    const { exit } = await pinned.run(
      'new',
      'left-cover.yaml',
      '--machine',
      'Hollin 400 Twin, 1998',
    );
    expect(exit).toBe(0);
    expect(readFileSync(at('left-cover.yaml'), 'utf8')).toBe(
      [
        '# yaml-language-server: $schema=./putback.schema.json',
        'putback: 1',
        'job: Left cover',
        'machine: Hollin 400 Twin, 1998',
        'diary:',
        '',
      ].join('\n'),
    );
    expect(JSON.parse(readFileSync(at('putback.schema.json'), 'utf8'))).toHaveProperty(
      'properties.pieces',
    );
    expect(await pinned.run('check', 'left-cover.yaml')).toEqual({ exit: 0, out: '', err: '' });
  });

  it.each(["It's 5 o'clock: oil # everywhere", 'yes', '1.10', '- dash'])(
    'writes any name of a job so that it reads back: %j',
    async (name) => {
      await pinned.run('new', 'a.yaml', name);
      const { json } = await pinned.json('status', 'a.yaml');
      expect(json.job).toBe(name);
      expect((await pinned.run('check', 'a.yaml')).exit).toBe(0);
    },
  );

  it('never writes over a file', async () => {
    writeFileSync(at('mine.yaml'), 'mine\n');
    expect(await pinned.json('new', 'mine.yaml')).toMatchObject({
      exit: 2,
      json: { refused: { code: 'exists' } },
    });
    expect(readFileSync(at('mine.yaml'), 'utf8')).toBe('mine\n');
  });

  it.each(readdirSync('templates').map((f) => f.replace('.yaml', '')))(
    'starts from the template %s, and check is silent',
    async (name) => {
      expect((await pinned.run('new', 'a.yaml', 'My job', '--from', name)).exit).toBe(0);
      expect(await pinned.run('check', 'a.yaml')).toEqual({ exit: 0, out: '', err: '' });
      expect((await pinned.json('status', 'a.yaml')).json.job).toBe('My job');
    },
  );
});

describe('putback bench', () => {
  it('makes a repository that merges diaries, with settings and schema, and commits nothing by itself', async () => {
    expect((await pinned.run('bench', 'repairs')).exit).toBe(0);
    expect(readdirSync(at('repairs')).sort()).toEqual([
      '.git',
      '.gitattributes',
      'bench.yaml',
      'putback.schema.json',
    ]);
    expect(readFileSync(at('repairs/.gitattributes'), 'utf8')).toContain('*.yaml merge=union');
    expect(git('repairs', 'config', 'merge.putback.driver')).toContain('merge %O %A %B');
    expect(readFileSync(at('repairs/bench.yaml'), 'utf8')).toContain('commit: milestones');
  });

  it('is done once: what is there stays', async () => {
    await pinned.run('bench', 'repairs');
    writeFileSync(at('repairs/bench.yaml'), 'commit: never\n');
    const { json } = await pinned.json('bench', 'repairs');
    expect(json).toMatchObject({ ok: true, changed: false });
    expect(readFileSync(at('repairs/bench.yaml'), 'utf8')).toBe('commit: never\n');
  });
});

describe('what lies in the way of a bench', () => {
  const NAMES = ['bench.yaml', 'putback.schema.json', '.gitattributes'];
  const KINDS: [string, (path: string) => void][] = [
    ['a link', (path) => symlinkSync('../mine', path)],
    ['a link', (path) => symlinkSync('/nowhere', path)],
    ['a link', (path) => symlinkSync('/dev/tty', path)],
    ['a pipe', (path) => execFileSync('mkfifo', [path])],
    ['a folder', (path) => mkdirSync(path)],
    ['one file under several names', (path) => linkSync(at('mine'), path)],
  ];

  it.each(NAMES.flatMap((name) => KINDS.map(([is, make]) => [name, is, make] as const)))(
    '%s being %s is told and left, and nothing outside is written',
    async (name, is, make) => {
      writeFileSync(at('mine'), 'my only key\n');
      mkdirSync(at('clone'));
      git('clone', 'init', '-q');
      make(at('clone', name));
      const { exit, json } = await pinned.json('bench', 'clone');
      expect(exit).toBe(0);
      expect(json.left).toEqual([`${name} is ${is}: it is left alone.`]);
      expect(readFileSync(at('mine'), 'utf8')).toBe('my only key\n');
      expect(existsSync('/nowhere')).toBe(false);
    },
  );

  it('a schema of somebody else stays, and an older one of ours does not', async () => {
    mkdirSync(at('bench'));
    writeFileSync(at('bench/putback.schema.json'), '{"title": "mine"}\n');
    expect((await pinned.json('bench', 'bench')).json.left).toEqual([
      'putback.schema.json is not made by putback: it is left alone.',
    ]);
    expect(readFileSync(at('bench/putback.schema.json'), 'utf8')).toBe('{"title": "mine"}\n');
    writeFileSync(at('bench/putback.schema.json'), '{"title": "putback job file"}\n');
    expect((await pinned.json('bench', 'bench')).json.left).toEqual([]);
    expect(readFileSync(at('bench/putback.schema.json'), 'utf8')).toContain('properties');
  });

  it('a .git that is a link or no repository is not made one', async () => {
    for (const make of [
      (path: string) => symlinkSync(at('elsewhere'), path),
      (path: string) => writeFileSync(path, 'gitdir: ../elsewhere\n'),
    ]) {
      rmSync(at('odd'), { recursive: true, force: true });
      mkdirSync(at('odd'));
      make(at('odd/.git'));
      expect((await pinned.run('bench', 'odd')).out).toContain('No git repository: ');
      expect(existsSync(at('elsewhere'))).toBe(false);
    }
  });

  it('settings of git or a folder of them that are a link are not written through', async () => {
    mkdirSync(at('bench'));
    git('bench', 'init', '-q');
    rmSync(at('bench/.git/info'), { recursive: true });
    mkdirSync(at('info'));
    symlinkSync(at('info'), at('bench/.git/info'));
    renameSync(at('bench/.git/config'), at('config'));
    const before = readFileSync(at('config'), 'utf8');
    symlinkSync(at('config'), at('bench/.git/config'));
    expect((await pinned.json('bench', 'bench')).json.left).toEqual([
      'The settings of git are a link: they are left alone.',
    ]);
    expect(readFileSync(at('config'), 'utf8')).toBe(before);
    expect(readdirSync(at('info'))).toEqual([]);
    rmSync(at('bench/.git/config'));
    renameSync(at('config'), at('bench/.git/config'));
    expect((await pinned.json('bench', 'bench')).json.left).toEqual([
      expect.stringMatching(/info is a link: nothing is written there\.$/),
    ]);
    expect(readdirSync(at('info'))).toEqual([]);
  });
});

describe('a milestone', () => {
  const job = 'putback: 1\njob: X\nbolts: {S: M6x25}\npieces:\n  cover: {bolts: S S}\ndiary:\n';
  const subjects = () => git('repairs', 'log', '--format=%s').split('\n');
  const steps = [
    ['out', 'repairs/a.yaml', 'cover', '--all'],
    ['off', 'repairs/a.yaml', 'cover'],
    ['in', 'repairs/a.yaml', 'cover', '1', '--kind', 'S'],
    ['in', 'repairs/a.yaml', 'cover', '2', '--kind', 'S'],
    ['tight', 'repairs/a.yaml', 'cover', '--all'],
    ['tight', 'repairs/a.yaml', 'cover', '--all'],
  ];

  it('is one commit of the job file alone, where the bench asks for it', async () => {
    await pinned.run('bench', 'repairs');
    writeFileSync(at('repairs/a.yaml'), job);
    writeFileSync(at('repairs/other.txt'), 'not mine\n');
    git('repairs', 'add', 'other.txt');
    for (const step of steps) expect((await pinned.run(...step)).exit).toBe(0);
    expect(subjects()).toEqual([
      'Cover tight: 2 bolts',
      'Cover on: 2 bolts in by fingers',
      'Cover off: 2 bolts',
    ]);
    expect(git('repairs', 'log', '--name-only', '--format=')).toBe('a.yaml\na.yaml\na.yaml');
    expect(git('repairs', 'log', '-1', '--format=%(trailers)')).toBe('Piece: cover\nRound: 1');
    expect(git('repairs', 'status', '--porcelain')).toContain('A  other.txt');
  });

  it('is never made elsewhere', async () => {
    await pinned.run('bench', 'repairs');
    writeFileSync(at('repairs/bench.yaml'), 'commit: never\n');
    writeFileSync(at('repairs/a.yaml'), job);
    for (const step of steps) await pinned.run(...step);
    expect(() => git('repairs', 'rev-parse', '--verify', '-q', 'HEAD')).toThrow();
  });

  it('that git does not make is a quiet line, and the mark stands', async () => {
    await pinned.run('bench', 'repairs');
    writeFileSync(at('repairs/a.yaml'), job);
    writeFileSync(
      at('repairs/.git/hooks/pre-commit'),
      '#!/bin/sh\necho no oil on the bench >&2\nexit 1\n',
      { mode: 0o755 },
    );
    await pinned.run('out', 'repairs/a.yaml', 'cover', '--all');
    const { exit, json } = await pinned.json('off', 'repairs/a.yaml', 'cover');
    expect([exit, json.changed]).toEqual([0, true]);
    expect(json.warnings).toMatchObject([
      { code: 'git', say: expect.stringContaining('no oil on the bench') },
    ]);
    expect(readFileSync(at('repairs/a.yaml'), 'utf8')).toContain('removed: all');
  });
});

describe('putback practice', () => {
  it('makes a bench with three jobs, left alone for three weeks, and a first commit', async () => {
    const { exit, json } = await pinned.json('practice', 'here');
    expect([exit, json.git]).toEqual([0, null]);
    expect(git('here', 'log', '--format=%s')).toBe('Practice bench');
    expect(git('here', 'status', '--porcelain')).toBe('');
    const jobs = readdirSync(at('here')).filter((f) => f.endsWith('.yaml') && f !== 'bench.yaml');
    expect(jobs).toHaveLength(3);
    for (const job of jobs) {
      expect(await pinned.run('check', `here/${job}`)).toEqual({ exit: 0, out: '', err: '' });
      expect(
        readFileSync(at('here', job), 'utf8')
          .match(/at: (\d{4}-\d\d-\d\d)/g)
          ?.at(-1),
      ).toMatch(/2026-03-(20|21)/);
    }
  });

  it('opens the one of before, and leaves any other folder alone that is not empty', async () => {
    await pinned.run('practice', 'here');
    const again = await pinned.json('practice', 'here');
    expect([again.exit, again.json.changed]).toEqual([0, false]);
    const anew = await pinned.json('practice', 'here', '--new');
    mkdirSync(at('other'));
    writeFileSync(at('other', 'notes.txt'), '');
    for (const refused of [anew, await pinned.json('practice', 'other')]) {
      expect(refused).toMatchObject({ exit: 2, json: { refused: { code: 'exists' } } });
    }
    expect(readdirSync(at('other'))).toEqual(['notes.txt']);
    expect(existsSync(at('here/.git'))).toBe(true);
  });
});

describe('putback schema', () => {
  it('prints the schema that stands beside the jobs', async () => {
    await pinned.run('bench', 'repairs');
    const { out } = await pinned.run('schema');
    expect(out).toBe(readFileSync(at('repairs/putback.schema.json'), 'utf8'));
    expect((await pinned.json('schema')).json).toEqual({ ok: true, schema: JSON.parse(out) });
  });
});
