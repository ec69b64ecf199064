/** Runs git so that nothing of it can redirect, ask, page, hang or run what a repository's settings name for reads. */
import { spawn } from 'node:child_process';
import { CALLS, type CallName, gitArgs } from './calls.ts';

export interface GitOptions {
  input?: string;
  /** Instead of this program's own. */
  env?: Readonly<Record<string, string | undefined>> | undefined;
}

export interface GitDone {
  /** Exit code; null when git could not be started or was ended. */
  code: number | null;
  /** `missing`: no git, or no such folder; `late`: ended after its time. */
  trouble: 'missing' | 'late' | null;
  out: string;
  err: string;
}

/** ms. Then git and all that it started are ended. */
const READ_TIMEOUT = 5000;
/** ms. A hook may check and format; what takes longer than this is a hook that hangs or asks. */
export const WRITE_TIMEOUT = 15_000;
/** Time for git to take its lock files away before it is ended for good, ms. */
const GRACE = 700;

/**
 * What stays of git's own variables: who commits, and where the person's settings are. The others point git at
 * another repository, index or program; they are there when putback is started from a hook or an alias.
 */
const KEPT =
  /^GIT_(?:(?:AUTHOR|COMMITTER)_(?:NAME|EMAIL|DATE)|CONFIG_(?:GLOBAL|SYSTEM|NOSYSTEM)|CEILING_DIRECTORIES|EXEC_PATH)$/i;
/** Through these a program that asks for a passphrase would find the terminal that the screens are on. */
const ASKING = /^(?:GPG_TTY|SSH_ASKPASS|SSH_ASKPASS_REQUIRE|EDITOR|VISUAL|PAGER)$/i;

export function gitEnv(
  env: Readonly<Record<string, string | undefined>>,
  to: 'read' | 'write',
): Record<string, string> {
  const kept = Object.entries(env).filter(
    (pair): pair is [string, string] =>
      pair[1] !== undefined &&
      (!/^GIT_/i.test(pair[0]) || KEPT.test(pair[0])) &&
      !ASKING.test(pair[0]),
  );
  return {
    ...Object.fromEntries(kept),
    LC_ALL: 'C',
    LANGUAGE: 'C',
    GIT_TERMINAL_PROMPT: '0',
    GIT_EDITOR: ':',
    GIT_PAGER: 'cat',
    // Nothing is ever fetched, whichever program a repository names for that.
    GIT_ALLOW_PROTOCOL: 'none',
    GIT_NO_LAZY_FETCH: '1',
    ...(to === 'read' ? { GIT_OPTIONAL_LOCKS: '0' } : {}),
  };
}

/** Runs git in a folder; never throws. Words go to git as they are, no shell sees them. */
export function git(
  folder: string,
  name: CallName,
  words: readonly string[] = [],
  options: GitOptions = {},
): Promise<GitDone> {
  const { read } = CALLS[name];
  // biome-ignore lint/style/noProcessEnv: git runs in this program's own surroundings, less what would redirect it
  const env = gitEnv(options.env ?? process.env, read ? 'read' : 'write');
  const limit = read ? READ_TIMEOUT : WRITE_TIMEOUT;
  return new Promise((resolve) => {
    // A group and session of its own: it can be ended with all that it started, and has no terminal to ask on.
    const child = spawn('git', gitArgs(name, words), {
      cwd: folder,
      env,
      detached: process.platform !== 'win32',
      windowsHide: true,
      stdio: ['pipe', 'pipe', 'pipe'],
    });
    const out: Buffer[] = [];
    const err: Buffer[] = [];
    let over = false;
    let late = false;
    const end = (code: number | null, trouble: GitDone['trouble']) => {
      if (over) return;
      over = true;
      clearTimeout(timer);
      const text = (parts: Buffer[]) => Buffer.concat(parts).toString('utf8');
      resolve({ code, trouble, out: text(out), err: text(err) });
    };
    const timer = setTimeout(() => {
      late = true;
      stop(child.pid, 'SIGTERM');
      setTimeout(() => {
        stop(child.pid, 'SIGKILL');
        child.stdout.destroy();
        child.stderr.destroy();
        end(null, 'late');
      }, GRACE);
    }, limit);
    child.on('error', () => end(null, 'missing'));
    child.on('close', (code) => end(late ? null : code, late ? 'late' : null));
    child.stdout.on('data', (part: Buffer) => out.push(part));
    child.stderr.on('data', (part: Buffer) => err.push(part));
    child.stdin.on('error', () => undefined);
    child.stdin.end(options.input ?? '');
  });
}

function stop(pid: number | undefined, signal: NodeJS.Signals): void {
  if (pid === undefined) return;
  try {
    process.kill(process.platform === 'win32' ? pid : -pid, signal);
  } catch {
    // Ended already.
  }
}

/** First line that says something, without git's own `fatal:` or `error:`. */
export function firstLine(text: string): string {
  const line = text.split('\n').find((l) => l.trim() !== '') ?? '';
  return line.replace(/^(?:fatal|error|hint): /, '').trim();
}
