/** What is done about a thing within reach while a piece is off: looked at, renewed, left, asked about. */
import {
  type Choice,
  type Edit,
  type Entry,
  type Job,
  REACH_ANSWERS,
  type Verdict,
} from '../../../model/types.ts';
import { freeKey } from '../../form/trace-keys.ts';
import {
  already,
  list,
  noPiece,
  type Stamp,
  type Undone,
  type UndoWay,
  type Wished,
  write,
  wrong,
} from '../base/verdict.ts';

export function judgeChoose(job: Job, wish: Wished<'choose'>, stamp: Stamp): Verdict {
  const piece = job.pieces.get(wish.piece);
  if (!piece) return noPiece(job, wish.piece);
  const what = wish.what.trim().replace(/\s+/g, ' ');
  if (what === '') return wrong('no-thing', 'Say what it is about.');
  const value = `${wish.answer} ${what}`;
  const before = saidBefore(
    job,
    { piece: wish.piece, what, round: piece.round },
    job.entries.length,
  );
  if (before === wish.answer && wish.says === undefined) return already();
  const { edits, warnings } = instead(job, wish.piece, what, before, wish.answer);
  return write(stamp, wish, { verb: 'chosen', value, piece: wish.piece }, { edits, warnings });
}

/** What was said last of a thing in a round of its piece, before a place in the diary; null while nothing was. */
function saidBefore(
  { entries, living, rounds }: Job,
  { piece, what, round }: { piece: string; what: string; round: number },
  at: number,
): Choice | null {
  const last = entries.slice(0, at).findLast((e) => {
    const same = e.verb === 'chosen' && e.piece === piece && saidOf(e).what === what;
    return same && living.has(e.id) && (rounds.get(e.id) ?? 1) === round;
  });
  const answer = last ? saidOf(last).answer : '';
  return isAnswer(answer) ? answer : null;
}

function saidOf({ value }: Entry): { answer: string; what: string } {
  const [answer = '', ...words] = value.split(' ');
  return { answer, what: words.join(' ') };
}

interface Row {
  section: 'tasks' | 'buy';
  key: string;
  fields: Record<string, string>;
}

/** What follows from the choice: a task to look at it or to renew it, and the part on the list of things to buy. */
function rowsFor(piece: string, answer: Choice, what: string): Row[] {
  const name = freeKey(what, new Map());
  const when = { while: `${piece} off` };
  switch (answer) {
    case 'look':
      return [
        { section: 'tasks', key: `look-${name}`, fields: { do: `Look at it: ${what}`, ...when } },
      ];
    case 'renew':
      return [
        { section: 'tasks', key: `renew-${name}`, fields: { do: `Renew: ${what}`, ...when } },
        { section: 'buy', key: name, fields: { what, for: `${piece} on` } },
      ];
    case 'ask':
      return [
        {
          section: 'tasks',
          key: `ask-${name}`,
          fields: { decide: `Ask the owner: renew it? ${what}`, ...when },
        },
      ];
    case 'leave':
      return [];
  }
}

/** Leaves out what the file has already, also a part that the list has under another name. */
function added(job: Job, piece: string, answer: Choice, what: string): Edit[] {
  const { tasks, buys } = job.upper;
  const listed = [...buys.values()].some((buy) => buy.what.toLowerCase() === what.toLowerCase());
  return rowsFor(piece, answer, what)
    .filter(({ section, key }) =>
      section === 'tasks' ? !tasks.has(key) : !buys.has(key) && !listed,
    )
    .map((row) => ({ edit: 'named', ...row }));
}

/** What followed from one answer goes out of the file, as long as nobody marked it or wrote more of it; another's comes. */
function instead(
  job: Job,
  piece: string,
  what: string,
  was: Choice | null,
  is: Choice | null,
): Undone {
  if (was === is) return { edits: [], warnings: [] };
  const rows = (was === null ? [] : rowsFor(piece, was, what)).filter(({ section, key }) =>
    section === 'tasks' ? job.upper.tasks.has(key) : job.upper.buys.has(key),
  );
  const [bare, more] = [true, false].map((yes) => rows.filter((row) => isBare(job, row) === yes));
  const stays = (more ?? []).map(({ key }) => key);
  const say = `${list(stays)} stays in the file: it was marked, or more was written of it.`;
  return {
    edits: [
      ...(bare ?? []).map(({ section, key }) => ({ edit: 'unnamed', section, key }) as const),
      ...(is === null ? [] : added(job, piece, is, what)),
    ],
    warnings: stays.length === 0 ? [] : [{ code: 'file-stays', say }],
  };
}

/** It says what came with the answer and no more, and nothing was marked of it. */
function isBare(job: Job, { section, key, fields }: Row): boolean {
  const { tasks, buys } = job.upper;
  const marks = job.entries.filter((e) => job.living.has(e.id));
  if (section === 'tasks') {
    const task = tasks.get(key);
    const said = task?.say.text === (fields.do ?? fields.decide);
    const more = task?.note || task?.takes || task?.weigh;
    return said && !more && !marks.some((e) => e.task === key);
  }
  const buy = buys.get(key);
  const more = buy?.price || buy?.from || buy?.count || buy?.note;
  return buy?.what === fields.what && !more && !marks.some((e) => e.buy === key);
}

/** What came into the file with it goes out again, and what was said before it counts again. */
export function chosenBack(job: Job, entry: Entry, way: UndoWay): Undone {
  const { answer, what } = saidOf(entry);
  const piece = entry.piece ?? '';
  if (!isAnswer(answer)) return { edits: [], warnings: [] };
  const at = job.entries.indexOf(entry);
  const round = job.rounds.get(entry.id) ?? job.pieces.get(piece)?.round ?? 1;
  const before = saidBefore(job, { piece, what, round }, at);
  // Where something was said of it since, that stays.
  const since = saidBefore(job, { piece, what, round }, job.entries.length);
  const [from, to] = way === 'back' ? [answer, before] : [before, answer];
  return since === from ? instead(job, piece, what, from, to) : NOTHING;
}

const NOTHING = { edits: [], warnings: [] };
const isAnswer = (word: string): word is Choice =>
  (REACH_ANSWERS as readonly string[]).includes(word);
