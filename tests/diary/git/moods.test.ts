import { execFileSync } from 'node:child_process';
import { chmodSync, existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test, vi } from 'vitest';
import { milestone } from '../../../src/diary/git/milestone.ts';
import { gitEnv, WRITE_TIMEOUT } from '../../../src/diary/git/run.ts';
import { entry, home, JOB, marked, newFolder, Repo } from './repo.ts';

const commit = (repo: Repo, options: { env?: Record<string, string> } = {}) =>
  milestone(repo.path('job.yaml'), 'Cover off: 3 bolts', {}, { env: repo.env, ...options });

/** What a program writes its word into once it hangs. */
function pipe(repo: Repo): string {
  const path = repo.path('.git/hangs');
  execFileSync('mkfifo', [path]);
  return path;
}

/** A commit whose time is over when something hangs, and no sooner, however long git takes to come to it. */
async function commitLate(repo: Repo, hangs: string) {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
  try {
    const done = commit(repo);
    const word = readFile(hangs, 'utf8');
    expect(await Promise.race([word, done])).toBe('hangs\n');
    vi.advanceTimersByTime(WRITE_TIMEOUT);
    return await done;
  } finally {
    vi.useRealTimers();
  }
}

/** Head, branch and index, to see that nothing of them moved. */
const state = (repo: Repo) => [
  repo.git('rev-parse', 'HEAD'),
  repo.fails('diff', '--cached'),
  repo.git('status', '--porcelain'),
];
const no = (reason: string) => `Kept in the file. No commit: ${reason}.`;

test('no git on this machine', async () => {
  const repo = marked();
  expect(await commit(repo, { env: { ...repo.env, PATH: newFolder() } })).toEqual({
    ok: false,
    why: 'no-git',
    say: no('git is not installed'),
  });
});

test('no repository', async () => {
  const repo = new Repo();
  repo.write('job.yaml', JOB);
  expect(await commit(repo)).toEqual({
    ok: false,
    why: 'no-repo',
    say: no('this folder is no git repository'),
  });
});

test('a folder that is gone', async () => {
  const repo = marked();
  rmSync(repo.folder, { recursive: true });
  expect(await commit(repo)).toMatchObject({ ok: false });
});

test('inside a bare repository', async () => {
  const repo = new Repo();
  repo.git('init', '-q', '--bare');
  repo.write('job.yaml', JOB);
  expect(await commit(repo)).toMatchObject({ ok: false, why: 'no-repo' });
});

test('on no branch: committed, with a word', async () => {
  const repo = marked();
  repo.git('stash', '-q');
  repo.git('checkout', '-q', '--detach');
  repo.git('stash', 'pop', '-q');
  expect(await commit(repo)).toEqual({
    ok: true,
    commit: repo.git('rev-parse', 'HEAD').trim(),
    say: 'Committed, but on no branch (detached HEAD): make a branch to keep it.',
  });
});

/** Two branches that differ in `other.txt`, so that bringing them together stops half way. */
function parted(): Repo {
  const repo = marked();
  repo.git('checkout', '-q', 'job.yaml');
  repo.write('other.txt', 'base\n');
  repo.git('add', '.');
  repo.git('commit', '-q', '-m', 'base');
  repo.git('checkout', '-q', '-b', 'side');
  repo.write('other.txt', 'side\n');
  repo.git('commit', '-q', '-am', 'side');
  repo.git('checkout', '-q', 'main');
  repo.write('other.txt', 'main\n');
  repo.git('commit', '-q', '-am', 'main');
  return repo;
}

test.each([
  ['merge', ['merge', 'side']],
  ['rebase', ['rebase', 'side']],
  ['rebase', ['rebase', '--apply', 'side']],
  ['cherry-pick', ['cherry-pick', 'side']],
  ['revert', ['revert', '--no-edit', 'HEAD~1']],
])('a %s under way is left alone', async (what, args) => {
  const repo = parted();
  repo.fails(...args);
  repo.write('job.yaml', JOB + entry('aaaaaaa1'));
  const before = state(repo);
  expect(await commit(repo)).toEqual({ ok: false, why: 'busy', say: no(`a ${what} is under way`) });
  expect(state(repo)).toEqual(before);
});

