import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { build } from 'esbuild';
import { beforeAll, describe, expect, test } from 'vitest';
import { parseDocument } from 'yaml';
import { mergeDriver } from '../../../src/diary/git/driver.ts';
import { initBench } from '../../../src/diary/git/init.ts';
import { appendEntry } from '../../../src/job/edit/splice.ts';
import { entry, JOB, newFolder, Repo } from './repo.ts';

let program = '';
beforeAll(async () => {
  const outfile = join(newFolder(), 'merge.mjs');
  await build({
    entryPoints: [join(import.meta.dirname, 'merge-cli.ts')],
    outfile,
    bundle: true,
    platform: 'node',
    format: 'esm',
    banner: {
      js: 'import {createRequire as c} from "node:module";const require=c(import.meta.url);',
    },
  });
  program = `'${process.execPath}' '${outfile}'`;
});

const time = (minute: number) => `2026-05-02T10:${String(minute).padStart(2, '0')}:00+02:00`;

class Bench extends Repo {
  private minute = 0;
  /** One mark more, committed or not. */
  mark(id: string, commit = true): void {
    this.minute += 1;
    const line = entry(id, time(this.minute)).trim();
    this.write('job.yaml', appendEntry(this.read('job.yaml'), line));
    if (commit) this.git('commit', '-q', '-am', id);
  }

  ids(): string[] {
    const doc = parseDocument(this.read('job.yaml'), { schema: 'failsafe' });
    expect(doc.errors).toEqual([]);
    return ((doc.toJS() as { diary: { id: string }[] | '' }).diary || []).map((e) => e.id);
  }
}

async function bench(driver: boolean): Promise<Bench> {
  const repo = new Bench();
  repo.git('init', '-q');
  if (driver) await initBench(repo.folder, { env: repo.env, program });
  else repo.write('.gitattributes', '*.yaml merge=union\n');
  repo.write('job.yaml', JOB);
  repo.git('add', '.');
  repo.git('commit', '-q', '-m', 'start');
  repo.mark('base0001');
  repo.git('checkout', '-q', '-b', 'side');
  for (const id of ['side0001', 'side0002', 'side0003']) repo.mark(id);
  repo.git('checkout', '-q', 'main');
  for (const id of ['main0001', 'main0002']) repo.mark(id);
  return repo;
}

const ALL = ['base0001', 'main0001', 'main0002', 'side0001', 'side0002', 'side0003'];
const marksOf = (ids: string[], start: string) => ids.filter((id) => id.startsWith(start));

