/**
 * What was not read of the job files that a command opened. It is noted where a job is opened, and told where the answer
 * is printed, so that no command can answer as if nothing were missing.
 */
import { isNewer, sayLines, unreadSaid } from '../../job/fold/unread.ts';
import { quoted } from '../../model/safe.ts';
import type { Job, UnreadLine } from '../../model/types.ts';
import type { World } from '../../world.ts';
import type { Answer } from './command.ts';

/** By the world of one command line: names of files, as they were typed, to the lines that do not count. */
const noted = new WeakMap<World, Map<string, readonly UnreadLine[]>>();

export function noteUnread(world: World, name: string, { unread }: Pick<Job, 'unread'>): void {
  if (unread.length === 0) return;
  const files = noted.get(world) ?? new Map<string, readonly UnreadLine[]>();
  noted.set(world, files.set(name, unread));
}

/** By the world of one command line: what of the settings was not read, a sentence each. */
const odd = new WeakMap<World, Set<string>>();

/** Null: all of them was read. */
export function noteSettings(world: World, say: string | null): void {
  if (say !== null) odd.set(world, (odd.get(world) ?? new Set()).add(say));
}

/** The answer with one line a file on stderr, and `unread` in its JSON; `unreadLines` where that names whole files; settings likewise. */
export function withUnread(answer: Answer, world: World): Answer {
  const settings = [...(odd.get(world) ?? [])];
  const told = settings.length === 0 ? answer : beside(answer, settings, { settings });
  return withLines(told, world);
}

function beside(answer: Answer, said: readonly string[], json: object): Answer {
  const error = [...(answer.error ? [answer.error] : []), ...said].join('\n');
  return { ...answer, json: { ...answer.json, ...json }, error };
}

function withLines(answer: Answer, world: World): Answer {
  const files = [...(noted.get(world) ?? [])];
  if (files.length === 0 || 'faults' in answer.json) return answer;
  const unread = files.flatMap(([file, lines]) => lines.map((at) => ({ file, ...at })));
  const said = files.map(([file, lines]) => lineOf(file, lines));
  const key = 'unread' in answer.json ? 'unreadLines' : 'unread';
  return beside(answer, said, { [key]: unread });
}

function lineOf(file: string, unread: readonly UnreadLine[]): string {
  if (isNewer({ unread }))
    return `${quoted(file)} has a newer form than this putback knows, so not all that it says may count. Get a newer putback to go on with this job.`;
  const how =
    unread.length === 1
      ? 'was not read as it stands and does not count'
      : 'were not read as they stand and do not count';
  const check = `putback check ${quoted(file)}`;
  return `${quoted(file)}: ${sayLines(unread)} ${how}. ${check} says why, and the way out.`;
}

/** That nothing is left: only as far as the job could be read, and that is said first. */
export function nothingSaid(job: Pick<Job, 'unread'>, say: string): string {
  const unread = unreadSaid(job);
  return unread === null ? say : `${unread} As far as the rest goes: ${say}`;
}
