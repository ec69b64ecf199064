/** Finds words in all jobs of a bench. */

import { resolve } from 'node:path';
import { foundSaid } from '../../diary/found-said.ts';
import { benchFolders, findUser, oddInUser } from '../../diary/user.ts';
import { findOver } from '../../find/index/benches.ts';
import { type Held, question, saidOf } from '../../find/question.ts';
import { notAsked } from '../../find/words.ts';
import { errorCode } from '../../job/save/disk.ts';
import { quoted, safe } from '../../model/safe.ts';
import type { Job } from '../../model/types.ts';
import { many } from '../../model/words.ts';
import type { World } from '../../world.ts';
import { type Answer, type Call, misuse, optionText } from '../base/command.ts';
import { noteUnread } from '../base/unread.ts';

/** So many are printed where nobody said how many. */
const MOST = 20;
/** Files. Fewer are read before anybody looks up. */
const WORTH_SAYING = 300;

export async function run(call: Call): Promise<Answer> {
  const { words, world } = call;
  const said = optionText(call, 'most');
  if (said !== undefined && !/^[1-9]\d{0,6}$/.test(said))
    return misuse('bad-number', `--most ${said} is no number of lines, like 20.`);
  if (words.every((word) => word.trim() === '')) return misuse('no-words', 'Which words?');
  const ask = question(words);
  const user = findUser(world.env);
  const odd = oddInUser(user);
  const benches = benchFolders(user, world.env);
  const { held, unread } = ask
    ? findOver(world.folder, benches, ask, progressOn(world.stderr))
    : { held: [], unread: [] };
  const signs = notAsked(words);
  const most = said === undefined ? null : Number(said);
  const found = held.slice(0, most ?? held.length);
  const shown = held.slice(0, most ?? MOST);
  const more = held.length - shown.length;
  const listed = call.options.json === true ? found : shown;
  const { whole, unlooked, jobs } = await lookedAt(listed, world);
  const notRead = [...(odd === null ? [] : [odd]), ...unread, ...whole];
  const lines = [
    ...shown.flatMap((held) => linesSaid(held, jobs.get(held.file) ?? null)),
    ...(held.length === 0 ? [`Nothing found for ${safe(words.join(' '))}.`] : []),
    ...(more > 0 ? [`${more} more: --most ${held.length} says all.`] : []),
    ...(signs.length === 0
      ? []
      : [`Not looked for, since a sign is no word: ${safe(signs.join(' '))}`]),
    ...notRead.map((say) => `Not read: ${say}`),
    ...(unlooked === 0
      ? []
      : [`Whether all of ${many(unlooked, 'more job')} is read: putback check.`]),
  ];
  return {
    exit: held.length === 0 ? 1 : 0,
    json: {
      ok: true,
      found: found.map(({ file, line, job, machine, piece, day, text }) => ({
        file,
        line,
        job,
        machine,
        piece,
        day,
        text,
      })),
      ...(signs.length === 0 ? {} : { notAsked: signs }),
      ...(notRead.length === 0 ? {} : { unread: notRead }),
      ...(unlooked === 0 ? {} : { unlooked }),
    },
    text: lines.join('\n'),
  };
}

/** Jobs. So many of those that a line is told of are read whole, to tell what of them does not count. */
const MOST_LOOKED = 40;

/**
 * A line is found as it stands in its file, also where the program cannot read it: lines that do not count are noted,
 * files of which nothing counts are sentences.
 */
async function lookedAt(
  told: readonly Held[],
  world: World,
): Promise<{ whole: string[]; unlooked: number; jobs: Map<string, Job> }> {
  const files = [...new Set(told.map((h) => h.file))];
  const jobs = new Map<string, Job>();
  if (files.length === 0) return { whole: [], unlooked: 0, jobs };
  const [{ readJob, linesLost }, { readNamed }] = await Promise.all([
    import('../../job/read.ts'),
    import('../../job/save/plain.ts'),
  ]);
  const whole = files.slice(0, MOST_LOOKED).flatMap((file) => {
    try {
      const read = readJob(readNamed(resolve(world.folder, file)).bytes.toString('utf8'), file);
      noteUnread(world, file, { unread: read.unreadable ? [] : linesLost(read) });
      if (!read.unreadable) return [];
    } catch (error) {
      if (errorCode(error) === null) throw error;
    }
    return [`${safe(file)} as a job: putback check ${quoted(file)} says why.`];
  });
  return { whole, unlooked: Math.max(0, files.length - MOST_LOOKED), jobs };
}

/** Where it stands, and the line itself; an entry of the diary as one says it. */
function linesSaid(found: Held, whole: Job | null): string[] {
  const { file, line, job, machine, piece, day, undone } = found;
  const about = [job, machine?.split(',')[0], piece, day].filter((t) => t != null && t !== '');
  return [
    `${file}:${line}  ${about.join(', ')}`,
    `    ${undone ? '[taken back] ' : ''}${foundSaid(found.text, whole) ?? saidOf(found)}`,
  ];
}

/** On one line of a terminal, which is empty again at the end. */
function progressOn(
  stderr: NodeJS.WriteStream,
): (folder: string, done: number, of: number) => void {
  return (_, done, of) => {
    if (!stderr.isTTY || of < WORTH_SAYING) return;
    stderr.write(done < of ? `\rReading ${done} of ${of} jobs` : '\r\x1b[K');
  };
}