describe.each([
  ['by meaning, on a bench', true],
  ['line by line, in a plain clone', false],
])('%s', (_, driver) => {
  test('a merge has every mark once, each side in its order', async () => {
    const repo = await bench(driver);
    repo.git('merge', '-q', '--no-edit', 'side');
    expect(repo.ids().toSorted()).toEqual(ALL);
    expect(marksOf(repo.ids(), 'side')).toEqual(['side0001', 'side0002', 'side0003']);
    expect(marksOf(repo.ids(), 'main')).toEqual(['main0001', 'main0002']);
    expect(repo.git('status', '--porcelain', '-uall')).toBe('');
  });

  test('a rebase has every mark once', async () => {
    const repo = await bench(driver);
    repo.git('rebase', '-q', 'side');
    expect(repo.ids().toSorted()).toEqual(ALL);
    expect(repo.git('status', '--porcelain', '-uall')).toBe('');
    expect(repo.git('rev-list', '--count', 'HEAD')).toBe('7\n');
  });

  test('a cherry-pick brings its mark, and a merge afterwards makes it no other', async () => {
    const repo = await bench(driver);
    repo.git('cherry-pick', 'side~1');
    expect(repo.ids()).toContain('side0002');
    repo.git('merge', '-q', '--no-edit', 'side');
    // Git's own union may write a picked line twice, the same both times; it counts once.
    const ids = driver ? repo.ids() : [...new Set(repo.ids())];
    expect(ids.toSorted()).toEqual(ALL);
    const lines = repo
      .read('job.yaml')
      .split('\n')
      .filter((l) => l.includes('id: '));
    expect(new Set(lines).size).toBe(ALL.length);
  });

  test('marks put aside by stash come back to what was marked meanwhile', async () => {
    const repo = await bench(driver);
    repo.mark('open0001', false);
    repo.git('stash', '-q');
    repo.mark('main0003');
    repo.git('stash', 'pop', '-q');
    expect(repo.ids().toSorted()).toEqual([
      'base0001',
      'main0001',
      'main0002',
      'main0003',
      'open0001',
    ]);
  });

  test('a merge of a third branch has all of three', async () => {
    const repo = await bench(driver);
    repo.git('checkout', '-q', '-b', 'third', 'main~2');
    repo.mark('third001');
    repo.git('checkout', '-q', 'main');
    repo.git('merge', '-q', '--no-edit', 'side');
    repo.git('merge', '-q', '--no-edit', 'third');
    expect(repo.ids().toSorted()).toEqual([...ALL, 'third001'].toSorted());
  });

  test('three clones push and pull through one bare repository: a hundred and eighty marks, all there on all three', async () => {
    const start = await bench(driver);
    const bare = newFolder();
    start.git('clone', '-q', '--bare', start.folder, bare);
    const clones: Bench[] = [];
    for (const name of ['one', 'two', 'six']) {
      const folder = join(newFolder(), name);
      start.git('clone', '-q', bare, folder);
      const clone = new Bench(start.env, folder);
      if (driver) await initBench(folder, { env: start.env, program });
      clones.push(clone);
    }
    let seed = 11;
    const random = (n: number) => {
      seed = (seed * 1103515245 + 12345) % 2147483648;
      return Math.floor((seed / 2147483648) * n);
    };
    const marks: string[] = [];
    const sync = (clone: Bench) => {
      clone.git('pull', '-q', random(2) === 0 ? '--rebase' : '--no-rebase', '--no-edit');
      clone.git('push', '-q');
    };
    while (marks.length < 180) {
      const who = random(3);
      const clone = clones[who] as Bench;
      const several = 1 + random(24);
      for (let n = 0; n < several; n++) {
        const id = `c${who}m${String(marks.length).padStart(5, '0')}`;
        clone.mark(id, false);
        marks.push(id);
      }
      clone.git('commit', '-q', '-am', `marks up to ${marks.length}`);
      if (random(3) > 0) sync(clone);
    }
    for (const clone of [...clones, ...clones]) sync(clone);
    for (const clone of clones) {
      expect(clone.ids().toSorted()).toEqual(
        [...marksOf(ALL, 'base'), ...marksOf(ALL, 'main'), ...marks].toSorted(),
      );
      expect(clone.read('job.yaml')).toBe(clones[0]?.read('job.yaml'));
      for (const who of [0, 1, 2]) {
        const own = marks.filter((m) => m.startsWith(`c${who}`));
        expect(clone.ids().filter((id) => own.includes(id))).toEqual(own);
      }
    }
  });
});

test('on a bench a merge is in the order of time, and the person’s part by key', async () => {
  const repo = await bench(true);
  repo.git('checkout', '-q', 'side');
  repo.write(
    'job.yaml',
    repo.read('job.yaml').replace('bolts: S S S', 'bolts: S S M').replace('weeps', 'drips'),
  );
  repo.git('commit', '-q', '-am', 'theirs');
  repo.git('checkout', '-q', 'main');
  repo.write('job.yaml', repo.read('job.yaml').replace('bolts: S S S', 'bolts: L S S'));
  repo.git('commit', '-q', '-am', 'ours');
  repo.git('merge', '-q', '--no-edit', 'side');
  expect(repo.read('job.yaml')).toContain(
    'job: Left cover drips oil\n\npieces:\n  cover: {bolts: L S M}\n\ndiary:\n',
  );
});

