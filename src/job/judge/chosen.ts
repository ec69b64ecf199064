/** What is done about a thing within reach while a piece is off: looked at, renewed, left, asked about. */
import {
  type Choice,
  type Edit,
  type Entry,
  type Job,
  REACH_ANSWERS,
  type Verdict,
  type Warning,
} from '../../model/types.ts';
import { freeKey } from '../form/typed-trace.ts';
import { already, noPiece, type Stamp, type Wished, write, wrong } from './parts.ts';

export function judgeChoose(job: Job, wish: Wished<'choose'>, stamp: Stamp): Verdict {
  const piece = job.pieces.get(wish.piece);
  if (!piece) return noPiece(job, wish.piece);
  const what = wish.what.trim().replace(/\s+/g, ' ');
  if (what === '') return wrong('no-thing', 'Say what it is about.');
  const value = `${wish.answer} ${what}`;
  const same = (e: Entry) =>
    e.verb === 'chosen' &&
    e.piece === wish.piece &&
    job.living.has(e.id) &&
    saidOf(e).what === what;
  const last = job.entries.findLast(same);
  const round = last && (job.rounds.get(last.id) ?? 1);
  if (last?.value === value && round === piece.round && wish.says === undefined) return already();
  const edits = added(job, wish.piece, wish.answer, what);
  return write(stamp, wish, { verb: 'chosen', value, piece: wish.piece }, { edits });
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

/** What follows from it, each where it belongs: to look at and to renew among the tasks, the part on the list. */
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

/** Without what stands there already, and a part that the list has under another name. */
function added(job: Job, piece: string, answer: Choice, what: string): Edit[] {
  const { tasks, buys } = job.upper;
  const listed = [...buys.values()].some((buy) => buy.what.toLowerCase() === what.toLowerCase());
  return rowsFor(piece, answer, what)
    .filter(({ section, key }) =>
      section === 'tasks' ? !tasks.has(key) : !buys.has(key) && !listed,
    )
    .map((row) => ({ edit: 'named', ...row }));
}

/** What came into the file with it goes out again, as long as nobody marked it or wrote more of it. */
export function chosenBack(
  job: Job,
  entry: Entry,
  stands: boolean,
): { edits: Edit[]; warnings: Warning[] } {
  const { answer, what } = saidOf(entry);
  const piece = entry.piece ?? '';
  if (!isAnswer(answer)) return { edits: [], warnings: [] };
  if (!stands) return { edits: added(job, piece, answer, what), warnings: [] };
  const rows = rowsFor(piece, answer, what).filter(({ section, key, fields }) => {
    const { tasks, buys } = job.upper;
    const [task, buy] = [tasks.get(key), buys.get(key)];
    const marked = job.entries.some(
      (e) => (section === 'tasks' ? e.task : e.buy) === key && job.living.has(e.id),
    );
    const bare =
      section === 'tasks'
        ? task &&
          task.say === (fields.do ?? fields.decide) &&
          !task.note &&
          !task.takes &&
          !task.weigh
        : buy && buy.what === fields.what && !buy.price && !buy.from && !buy.count && !buy.note;
    return bare && !marked;
  });
  return {
    edits: rows.map(({ section, key }) => ({ edit: 'unnamed', section, key })),
    warnings: [],
  };
}

const isAnswer = (word: string): word is Choice =>
  (REACH_ANSWERS as readonly string[]).includes(word);
