/** Why there is no commit, as one quiet line. */
import { safeLine } from '../../model/safe.ts';
import { isLocked } from './patience.ts';
import { type NoPlace, trustAdvice, type UnderWay } from './place.ts';
import { firstLine, type GitDone } from './run.ts';

export type WhyNot =
  | NoPlace
  | 'no-name' // git does not know who commits
  | 'busy' // merge, rebase, cherry-pick, revert or bisect under way
  | 'hook' // a hook said no
  | 'ignored' // git is told not to keep the file
  | 'locked' // another git is at work
  | 'signing' // the commit could not be signed
  | 'nothing' // nothing has changed since the last commit
  | 'failed'; // anything else git says

export interface NotDone {
  ok: false;
  why: WhyNot;
  say: string;
}

export const DETACHED = 'Committed, but on no branch (detached HEAD): make a branch to keep it.';

export function not(why: WhyNot, err: string, what: UnderWay | null = null): NotDone {
  return { ok: false, why, say: `Kept in the file. No commit: ${reason(why, err, what)}.` };
}

/** The reason alone, without a full stop. `err`: what git said. */
export function reason(why: WhyNot, err: string, what: UnderWay | null = null): string {
  const said = safeLine(firstLine(err));
  const says: Record<WhyNot, string> = {
    'no-git': 'git is not installed',
    'no-repo': 'this folder is no git repository',
    'not-trusted': `git does not trust this repository, it belongs to somebody else. Its advice: ${safeLine(trustAdvice(err))}`,
    late: 'git took too long, perhaps a hook hangs',
    'no-name':
      'git does not know your name. Tell it: git config --global user.name NAME, and user.email ADDRESS',
    busy: `a ${what ?? 'merge'} is under way`,
    hook: `a hook said no${said === '' ? '' : `: ${said}`}`,
    ignored: 'git is told to ignore this file',
    locked: 'another git is at work here',
    signing: 'it could not be signed without asking you. Commit it yourself',
    nothing: 'nothing has changed since the last one',
    failed: `git said: ${said}`,
  };
  return says[why].replace(/\.$/, '');
}

/** What a git that failed means. `signed`: commits are set to be signed. */
export function gitFailed(done: GitDone, signed = false): NotDone {
  if (done.trouble === 'missing') return not('no-git', '');
  if (isLocked(done)) return not('locked', '');
  if (done.trouble === 'late') return not(signed ? 'signing' : 'late', '');
  if (/failed to sign|Couldn't (?:load|find) .*key|user\.signingkey/i.test(done.err)) {
    return not('signing', '');
  }
  if (/empty ident name|tell me who you are|no (?:email|name) was given/i.test(done.err)) {
    return not('no-name', '');
  }
  return not(done.code === 1 ? 'hook' : 'failed', done.err.trim() === '' ? done.out : done.err);
}
