/** The first commit of a bench. */
import { gitPlaceOf } from './place.ts';
import { firstLine, type GitOptions, git } from './run.ts';
import { gitFailed, reason } from './why-not.ts';

/**
 * Commits all that lies in a folder that was just made. Only for such a folder: nothing in it is anybody
 * else's. Null when it is done or was done before, else one quiet line.
 */
export async function firstCommit(
  folder: string,
  subject: string,
  options: { env?: GitOptions['env'] } = {},
): Promise<string | null> {
  const env = { env: options.env };
  const place = await gitPlaceOf(folder, env);
  if ('no' in place) return `No first commit: ${reason(place.no, place.err)}.`;
  if (place.underWay) return `No first commit: ${reason('busy', '', place.underWay)}.`;
  const name = await git(folder, 'who', ['GIT_COMMITTER_IDENT'], env);
  if (name.code !== 0) return `No first commit: ${reason('no-name', '')}.`;
  const added = await git(folder, 'addAll', [], env);
  if (added.code !== 0) return `No first commit: ${firstLine(added.err)}.`;
  const status = await git(folder, 'status', ['.'], env);
  if (status.out === '') return null;
  const done = await git(folder, 'commitAll', [subject], env);
  return done.code === 0
    ? null
    : gitFailed(done).say.replace('Kept in the file. No commit', 'No first commit');
}

/** Which of these files of a folder no commit has yet. */
export async function uncommitted(
  folder: string,
  names: readonly string[],
  options: { env?: GitOptions['env'] } = {},
): Promise<string[]> {
  const found: string[] = [];
  for (const name of names) {
    const { out } = await git(folder, 'status', [name], { env: options.env });
    if (/^(?:\? |1 A)/.test(out)) found.push(name);
  }
  return found;
}
