/** What follows from the jobs of a bench, and when it is due. */
import { join, resolve } from 'node:path';
import { errorCode } from '../../job/save/disk.ts';
import { benchesBelow, jobsIn } from '../../memory/bench/jobs.ts';
import { calendarText } from '../../memory/calendar.ts';
import { type Due, dueOver } from '../../memory/due.ts';
import { quoted, safe } from '../../model/safe.ts';
import { nowHere } from '../../world.ts';
import { type Answer, answer, type Call } from '../base/command.ts';
import { noFolder } from '../base/open-job.ts';
import { noteUnread } from '../base/unread.ts';

export function run(call: Call): Answer {
  const [name = '.'] = call.words;
  const now = nowHere(call.world);
  const folder = resolve(call.world.folder, name);
  try {
    const all = dueOver(now);
    const unread: string[] = [];
    let read = 0;
    for (const one of jobsIn(folder)) {
      if ('unread' in one) {
        unread.push(one.unread);
        continue;
      }
      read += 1;
      noteUnread(call.world, join(name, one.file), one.job);
      all.add(one);
    }
    const due = all.list();
    const below = read + unread.length > 0 ? null : benchesBelow(folder);
    const lines = [
      ...due.flatMap((d) => dueLines(d, name)),
      ...(due.length > 0 ? [] : below === null ? ['Nothing is due.'] : noneRead(name, below)),
      ...unread.map(
        (file) => `Not read: ${file}. putback check ${quoted(join(name, file))} says why.`,
      ),
    ];
    const made = answer(
      { due, ...(unread.length === 0 ? {} : { unread }), ...(below === null ? {} : { below }) },
      lines.join('\n'),
    );
    if (call.options.ics !== true) return made;
    const said = unread.map((file) => `Not read: ${file}.`);
    // A calendar of nothing is none: RFC 5545, 3.4 wants one component at least.
    if (due.length === 0)
      said.push(
        below === null ? 'Nothing is due: no calendar file.' : noneRead(name, below).join('\n'),
      );
    const exact = due.length === 0 ? '' : calendarText(due, now);
    return { ...made, exact, ...(said.length === 0 ? {} : { error: said.join('\n') }) };
  } catch (error) {
    if (errorCode(error) === null) throw error;
    return noFolder(name, call.world, error);
  }
}

/** Nothing was read, so nobody knows what is due: where jobs may lie instead. */
function noneRead(folder: string, below: readonly string[]): string[] {
  const there = below.map((name) => `  putback due ${quoted(join(folder, name))}`);
  return [
    `No job file in ${safe(folder)}: nothing was read.`,
    ...(there.length === 0 ? [] : ['Files lie below it:', ...there]),
  ];
}

/** What, of what, and when. */
function dueLines(all: Due, folder: string): string[] {
  const { file, job, machine, say, when, odd, due, at, left, state } = all;
  const by = [due, at && (state === 'due' ? `since ${at}` : `at ${at}, ${left} left`)];
  const unread =
    odd === undefined ? null : `which nothing counts (putback check ${quoted(join(folder, file))})`;
  const told = [state, ...by.filter((t) => t !== null), when, unread].filter((t) => t);
  return [
    `${told.join(', ')}: ${say}`,
    `    ${[machine?.split(',')[0], job, file].filter((t) => t).join(', ')}`,
  ];
}
