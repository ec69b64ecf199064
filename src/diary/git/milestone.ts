/** One commit of one job file at the end of a place of a piece. */
import { realpathSync } from 'node:fs';
import { basename, dirname } from 'node:path';
import { safeLine } from '../../model/safe.ts';
import { patiently } from './patience.ts';
import { type GitPlace, gitPlaceOf } from './place.ts';
import { type GitOptions, git } from './run.ts';
import { DETACHED, gitFailed, type NotDone, not } from './why-not.ts';

type Milestone =
  /** `say`: a quiet line beside the success, or null. */
  { ok: true; commit: string; say: string | null } | NotDone;

export interface Trailers {
  Piece?: string;
  Round?: string;
}
export interface MilestoneOptions {
  env?: GitOptions['env'];
}

/** A subject that git's own tools still show on one line. */
const LONGEST = 200;

/**
 * Commits the file as it is on disk, and only it: what else is staged or changed stays as it is. Hooks run,
 * signing is as the person set it. Never throws, never asks, never waits longer than its time; where there is
 * no commit, `say` is one quiet line. The file itself is not touched (a hook may).
 */
export async function milestone(
  file: string,
  subject: string,
  trailers: Trailers = {},
  options: MilestoneOptions = {},
): Promise<Milestone> {
  const path = realOf(file);
  const folder = dirname(path);
  const env = { env: options.env };
  const place = await gitPlaceOf(folder, env);
  if ('no' in place) return not(place.no, place.err);
  if (place.underWay) return not('busy', '', place.underWay);
  const repo: Repo = { folder, name: basename(path), env, place };
  const before = await stand(repo);
  if (before.kind === 'no') return before.answer;
  const message = messageOf(subject, trailers);
  return commit(repo, message, before.untracked);
}

interface Repo {
  folder: string;
  name: string;
  env: { env?: GitOptions['env'] };
  place: GitPlace;
}

function realOf(file: string): string {
  try {
    return realpathSync(file);
  } catch {
    return file;
  }
}

/** Whether there is something to commit, and somebody to commit it. */
async function stand(
  r: Repo,
): Promise<{ kind: 'yes'; untracked: boolean } | { kind: 'no'; answer: Milestone }> {
  const no = (answer: Milestone) => ({ kind: 'no' as const, answer });
  const status = await git(r.folder, 'status', [r.name], r.env);
  if (status.code !== 0) return no(gitFailed(status));
  if (status.out === '') return no(not('nothing', ''));
  if (status.out.startsWith('! ')) return no(not('ignored', ''));
  if (status.out.startsWith('u ')) return no(not('busy', '', 'merge'));
  for (const who of ['GIT_AUTHOR_IDENT', 'GIT_COMMITTER_IDENT']) {
    const known = await git(r.folder, 'who', [who], r.env);
    if (known.code !== 0) return no(not('no-name', ''));
  }
  return { kind: 'yes', untracked: status.out.startsWith('? ') };
}

async function commit(r: Repo, message: string, untracked: boolean): Promise<Milestone> {
  const was = await headOf(r);
  if (untracked) {
    const added = await patiently(() => git(r.folder, 'intend', [r.name], r.env));
    if (added.code !== 0) return gitFailed(added);
  }
  const how = { ...r.env, input: message };
  const done = await patiently(() => git(r.folder, 'commit', [r.name], how));
  const now = await headOf(r);
  // A hook that runs behind the commit may hang; the commit is there all the same.
  if (done.code === 0 || (done.trouble === 'late' && now !== was)) {
    return { ok: true, commit: now, say: r.place.detached ? DETACHED : null };
  }
  if (untracked) await git(r.folder, 'forget', [r.name], r.env);
  return gitFailed(done, await signs(r));
}

async function headOf(r: Repo): Promise<string> {
  const head = await git(r.folder, 'head', [], r.env);
  return head.out.trim();
}

async function signs(r: Repo): Promise<boolean> {
  const set = await git(r.folder, 'signs', [], r.env);
  return set.out.trim() === 'true';
}

/** Subject and trailers as git's message: one line each, whatever the texts hold. */
export function messageOf(subject: string, trailers: Trailers): string {
  const line = (text: string) => safeLine(text).replace(/\s+/g, ' ').trim();
  const first = [...(line(subject) || 'Job file')].slice(0, LONGEST).join('');
  const rest = Object.entries(trailers).flatMap(([key, value]) =>
    typeof value === 'string' && line(value) !== '' ? [`${key}: ${line(value)}`] : [],
  );
  return rest.length === 0 ? `${first}\n` : `${first}\n\n${rest.join('\n')}\n`;
}
