import { chmodSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { firstCommit } from '../../../src/diary/git/bench.ts';
import { driverOf, initBench } from '../../../src/diary/git/init.ts';
import { entry, home, JOB, newFolder, Repo } from './repo.ts';

const init = (repo: Repo, program?: string) =>
  initBench(repo.folder, { env: repo.env, ...(program === undefined ? {} : { program }) });

const ATTRIBUTES =
  '# Job files unite their diaries. After `putback bench` they merge by meaning, else line by line.\n' +
  '*.yaml merge=union\nbench.yaml !merge\n';

test('a folder becomes a bench, and a second time nothing is left to do', async () => {
  const repo = new Repo();
  expect(await init(repo)).toEqual({
    ok: true,
    lines: [
      'A git repository is made here.',
      '.gitattributes lets diaries unite.',
      'Job files merge by meaning.',
    ],
    left: [],
    wrote: '.gitattributes',
  });
  expect(repo.read('.gitattributes')).toBe(ATTRIBUTES);
  const merges = (at: Repo) =>
    at.git('check-attr', 'merge', 'cover.yaml', 'deep/cover.yaml', 'bench.yaml', 'x.md');
  const said = (how: string) =>
    `cover.yaml: merge: ${how}\ndeep/cover.yaml: merge: ${how}\nbench.yaml: merge: unspecified\nx.md: merge: unspecified\n`;
  expect(merges(repo)).toBe(said('putback'));
  expect(repo.git('config', 'merge.putback.driver')).toContain('; putback merge %O %A %B && ');
  expect(await init(repo)).toEqual({ ok: true, lines: [], left: [], wrote: null });
  // A clone that nobody made a bench has git's own way.
  repo.git('add', '.');
  repo.git('commit', '-q', '-m', 'bench');
  const clone = new Repo(repo.env, newFolder());
  clone.git('clone', '-q', repo.folder, '.');
  expect(merges(clone)).toBe(said('union'));
  expect(repo.read('.gitattributes')).toBe(ATTRIBUTES);
});

test('what stands in .gitattributes stays, in its own line endings', async () => {
  const repo = new Repo();
  repo.write('.gitattributes', '*.png binary\r\n*.yaml text');
  await init(repo);
  expect(repo.read('.gitattributes')).toBe(
    `*.png binary\r\n*.yaml text\r\n${ATTRIBUTES.replaceAll('\n', '\r\n')}`,
  );
  expect(repo.git('check-attr', 'text', 'merge', '--', 'a.yaml')).toBe(
    'a.yaml: text: set\na.yaml: merge: putback\n',
  );
});

test('a folder inside a repository becomes a bench of that repository', async () => {
  const outer = new Repo();
  outer.git('init', '-q');
  outer.write('.gitattributes', '*.md text\n');
  outer.write('bench/cover.yaml', JOB);
  const inner = new Repo(outer.env, outer.path('bench'));
  expect((await init(inner)).lines).toEqual([
    '.gitattributes lets diaries unite.',
    'Job files merge by meaning.',
  ]);
  expect(inner.git('rev-parse', '--show-toplevel').trim()).toBe(outer.folder);
  expect(outer.git('check-attr', 'merge', 'bench/cover.yaml', 'other.yaml')).toBe(
    'bench/cover.yaml: merge: putback\nother.yaml: merge: unspecified\n',
  );
  expect(outer.read('.gitattributes')).toBe('*.md text\n');
});

test('without a name in git the bench is made, and says what is missing for commits', async () => {
  const repo = new Repo(home(false));
  expect((await init(repo)).lines.at(-1)).toBe(
    'No commits yet: git does not know your name. Tell it: git config --global user.name NAME, and user.email ADDRESS.',
  );
  expect(await firstCommit(repo.folder, 'Bench', { env: repo.env })).toMatch(
    /^No first commit: git does not know/,
  );
});

test('without git nothing is made and a line says so', async () => {
  const repo = new Repo();
  expect(await initBench(repo.folder, { env: { PATH: newFolder() } })).toEqual({
    ok: false,
    lines: ['No git repository: git is not installed.'],
    left: [],
    wrote: null,
  });
});

test('the first commit has all of the new bench, and a second one is not made', async () => {
  const repo = new Repo();
  await init(repo);
  repo.write('cover.yaml', JOB);
  repo.write('bench.yaml', 'commit: milestones\n');
  expect(await firstCommit(repo.folder, 'Practice bench', { env: repo.env })).toBeNull();
  expect(await firstCommit(repo.folder, 'Practice bench', { env: repo.env })).toBeNull();
  expect(repo.git('log', '--format=%s')).toBe('Practice bench\n');
  expect(repo.names()).toEqual(['.gitattributes', 'bench.yaml', 'cover.yaml']);
});

test('the first commit of a bench inside a repository takes nothing from outside the bench', async () => {
  const outer = new Repo();
  outer.git('init', '-q');
  outer.write('staged', 's\n');
  outer.git('add', 'staged');
  outer.write('bench/cover.yaml', JOB);
  expect(await firstCommit(outer.path('bench'), 'Bench', { env: outer.env })).toBeNull();
  expect(outer.names()).toEqual(['bench/cover.yaml']);
  expect(outer.git('status', '--porcelain')).toBe('A  staged\n');
});

/** Two branches, each with a mark of its own, and a program in putback's place. */
async function parted(script: string | null): Promise<Repo> {
  const repo = new Repo();
  const program = join(newFolder(), 'putback');
  if (script !== null) {
    writeFileSync(program, `#!/bin/sh\n${script}\n`);
    chmodSync(program, 0o755);
  }
  await init(repo, program);
  repo.write('job.yaml', JOB);
  await firstCommit(repo.folder, 'base', { env: repo.env });
  repo.git('checkout', '-q', '-b', 'side');
  repo.write('job.yaml', JOB + entry('side0001'));
  repo.git('commit', '-q', '-am', 'side');
  repo.git('checkout', '-q', 'main');
  repo.write('job.yaml', JOB + entry('main0001'));
  repo.git('commit', '-q', '-am', 'main');
  return repo;
}

test.each([
  ['is not there', null],
  ['dies at once', 'exit 1'],
  ['has the wrong Node', 'exit 2'],
  ['is killed', 'kill -9 $$'],
])('a merge where putback %s keeps both sides, line by line', async (_, script) => {
  const repo = await parted(script);
  repo.git('merge', '-q', '--no-edit', 'side');
  expect(repo.read('job.yaml')).toBe(JOB + entry('main0001') + entry('side0001'));
});

test('what putback makes of a merge is taken', async () => {
  const repo = await parted('cat "$4" > "$3"');
  repo.git('merge', '-q', '--no-edit', 'side');
  expect(repo.read('job.yaml')).toBe(JOB + entry('side0001'));
});

test('what putback leaves open is left open', async () => {
  const repo = await parted(
    'printf "<<<<<<< ours\\na\\n=======\\nb\\n>>>>>>> theirs\\n" > "$3"; exit 1',
  );
  expect(repo.fails('merge', '-q', '--no-edit', 'side')).toContain('CONFLICT');
  expect(repo.read('job.yaml')).toBe('<<<<<<< ours\na\n=======\nb\n>>>>>>> theirs\n');
});

test('a program whose path has a space is called as it is', () => {
  expect(driverOf("'/opt/my tools/putback'")).toContain(
    "; '/opt/my tools/putback' merge %O %A %B && exit 0; ",
  );
});

test('a bench in a folder with a name of any kind merges by meaning, and no folder beside it', async () => {
  const outer = new Repo();
  outer.git('init', '-q');
  for (const name of ['my "bench"', 'a*b', '[x]', 'ü #1', '!no', 'back\\slash']) {
    outer.write(`${name}/cover.yaml`, JOB);
    await init(new Repo(outer.env, outer.path(name)));
    expect(outer.git('check-attr', '-z', 'merge', '--', `${name}/cover.yaml`)).toContain(
      'merge\0putback',
    );
  }
  expect(outer.git('check-attr', 'merge', '--', 'axb/cover.yaml', 'x/cover.yaml')).not.toContain(
    'putback',
  );
});

test('other files go on merging as they did: those that unite, and YAML that is no job', async () => {
  const repo = new Repo();
  repo.git('init', '-q');
  repo.write('.gitattributes', '*.md merge=union\n');
  repo.write('CHANGES.md', '# Changes\n');
  const compose = (tag: string) => `services:\n  web:\n    image: web:${tag}\n    ports: [80]\n`;
  repo.write('compose.yaml', compose('1.20'));
  await initBench(repo.folder, { env: repo.env, program: 'false', others: ['compose.yaml'] });
  repo.git('add', '.');
  repo.git('commit', '-q', '-m', 'base');
  const clone = new Repo(repo.env, newFolder());
  clone.git('clone', '-q', repo.folder, '.');
  for (const side of [repo, clone]) {
    side.git('checkout', '-q', '-b', 'side');
    side.write('CHANGES.md', '# Changes\n- from the side\n');
    side.write('compose.yaml', compose('1.25'));
    side.git('commit', '-q', '-am', 'side');
    side.git('checkout', '-q', 'main');
    side.write('CHANGES.md', '# Changes\n- from main\n');
    side.write('compose.yaml', compose('1.22'));
    side.git('commit', '-q', '-am', 'main');
    expect(side.fails('merge', '-q', '--no-edit', 'side')).toContain('compose.yaml');
    expect(side.read('CHANGES.md')).toBe('# Changes\n- from main\n- from the side\n');
    expect(side.read('compose.yaml')).toMatch(
      /<<<<<<< [\s\S]*web:1\.22\n=+\n +image: web:1\.25\n>>>>>>> /,
    );
  }
});
