/** The same world for every run: home, zone, language, git's author; nothing of whoever runs the tests. */
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';

/** The built program; `pretest` builds it. */
export const PUTBACK = resolve(import.meta.dirname, '../../dist/putback.js');

/** NODE_OPTIONS that load a program of `programs` first, by its address: a blank in a path would end it. */
export const preload = (name: string): string =>
  `--import=${pathToFileURL(resolve(import.meta.dirname, 'programs', name))}`;

export function pinnedEnv(home: string): Record<string, string> {
  return {
    PATH: `${resolve(process.execPath, '..')}:${process.env.PATH ?? ''}`,
    HOME: home,
    // Compiled code is kept outside the folders that tests look into.
    XDG_CACHE_HOME: resolve(PUTBACK, '../../node_modules/.cache'),
    XDG_STATE_HOME:
      process.env.XDG_STATE_HOME ?? resolve(PUTBACK, '../../node_modules/.cache/state'),
    TZ: 'Europe/Berlin',
    LANG: 'C.UTF-8',
    TERM: 'xterm-256color',
    GIT_AUTHOR_NAME: 'Ada Bench',
    GIT_AUTHOR_EMAIL: 'ada@bench.example',
    GIT_COMMITTER_NAME: 'Ada Bench',
    GIT_COMMITTER_EMAIL: 'ada@bench.example',
    GIT_CONFIG_GLOBAL: '/dev/null',
    GIT_CONFIG_NOSYSTEM: '1',
  };
}
