import { symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { messageOf, milestone } from '../../../src/diary/git/milestone.ts';
import { entry, home, JOB, marked, newFolder, Repo } from './repo.ts';

const SUBJECT = 'Left cover off: 11 bolts, hole 9 stuck';
const TRAILERS = { Piece: 'cover', Round: '1' };
const commit = (repo: Repo, name = 'job.yaml') =>
  milestone(repo.path(name), SUBJECT, TRAILERS, { env: repo.env });

test('a milestone is one commit, its subject a line of the diary', async () => {
  const repo = marked();
  const done = await commit(repo);
  const id = repo.git('rev-parse', 'HEAD').trim();
  expect(done).toEqual({ ok: true, commit: id, say: null });
  expect(repo.git('log', '-1', '--format=%B')).toBe(`${SUBJECT}\n\nPiece: cover\nRound: 1\n\n`);
  expect(repo.git('log', '-1', '--format=%(trailers:key=Piece,valueonly)').trim()).toBe('cover');
  expect(repo.git('log', '-1', '--format=%an <%ae>').trim()).toBe('Ada Bench <ada@bench.example>');
  expect(repo.git('status', '--porcelain')).toBe('');
  expect(repo.git('show', '--numstat', '--pretty=')).toBe('1\t0\tjob.yaml\n');
});

test('only the job file is in it: what else is staged, changed or new stays as it is', async () => {
  const repo = marked();
  for (const name of ['staged', 'dirty', 'both', 'removed', 'moved'])
    repo.write(name, `${name} 1\n`);
  repo.git('add', 'staged', 'dirty', 'both', 'removed', 'moved');
  repo.git('commit', '-q', '-m', 'others', '--', 'staged', 'dirty', 'both', 'removed', 'moved');
  repo.write('staged', 'staged 2\n');
  repo.write('both', 'both 2\n');
  repo.write('new-staged', 'n\n');
  repo.git('add', 'staged', 'both', 'new-staged');
  repo.write('both', 'both 3\n');
  repo.write('dirty', 'dirty 2\n');
  repo.write('untracked', 'u\n');
  repo.git('rm', '-q', 'removed');
  repo.git('mv', 'moved', 'moved-on');
  const others = () =>
    repo
      .git('status', '--porcelain', '-uall')
      .split('\n')
      .filter((l) => !l.includes('job.yaml'));
  const staged = () => repo.git('diff', '--cached', '--', '.', ':!job.yaml');
  const before = [others(), staged()];
  expect(await commit(repo)).toMatchObject({ ok: true });
  expect(repo.names()).toEqual(['job.yaml']);
  expect([others(), staged()]).toEqual(before);
});

test('a new job file is committed alone', async () => {
  const repo = marked();
  repo.git('checkout', '-q', 'job.yaml');
  repo.write('new.yaml', JOB);
  repo.write('other.yaml', JOB);
  expect(await commit(repo, 'new.yaml')).toMatchObject({ ok: true });
  expect(repo.names()).toEqual(['new.yaml']);
  expect(repo.git('status', '--porcelain')).toBe('?? other.yaml\n');
});

test('the very first commit of a repository is one too', async () => {
  const repo = new Repo();
  repo.git('init', '-q');
  repo.write('job.yaml', JOB);
  repo.write('other.yaml', JOB);
  expect(await commit(repo)).toMatchObject({ ok: true, say: null });
  expect(repo.git('ls-tree', '--name-only', 'HEAD')).toBe('job.yaml\n');
});

test('a job file that git left out on purpose is not committed behind its back', async () => {
  const repo = marked();
  repo.write('.gitignore', '*.yml\n');
  repo.write('job.yml', JOB);
  const head = repo.git('rev-parse', 'HEAD');
  expect(await commit(repo, 'job.yml')).toEqual({
    ok: false,
    why: 'ignored',
    say: 'Kept in the file. No commit: git is told to ignore this file.',
  });
  expect(repo.git('rev-parse', 'HEAD')).toBe(head);
});

test('nothing changed is no commit', async () => {
  const repo = marked();
  repo.git('checkout', '-q', 'job.yaml');
  expect(await commit(repo)).toMatchObject({ ok: false, why: 'nothing' });
});

test.each([
  '-rf.yaml',
  '--output=x.yaml',
  '*.yaml',
  ':(top)x.yaml',
  'a "b" $(touch x).yaml',
  "it's\n2 lines.yaml",
  'Öl – ☃.yaml',
])('a file named %j is a file like any other', async (name) => {
  const repo = marked();
  repo.write(name, JOB);
  repo.write('x.yaml', JOB);
  expect(await commit(repo, name)).toMatchObject({ ok: true });
  expect(repo.names()).toEqual([name]);
});

test('a job file in a folder of the repository, and one behind a link', async () => {
  const repo = marked();
  repo.write('deep/er/job.yaml', JOB);
  symlinkSync(repo.path('deep/er/job.yaml'), join(newFolder(), 'link.yaml'));
  expect(await commit(repo, 'deep/er/job.yaml')).toMatchObject({ ok: true });
  expect(repo.names()).toEqual(['deep/er/job.yaml']);
  const away = newFolder();
  symlinkSync(repo.path('job.yaml'), join(away, 'link.yaml'));
  expect(await milestone(join(away, 'link.yaml'), SUBJECT, {}, { env: repo.env })).toMatchObject({
    ok: true,
  });
  expect(repo.names()).toEqual(['job.yaml']);
});

test('ten milestones are ten commits', async () => {
  const repo = marked();
  let text = JOB;
  for (let n = 0; n < 10; n++) {
    text += entry(`aaaaaa${n + 10}`);
    repo.write('job.yaml', text);
    expect(await commit(repo)).toMatchObject({ ok: true });
  }
  expect(repo.git('rev-list', '--count', 'HEAD')).toBe('11\n');
});

test('a subject is one line and harmless, whatever is in it', () => {
  expect(
    messageOf('\u001b[31mCover\u202e off\r\n\nPiece: forged\u0007', {
      Piece: 'cover\nRound: 9',
      Round: '',
    }),
  ).toBe('\\x1b[31mCover\\u202e off Piece: forged\\x07\n\nPiece: cover Round: 9\n');
  expect(messageOf(' \n ', {})).toBe('Job file\n');
  expect(messageOf('#1 cover off', {})).toBe('#1 cover off\n');
  expect([...messageOf('x'.repeat(1000), {})]).toHaveLength(201);
});

test('a subject that looks like a comment or an option stands in the log as it is', async () => {
  const repo = marked();
  expect(await milestone(repo.path('job.yaml'), '# --amend', {}, { env: repo.env })).toMatchObject({
    ok: true,
  });
  expect(repo.git('log', '-1', '--format=%s')).toBe('# --amend\n');
});

test('without a name in git there is no commit, and none is made up', async () => {
  const repo = marked(home(false));
  const head = repo.git('rev-parse', 'HEAD');
  expect(await commit(repo)).toEqual({
    ok: false,
    why: 'no-name',
    say: 'Kept in the file. No commit: git does not know your name. Tell it: git config --global user.name NAME, and user.email ADDRESS.',
  });
  expect(repo.git('rev-parse', 'HEAD')).toBe(head);
  expect(repo.git('status', '--porcelain')).toBe(' M job.yaml\n');
});