test('a bisect under way is left alone, in a work tree too', async () => {
  const repo = parted();
  const tree = join(newFolder(), 'tree');
  repo.git('worktree', 'add', '-q', '--detach', tree);
  const other = new Repo(repo.env, tree);
  other.git('bisect', 'start');
  other.write('job.yaml', JOB + entry('aaaaaaa1'));
  expect(await commit(other)).toEqual({ ok: false, why: 'busy', say: no('a bisect is under way') });
  repo.write('job.yaml', JOB + entry('aaaaaaa1'));
  expect(await commit(repo)).toMatchObject({ ok: true });
});

test('in a work tree the commit is on its branch', async () => {
  const repo = parted();
  const tree = join(newFolder(), 'tree');
  repo.git('worktree', 'add', '-q', '-b', 'bench', tree);
  const other = new Repo(repo.env, tree);
  other.write('job.yaml', JOB + entry('aaaaaaa1'));
  expect(await commit(other)).toMatchObject({ ok: true, say: null });
  expect(repo.git('log', '-1', '--format=%s', 'bench')).toBe('Cover off: 3 bolts\n');
});

test('in a submodule the commit is in the submodule alone', async () => {
  const inner = marked();
  const repo = new Repo(inner.env);
  repo.git('init', '-q');
  repo.git('submodule', '--quiet', 'add', inner.folder, 'bench');
  repo.git('commit', '-q', '-m', 'with bench');
  const sub = new Repo(inner.env, repo.path('bench'));
  sub.write('job.yaml', JOB + entry('aaaaaaa1'));
  const head = repo.git('rev-parse', 'HEAD');
  expect(await commit(sub)).toMatchObject({ ok: true });
  expect(sub.names()).toEqual(['job.yaml']);
  expect(repo.git('rev-parse', 'HEAD')).toBe(head);
  expect(repo.git('diff', '--cached', '--name-only')).toBe('');
});

test('a hook that says no is heard, and its word shown', async () => {
  const repo = marked();
  repo.hook('pre-commit', 'echo "no bolts on \u001b[31mFriday" >&2; exit 1');
  const before = state(repo);
  expect(await commit(repo)).toEqual({
    ok: false,
    why: 'hook',
    say: no('a hook said no: no bolts on \\x1b[31mFriday'),
  });
  expect(state(repo)).toEqual(before);
});

test('a new file that a hook turns down is not left half added', async () => {
  const repo = marked();
  repo.hook('commit-msg', 'exit 1');
  repo.write('new.yaml', JOB);
  const answer = await milestone(repo.path('new.yaml'), 'x', {}, { env: repo.env });
  expect(answer).toEqual({ ok: false, why: 'hook', say: no('a hook said no') });
  expect(repo.git('status', '--porcelain')).toBe(' M job.yaml\n?? new.yaml\n');
  expect(repo.read('new.yaml')).toBe(JOB);
});

test('a hook that hangs is ended after its time, with all it started, and no lock is left', async () => {
  const repo = marked();
  const hangs = pipe(repo);
  const sleeps = `sleep 600 & echo $! > '${repo.path('.git/sleeper')}'`;
  repo.hook('pre-commit', `${sleeps}; echo hangs > '${hangs}'; wait`);
  const before = state(repo);
  expect(await commitLate(repo, hangs)).toEqual({
    ok: false,
    why: 'late',
    say: no('git took too long, perhaps a hook hangs'),
  });
  expect(state(repo)).toEqual(before);
  expect(existsSync(repo.path('.git/index.lock'))).toBe(false);
  const sleeper = repo.read('.git/sleeper').trim();
  // Gone, or ended and not yet buried by whoever adopted it.
  const stat = `/proc/${sleeper}/stat`;
  expect(existsSync(stat) ? readFileSync(stat, 'utf8') : ') Z').toMatch(/\) Z/);
});