test('what truly differs is open between markers, the diary united, and git says conflict', async () => {
  const repo = await bench(true);
  repo.git('checkout', '-q', 'side');
  repo.write('job.yaml', repo.read('job.yaml').replace('weeps', 'drips'));
  repo.git('commit', '-q', '-am', 'theirs');
  repo.git('checkout', '-q', 'main');
  repo.write('job.yaml', repo.read('job.yaml').replace('weeps', 'sweats'));
  repo.git('commit', '-q', '-am', 'ours');
  expect(repo.fails('merge', '-q', '--no-edit', 'side')).toContain('CONFLICT');
  const text = repo.read('job.yaml');
  expect(text).toContain(
    '<<<<<<< ours\njob: Left cover sweats oil\n=======\njob: Left cover drips oil\n>>>>>>> theirs\n',
  );
  for (const id of ALL) expect(text.match(new RegExp(id, 'g'))).toHaveLength(1);
});

const three = (
  base: string | Uint8Array,
  ours: string | Uint8Array,
  theirs: string | Uint8Array,
): [string, string, string] => {
  const folder = newFolder();
  const paths = ['base', 'ours', 'theirs'].map((name) => join(folder, name));
  for (const [i, bytes] of [base, ours, theirs].entries()) writeFileSync(paths[i] ?? '', bytes);
  return paths as [string, string, string];
};

test('texts of several lines are merged by lines, as git does', async () => {
  const text = (a: string, b: string) =>
    `job: x\ncomplaint: |\n  ${a}\n  two\n  three\n  four\n  ${b}\ndiary:\n`;
  const paths = three(text('one', 'five'), text('ONE', 'five'), text('one', 'FIVE'));
  expect(await mergeDriver(...paths)).toEqual({ as: 'merged' });
  expect(readFileSync(paths[1], 'utf8')).toBe(text('ONE', 'FIVE'));
});

test('a driver that cannot read or write changes nothing and says so', async () => {
  const latin = Buffer.from([0x6a, 0x6f, 0x62, 0x3a, 0x20, 0xfc, 0x0a]);
  const paths = three(JOB, latin, JOB + entry('aaaaaaa1'));
  const undone = (doing: string, code: string, say: string) =>
    expect.objectContaining({ as: 'undone', doing, fail: expect.objectContaining({ code, say }) });
  const bad = undone('read', 'not-text', 'ours is not UTF-8 text.');
  expect(await mergeDriver(...paths)).toEqual(bad);
  expect(readFileSync(paths[1])).toEqual(latin);
  const gone = undone('read', 'gone', 'No file nowhere to merge.');
  expect(await mergeDriver('/nowhere', paths[1], paths[2])).toEqual(gone);
  const folder = undone(
    'read',
    'not-plain',
    `${basename(dirname(paths[0]))} is a folder, not a plain file.`,
  );
  expect(await mergeDriver(dirname(paths[0]), paths[1], paths[2])).toEqual(folder);
  const [base, ours, theirs] = three(JOB, JOB + entry('aaaaaaa1'), JOB + entry('bbbbbbb2'));
  mkdirSync(`${ours}.putback`);
  expect(await mergeDriver(base, ours, theirs)).toMatchObject({
    as: 'undone',
    doing: 'written',
    fail: { code: 'exists' },
  });
  expect(readFileSync(ours, 'utf8')).toBe(JOB + entry('aaaaaaa1'));
  expect(readdirSync(dirname(ours)).toSorted()).toEqual(['base', 'ours', 'ours.putback', 'theirs']);
});

test.each([
  ['emptied', ''],
  ['broken', '{ broken\n'],
])('a side %s never takes the job of the other with it', async (_, bytes) => {
  const repo = await bench(true);
  repo.git('checkout', '-q', 'side');
  repo.write('job.yaml', bytes);
  repo.git('commit', '-q', '-am', 'spoilt');
  repo.git('checkout', '-q', 'main');
  const ours = repo.read('job.yaml');
  expect(repo.fails('merge', '--no-edit', 'side')).toContain('CONFLICT');
  expect(repo.read('job.yaml')).toBe(`<<<<<<< ours\n${ours}=======\n${bytes}>>>>>>> theirs\n`);
});
