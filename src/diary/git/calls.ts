/**
 * Every call of git that putback makes, what each could run of what a repository names, and what forbids it. A
 * repository may have been handed over with settings, hooks and filters of somebody else: to look at it runs
 * nothing of that. Only a commit that the bench asks for runs what git runs for a commit.
 */

/** What a repository's settings may have git run. */
export type Runs =
  | 'monitor' // core.fsmonitor, wherever the index is looked at
  | 'hooks' // .git/hooks, core.hooksPath: also when the index or a reference is written
  | 'filters' // filter.NAME.clean and .process, wherever bytes of the folder become a blob
  | 'signing' // gpg.program and its like: where a commit is made, or shown with log.showSignature
  | 'textconv' // diff.NAME.textconv, where bytes are shown
  | 'diff' // diff.external, diff.NAME.command
  | 'drivers' // merge.NAME.driver
  | 'pager'
  | 'editor'
  | 'upkeep' // gc and maintenance after a commit, and their hook
  | 'fetch'; // what a partial clone lacks: core.sshCommand, remote.NAME.vcs, core.gitProxy …

export interface GitCall {
  /** Reads take no lock that another git might wait for. */
  read: boolean;
  /** Settings of this call alone, before those of every call. */
  set?: readonly string[];
  args(...words: string[]): readonly string[];
  /** What it would run if nothing forbade it; pager and editor apart, which every call is denied. */
  could: readonly Runs[];
  /** What of it runs all the same: as the person's own git would. */
  runs: readonly Runs[];
}

/** Git guesses a name from the host where none is set; such a commit would be nobody's. */
const NO_GUESS = ['user.useConfigOnly=true'];
const COMMIT = [...NO_GUESS, 'i18n.commitEncoding=UTF-8', 'commit.verbose=false'];

const look = (
  args: GitCall['args'],
  could: readonly Runs[] = [],
  set: readonly string[] = [],
): GitCall => ({ read: true, args, could, runs: [], set });
const write = (
  args: GitCall['args'],
  could: readonly Runs[],
  runs: readonly Runs[] = [],
  set: readonly string[] = [],
): GitCall => ({ read: false, args, could, runs, set });

export const CALLS = {
  version: look(() => ['--version']),
  /** Words: names of files in git's own folder. */
  place: look((...names) => [
    'rev-parse',
    '--is-inside-work-tree',
    ...names.flatMap((name) => ['--git-path', name]),
  ]),
  /** Where the folder is in the repository, and the files of git's own folder; words: names there. */
  inGit: look((...names) => [
    'rev-parse',
    '--show-prefix',
    ...names.flatMap((name) => ['--git-path', name]),
  ]),
  branch: look(() => ['symbolic-ref', '-q', 'HEAD']),
  head: look(() => ['rev-parse', '-q', '--verify', 'HEAD']),
  /** Word: GIT_AUTHOR_IDENT or GIT_COMMITTER_IDENT. */
  who: look((what = '') => ['var', what], [], NO_GUESS),
  setting: look((key = '') => ['config', '--local', '--get', key]),
  signs: look(() => ['config', '--type=bool', 'commit.gpgsign']),
  attributes: look((...names) => ['check-attr', '-z', 'merge', '--', ...names]),
  /** What is committed, not what lies there: that would go through a filter. */
  blame: look(
    (name = '') => ['blame', '--porcelain', '--no-textconv', 'HEAD', '--', name],
    ['textconv', 'monitor', 'fetch'],
    ['blame.ignoreRevsFile=', 'mailmap.file=/dev/null', 'mailmap.blob='],
  ),
  /** Word: HEAD or refs/stash. When it moved, and by what. */
  moves: look(
    (ref = '') => [
      ...['log', '-g', '-s', '-n', '100', '--no-show-signature', '--no-notes', '--no-mailmap'],
      ...['--no-decorate', '--no-ext-diff', '--no-textconv', '--date=unix', '--format=%gd %gs'],
      ...[ref, '--'],
    ],
    ['signing', 'diff', 'textconv', 'fetch'],
  ),
  /** Word: a file. Commits that changed it, also those that only the log of references knows. */
  versions: look(
    (name = '') => ['rev-list', ...['--all', '--reflog', '--full-history', '-n', '60', '--', name]],
    ['fetch'],
  ),
  blob: look((what = '') => ['cat-file', 'blob', what], ['fetch']),
  /** What it is asked for comes as its input. */
  blobs: look(() => ['cat-file', '--batch'], ['fetch']),
  init: write(() => ['init', '-q'], ['hooks']),
  set: write((key = '', value = '') => ['config', '--local', key, value], []),
  /** Part of a commit that the bench asks for: is there something to commit. */
  status: write(
    (name = '') => [
      'status',
      ...['--porcelain=v2', '-z', '-uall', '--ignored', '--ignore-submodules=all', '--', name],
    ],
    ['monitor', 'hooks', 'filters'],
    ['filters'],
  ),
  /** It looks at the bytes, which a filter may have to read. */
  intend: write(
    (name = '') => ['add', '-N', '--', name],
    ['monitor', 'hooks', 'filters'],
    ['filters'],
  ),
  forget: write((name = '') => ['rm', '-q', '-f', '--cached', '--', name], ['monitor', 'hooks']),
  /** Of one file alone; the message comes as its input. */
  commit: write(
    (name = '') => ['commit', '-q', '-F', '-', '--cleanup=whitespace', '--', name],
    ['monitor', 'hooks', 'filters', 'signing', 'diff', 'upkeep'],
    ['hooks', 'filters', 'signing'],
    COMMIT,
  ),
  /** Only in a folder that was just made. */
  addAll: write(() => ['add', '--', '.'], ['monitor', 'hooks', 'filters'], ['filters']),
  commitAll: write(
    (subject = '') => ['commit', '-q', '-m', subject, '--', '.'],
    ['monitor', 'hooks', 'filters', 'signing', 'diff', 'upkeep'],
    ['hooks', 'filters', 'signing'],
    COMMIT,
  ),
  /** Words: three files. */
  mergeFile: look((...words) => ['merge-file', '-p', '-q', ...words]),
} as const satisfies Record<string, GitCall>;

export type CallName = keyof typeof CALLS;

/** For every call, whatever the repository's settings say. */
const ALWAYS = [
  'core.quotePath=false',
  'core.fsmonitor=false',
  'log.showSignature=false',
  'submodule.recurse=false',
  'gc.auto=0',
  'maintenance.auto=false',
  // A clone can hold a folder that looks like a repository of its own, with settings of its own.
  'safe.bareRepository=explicit',
];
const NO_HOOKS = ['core.hooksPath=/dev/null'];

/** The words behind `git`, switches and all. */
export function gitArgs(name: CallName, words: readonly string[]): string[] {
  const call: GitCall = CALLS[name];
  const hooks = call.runs.includes('hooks') ? [] : NO_HOOKS;
  const settings = [...ALWAYS, ...hooks, ...(call.set ?? [])];
  return [
    '--no-pager',
    '--literal-pathspecs',
    ...settings.flatMap((setting) => ['-c', setting]),
    ...call.args(...words),
  ];
}