test('a hook that hangs behind the commit hides nothing: it is there', async () => {
  const repo = marked();
  const hangs = pipe(repo);
  repo.hook('post-commit', `echo hangs > '${hangs}'; sleep 600`);
  expect(await commitLate(repo, hangs)).toEqual({
    ok: true,
    commit: repo.git('rev-parse', 'HEAD').trim(),
    say: null,
  });
});

test('a hook that rewrites the file is let to, and the commit has what it made', async () => {
  const repo = marked();
  repo.hook('pre-commit', 'echo "# seen" >> job.yaml; git add job.yaml');
  expect(await commit(repo)).toMatchObject({ ok: true });
  expect(repo.git('show', 'HEAD:job.yaml')).toBe(`${JOB}${entry('aaaaaaa1')}# seen\n`);
  expect(repo.read('job.yaml')).toBe(`${JOB}${entry('aaaaaaa1')}# seen\n`);
});

/** A program in gpg's place. */
function signer(repo: Repo, script: string): void {
  const path = join(newFolder(), 'gpg');
  writeFileSync(path, `#!/bin/sh\n${script}\n`);
  chmodSync(path, 0o755);
  repo.git('config', 'gpg.program', path);
  repo.git('config', 'commit.gpgsign', 'true');
  repo.git('config', 'user.signingkey', 'ABCD');
}

const UNSIGNED = {
  ok: false,
  why: 'signing',
  say: no('it could not be signed without asking you. Commit it yourself'),
};

test.each([
  ['asks on the terminal', 'read -r pass < /dev/tty || exit 2'],
  ['cannot sign', 'echo "gpg: no pinentry" >&2; exit 2'],
])('signing that %s never hangs, and never goes on unsigned', async (_, script) => {
  const repo = marked();
  signer(repo, script);
  const before = state(repo);
  expect(await commit(repo)).toEqual(UNSIGNED);
  expect(state(repo)).toEqual(before);
});

test('signing that asks and waits is ended after its time, and never goes on unsigned', async () => {
  const repo = marked();
  const hangs = pipe(repo);
  signer(repo, `echo hangs > '${hangs}'; sleep 600`);
  const before = state(repo);
  expect(await commitLate(repo, hangs)).toEqual(UNSIGNED);
  expect(state(repo)).toEqual(before);
});

test('signing that needs no passphrase signs', async () => {
  const repo = marked();
  signer(
    repo,
    'echo "[GNUPG:] SIG_CREATED D" >&2; cat > /dev/null; printf -- "-----BEGIN PGP SIGNATURE-----\\n\\nx\\n-----END PGP SIGNATURE-----\\n"',
  );
  expect(await commit(repo)).toMatchObject({ ok: true });
  expect(repo.git('cat-file', 'commit', 'HEAD')).toContain('gpgsig -----BEGIN PGP SIGNATURE-----');
});

test('a repository of somebody else: the advice of git, and nothing set', async () => {
  const repo = marked();
  const path = newFolder();
  const real = execFileSync('sh', ['-c', 'command -v git'], { encoding: 'utf8' }).trim();
  writeFileSync(
    join(path, 'git'),
    `#!/bin/sh\nGIT_TEST_ASSUME_DIFFERENT_OWNER=1 exec ${real} "$@"\n`,
  );
  chmodSync(join(path, 'git'), 0o755);
  const env = { ...repo.env, PATH: `${path}:${repo.env.PATH}` };
  const answer = await commit(repo, { env });
  expect(answer).toEqual({
    ok: false,
    why: 'not-trusted',
    say: no(
      `git does not trust this repository, it belongs to somebody else. Its advice: git config --global --add safe.directory ${repo.folder}`,
    ),
  });
  expect(new Repo(repo.env, repo.env.HOME).read('.gitconfig')).not.toContain('safe');
});

