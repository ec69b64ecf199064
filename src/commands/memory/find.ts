/** Finds words in all jobs of a bench. */
import { benchFolders, findUser, oddInUser } from '../../diary/user.ts';
import { findOver } from '../../find/index/benches.ts';
import { type Held, question, saidOf } from '../../find/question.ts';
import { notAsked } from '../../find/words.ts';
import { safe } from '../../model/safe.ts';
import { type Answer, type Call, misuse, optionText } from '../base/command.ts';

/** So many are printed where nobody said how many. */
const MOST = 20;
/** Files. Fewer are read before anybody looks up. */
const WORTH_SAYING = 300;

export function run(call: Call): Answer {
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
  const notRead = [...(odd === null ? [] : [odd]), ...unread];
  const most = said === undefined ? null : Number(said);
  const found = held.slice(0, most ?? held.length);
  const shown = held.slice(0, most ?? MOST);
  const more = held.length - shown.length;
  const lines = [
    ...shown.flatMap(linesSaid),
    ...(held.length === 0 ? [`Nothing found for ${safe(words.join(' '))}.`] : []),
    ...(more > 0 ? [`${more} more: --most ${held.length} says all.`] : []),
    ...(signs.length === 0
      ? []
      : [`Not looked for, since a sign is no word: ${safe(signs.join(' '))}`]),
    ...notRead.map((say) => `Not read: ${say}`),
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
    },
    text: lines.join('\n'),
  };
}

/** Where it stands, and the line itself. */
function linesSaid(found: Held): string[] {
  const { file, line, job, machine, piece, day, undone } = found;
  const about = [job, machine?.split(',')[0], piece, day].filter((t) => t != null && t !== '');
  return [
    `${file}:${line}  ${about.join(', ')}`,
    `    ${undone ? '[taken back] ' : ''}${saidOf(found)}`,
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
