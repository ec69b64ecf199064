/** A repository that names a program in every place where git knows one, and each call that putback makes in it. */
import { chmodSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import {
  CALLS,
  type CallName,
  type GitCall,
  gitArgs,
  type Runs,
} from '../../../src/diary/git/calls.ts';
import { commitsOf } from '../../../src/diary/git/commits.ts';
import { gitSaw } from '../../../src/diary/git/moved.ts';
import { gitPlaceOf } from '../../../src/diary/git/place.ts';
import { git } from '../../../src/diary/git/run.ts';
import { entry, home, JOB, newFolder, Repo } from './repo.ts';

/** Hooks that git's own pages name (githooks), those of a mail or a server apart. */
const HOOKS = [
  ...['pre-commit', 'prepare-commit-msg', 'commit-msg', 'post-commit', 'pre-merge-commit'],
  ...['post-checkout', 'post-merge', 'post-rewrite', 'post-index-change', 'pre-auto-gc'],
  ...['reference-transaction', 'fsmonitor-watchman', 'pre-rebase', 'pre-push', 'push-to-checkout'],
];

/** Where settings name a program, by what it is for. */
const NAMED: Record<Runs, readonly string[]> = {
  monitor: ['core.fsmonitor'],
  hooks: [],
  filters: ['filter.x.clean', 'filter.x.smudge', 'filter.x.process'],
  signing: ['gpg.program', 'gpg.ssh.program', 'gpg.x509.program', 'gpg.ssh.defaultKeyCommand'],
  textconv: ['diff.x.textconv'],
  diff: ['diff.external', 'diff.x.command', 'interactive.diffFilter'],
  drivers: ['merge.x.driver', 'merge.union.driver'],
  pager: ['core.pager', 'pager.log', 'pager.blame', 'pager.config', 'pager.status'],
  editor: ['core.editor', 'sequence.editor'],
  upkeep: ['gc.recentObjectsHook', 'trailer.x.command', 'trailer.x.cmd', 'tar.x.command'],
  fetch: [
    ...['core.sshCommand', 'core.gitProxy', 'core.askPass', 'credential.helper'],
    ...['core.alternateRefsCommand', 'remote.origin.uploadpack', 'remote.origin.receivepack'],
  ],
};

/** A repository with a bench in it, whose programs write down that they ran. */
function handedOver(): { repo: Repo; ran: () => string[]; signed: string } {
  const repo = new Repo(home());
  const folder = newFolder();
  const log = join(folder, 'ran');
  const canary = (name: string) => {
    const path = join(folder, name);
    // A filter hands on what it gets; what git would talk with ends.
    const then = name === 'filters' || name === 'textconv' ? 'cat' : 'exit 0';
    writeFileSync(path, `#!/bin/sh\necho ${name} >> '${log}'\n${then}\n`);
    chmodSync(path, 0o755);
    return path;
  };
  repo.git('init', '-q');
  repo.write('job.yaml', JOB);
  repo.write('bench.yaml', 'commit: milestones\n');
  repo.git('add', '.');
  repo.git('commit', '-q', '-m', 'start');
  // A commit with a signature that somebody would have to look at.
  const tree = repo.git('rev-parse', 'HEAD^{tree}').trim();
  const who = 'A <a@bench.example> 1700000000 +0000';
  repo.write(
    'c',
    `tree ${tree}\nauthor ${who}\ncommitter ${who}\ngpgsig -----BEGIN PGP SIGNATURE-----\n \n iHUEAB\n -----END PGP SIGNATURE-----\n\nsigned\n`,
  );
  const signed = repo.git('hash-object', '-t', 'commit', '-w', 'c').trim();
  rmSync(repo.path('c'));
  repo.git('reset', '-q', '--hard', signed);
  repo.write('job.yaml', JOB + entry('aaaaaaa1'));
  repo.git('stash', '-q');
  repo.write('job.yaml', JOB + entry('aaaaaaa2'));
  const hooks = repo.path('.git/evil');
  mkdirSync(hooks);
  const hook = readFileSync(canary('hooks'));
  for (const at of [hooks, repo.path('.git/hooks')]) {
    for (const name of HOOKS) {
      writeFileSync(join(at, name), hook);
      chmodSync(join(at, name), 0o755);
    }
  }
  repo.write('.git/info/attributes', '*.yaml diff=x filter=x merge=x\n');
  const programs = Object.entries(NAMED).flatMap(([kind, keys]) => {
    const path = canary(kind);
    return keys.map((key) => [key, path] as const);
  });
  const words = Object.values(CALLS).map((call: GitCall) => call.args('x')[0] ?? '');
  const settings: readonly (readonly [string, string])[] = [
    ...programs,
    ...words.map((word) => [`alias.${word.replace(/\W/g, '')}`, `!${canary('alias')}`] as const),
    ['core.hooksPath', hooks],
    ['log.showSignature', 'true'],
    ['commit.gpgsign', 'true'],
    ['commit.verbose', 'true'],
    ['gc.auto', '1'],
    ['blame.ignoreRevsFile', '/dev/zero'],
    ['mailmap.file', '/dev/zero'],
    ['status.submoduleSummary', 'true'],
    // What is missing would be got by a program.
    ['extensions.partialClone', 'origin'],
    ['remote.origin.promisor', 'true'],
    ['remote.origin.url', `ext::${canary('fetch')}`],
    ['protocol.ext.allow', 'always'],
  ];
  const text = settings.map(([key, value]) => {
    const at = key.lastIndexOf('.');
    const [section = '', ...sub] = key.slice(0, at).split('.');
    const head = sub.length === 0 ? `[${section}]` : `[${section} "${sub.join('.')}"]`;
    return `${head}\n\t${key.slice(at + 1)} = ${JSON.stringify(value)}\n`;
  });
  repo.write(
    '.git/config',
    repo.read('.git/config').replace('repositoryformatversion = 0', 'repositoryformatversion = 1') +
      text.join(''),
  );
  rmSync(log, { force: true });
  return {
    repo,
    signed,
    ran() {
      const said = existsSync(log) ? readFileSync(log, 'utf8') : '';
      rmSync(log, { force: true });
      return [...new Set(said.split('\n').filter((line) => line !== ''))];
    },
  };
}

const MISSING = '0123456789012345678901234567890123456789';

/** What each call is called with, and what comes as its input. */
const WORDS: Record<CallName, { words: readonly string[]; input?: string }[]> = {
  version: [{ words: [] }],
  place: [{ words: ['MERGE_HEAD', 'rebase-merge'] }],
  inGit: [{ words: ['config', 'info/attributes'] }],
  branch: [{ words: [] }],
  head: [{ words: [] }],
  who: [{ words: ['GIT_COMMITTER_IDENT'] }],
  setting: [{ words: ['merge.union.driver'] }],
  signs: [{ words: [] }],
  attributes: [{ words: ['job.yaml', 'bench.yaml'] }],
  blame: [{ words: ['job.yaml'] }],
  moves: [{ words: ['HEAD'] }, { words: ['refs/stash'] }],
  versions: [{ words: ['job.yaml'] }],
  blob: [{ words: ['HEAD:./job.yaml'] }, { words: [MISSING] }],
  blobs: [{ words: [], input: `HEAD:./job.yaml\n${MISSING}\n` }],
  init: [{ words: [] }],
  set: [{ words: ['merge.putback.driver', 'putback'] }],
  status: [{ words: ['job.yaml'] }],
  intend: [{ words: ['new.yaml'] }],
  forget: [{ words: ['new.yaml'] }],
  commit: [{ words: ['job.yaml'], input: 'Cover off\n' }],
  addAll: [{ words: [] }],
  commitAll: [{ words: ['Bench'] }],
  mergeFile: [{ words: ['job.yaml', 'job.yaml', 'job.yaml'] }],
};

test.each(Object.keys(WORDS) as CallName[])(
  'git %s runs nothing that the repository names, but for what its row says',
  async (name) => {
    const { repo, ran } = handedOver();
    repo.write('new.yaml', JOB);
    for (const { words, input } of WORDS[name]) {
      const how = { env: repo.env, ...(input === undefined ? {} : { input }) };
      await git(repo.folder, name, words, how);
      const { runs }: GitCall = CALLS[name];
      expect(ran().filter((kind) => !(runs as readonly string[]).includes(kind))).toEqual([]);
    }
  },
);

test('all that looking at a job asks of git runs nothing at all, and finds what there is', async () => {
  const { repo, ran, signed } = handedOver();
  expect(await gitPlaceOf(repo.folder, { env: repo.env })).toEqual({
    underWay: null,
    detached: false,
  });
  const saw = await gitSaw(repo.path('job.yaml'), JOB, '2020-01-01T00:00:00Z', ['aaaaaaa1'], {
    env: repo.env,
  });
  expect(saw).toEqual({ underWay: null, moved: true, keeps: true });
  await commitsOf(repo.path('job.yaml'));
  expect(ran()).toEqual([]);
  expect((await git(repo.folder, 'head', [], { env: repo.env })).out.trim()).toBe(signed);
});

/** That the programs would have run without the switches: else the tests above would show nothing. */
test.each<[string, string[], string]>([
  ['a look at the log', ['log', '-g', '--format=%gd', 'HEAD', '--'], 'signing'],
  ['a status', ['status', '--porcelain', '--', 'job.yaml'], 'monitor'],
  ['something that is missing', ['cat-file', 'blob', MISSING], 'fetch'],
  ['a commit', ['commit', '-q', '-m', 'x', '--', 'job.yaml'], 'hooks'],
])('without the switches %s runs what the repository names', (_, args, kind) => {
  const { repo, ran } = handedOver();
  repo.fails('-c', 'mailmap.file=/dev/null', ...args);
  expect(ran()).toContain(kind);
});

test('a repository that a clone carries in a folder is none: its settings are not read', async () => {
  const { repo, ran } = handedOver();
  const clone = newFolder();
  const inner = new Repo(repo.env, join(clone, 'jobs'));
  mkdirSync(inner.folder);
  for (const part of ['HEAD', 'config', 'objects', 'refs']) {
    repo.git('-c', 'core.fsmonitor=false', '--no-pager', 'config', '--list');
    repo.fails('--version');
    // As files of the clone, with a work tree of their own.
    expect(existsSync(repo.path(`.git/${part}`))).toBe(true);
  }
  const { cpSync } = await import('node:fs');
  for (const part of ['HEAD', 'config', 'objects', 'refs']) {
    cpSync(repo.path(`.git/${part}`), join(inner.folder, part), { recursive: true });
  }
  inner.write(
    'config',
    `${inner.read('config')}[core]\n\tworktree = ${inner.folder}\n\tbare = false\n`,
  );
  inner.write('job.yaml', JOB);
  ran();
  expect(await gitPlaceOf(inner.folder, { env: repo.env })).toMatchObject({ no: 'no-repo' });
  await git(inner.folder, 'status', ['job.yaml'], { env: repo.env });
  expect(ran()).toEqual([]);
});

test('no call asks, pages or hooks by what a repository sets', () => {
  for (const name of Object.keys(CALLS) as CallName[]) {
    const args = gitArgs(name, ['x']).join(' ');
    expect(args).toContain('--no-pager');
    expect(args).toContain('-c core.fsmonitor=false');
    expect(args).toContain('-c safe.bareRepository=explicit');
    const { runs }: GitCall = CALLS[name];
    expect(args.includes('core.hooksPath=/dev/null')).toBe(!runs.includes('hooks'));
  }
});