test('another git at work for a moment is waited for', async () => {
  const repo = marked();
  const lock = repo.write('.git/index.lock', '');
  // It lets go the moment it has been in our way.
  const path = newFolder();
  const real = execFileSync('sh', ['-c', 'command -v git'], { encoding: 'utf8' }).trim();
  const said = join(path, 'said');
  const script = `'${real}' "$@" 2> '${said}'; code=$?; cat '${said}' >&2
if grep -q index.lock '${said}'; then rm '${lock}'; fi; exit $code`;
  writeFileSync(join(path, 'git'), `#!/bin/sh\n${script}\n`);
  chmodSync(join(path, 'git'), 0o755);
  const env = { ...repo.env, PATH: `${path}:${repo.env.PATH}` };
  expect(await commit(repo, { env })).toMatchObject({ ok: true });
});

test('another git at work for long is told, and its lock stays', async () => {
  const repo = marked();
  const lock = repo.write('.git/index.lock', '');
  expect(await commit(repo)).toEqual({
    ok: false,
    why: 'locked',
    say: no('another git is at work here'),
  });
  expect(existsSync(lock)).toBe(true);
});

test('started from a hook or an alias of another repository it still commits to its own', async () => {
  const repo = marked();
  const other = marked();
  const before = state(other);
  const env = {
    ...repo.env,
    GIT_DIR: other.path('.git'),
    GIT_WORK_TREE: other.folder,
    GIT_INDEX_FILE: other.path('.git/index'),
    GIT_PREFIX: 'x/',
    GIT_CONFIG_COUNT: '1',
    GIT_CONFIG_KEY_0: 'core.hooksPath',
    GIT_CONFIG_VALUE_0: '/nowhere',
  };
  expect(await commit(repo, { env })).toMatchObject({ ok: true });
  expect(repo.git('log', '-1', '--format=%s')).toBe('Cover off: 3 bolts\n');
  expect(state(other)).toEqual(before);
});

test('the names that say who commits stay, those that redirect and ask go', () => {
  const env = gitEnv(
    {
      GIT_AUTHOR_NAME: 'A',
      GIT_DIR: 'x',
      GIT_EXTERNAL_DIFF: 'x',
      GPG_TTY: '/dev/pts/0',
      EDITOR: 'vi',
      HOME: '/h',
      LANG: 'de_DE',
      LC_ALL: 'de_DE',
    },
    'read',
  );
  expect(env).toEqual({
    GIT_AUTHOR_NAME: 'A',
    HOME: '/h',
    LANG: 'de_DE',
    LC_ALL: 'C',
    LANGUAGE: 'C',
    GIT_TERMINAL_PROMPT: '0',
    GIT_EDITOR: ':',
    GIT_PAGER: 'cat',
    GIT_ALLOW_PROTOCOL: 'none',
    GIT_NO_LAZY_FETCH: '1',
    GIT_OPTIONAL_LOCKS: '0',
  });
});

test('a file system monitor, a pager and an editor that a repository names are not started', async () => {
  const repo = marked();
  const seen = repo.path('.git/seen');
  const canary = join(newFolder(), 'canary');
  writeFileSync(canary, `#!/bin/sh\necho ran >> ${seen}\n`);
  chmodSync(canary, 0o755);
  for (const key of [
    'core.fsmonitor',
    'core.pager',
    'core.editor',
    'diff.external',
    'core.askPass',
  ]) {
    repo.git('-c', 'core.fsmonitor=false', 'config', key, canary);
  }
  repo.git('-c', 'core.fsmonitor=false', 'config', 'commit.verbose', 'true');
  rmSync(seen, { force: true });
  expect(await commit(repo)).toMatchObject({ ok: true });
  expect(existsSync(seen)).toBe(false);
});

test('a home that is not there is no hindrance', async () => {
  const repo = marked();
  const env = { ...home(false), HOME: '/nowhere' };
  expect(await commit(repo, { env })).toMatchObject({ ok: false, why: 'no-name' });
});
