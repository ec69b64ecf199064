/** What happened, as prose: chapters in the order of happening, a new one when another piece, round or day begins. */

import { sayEntry } from '../job/fold/say-entry.ts';
import { oneLine } from '../model/safe.ts';
import type { Beside, Entry, Job, Verb } from '../model/types.ts';
import { NO_READING, verbRow } from '../model/verbs/verbs.ts';
import { capital, inPlace } from '../model/words.ts';

export interface ProseLine {
  id: string;
  at: string;
  /** One sentence. */
  say: string;
  /** Taken back later; it stays readable. */
  undone: boolean;
  /** It is itself the taking back of another one. */
  takesBack: boolean;
  /** Short id of the commit that brought it, null where it is in none. */
  commit: string | null;
}

export interface Chapter {
  /** Key of the piece, null for what is about the whole job. */
  piece: string | null;
  round: number | null;
  title: string;
  /** Times of its first and last line, RFC 3339. */
  from: string;
  to: string;
  lines: ProseLine[];
}

/** `commits`: short id by the id of an entry. */
export function chapters(job: Job, commits: ReadonlyMap<string, string>): Chapter[] {
  const all: Chapter[] = [];
  const rounds = new Map<string, number>();
  const byId = new Map(job.entries.map((e) => [e.id, e]));
  for (const entry of job.entries) {
    const about = aboutOf(entry, byId);
    const piece = about?.piece ?? null;
    const round = piece === null ? null : (job.rounds.get(entry.id) ?? rounds.get(piece) ?? 1);
    if (piece !== null && round !== null) rounds.set(piece, round);
    const line: ProseLine = {
      id: entry.id,
      at: entry.at,
      say: entrySaid(entry, job),
      undone: !job.living.has(entry.id),
      takesBack: entry.verb === 'undo',
      commit: commits.get(entry.id) ?? null,
    };
    const open = all.at(-1);
    const sameDay = open?.to.slice(0, 10) === entry.at.slice(0, 10);
    if (open && sameDay && open.piece === piece && open.round === round) {
      open.lines.push(line);
      open.to = entry.at;
    } else {
      const title = titleOf(piece, round, job);
      all.push({ piece, round, title, from: entry.at, to: entry.at, lines: [line] });
    }
  }
  return all;
}

/** What an undo takes back decides where it is told. */
function aboutOf(entry: Entry, byId: ReadonlyMap<string, Entry>): Entry | null {
  if (entry.verb !== 'undo') return entry;
  const target = byId.get(entry.value);
  return target && target.verb !== 'undo' ? target : null;
}

function titleOf(piece: string | null, round: number | null, job: Job): string {
  if (piece === null) return job.upper.job;
  const name = job.pieces.get(piece)?.spec.name ?? piece;
  return round !== null && round > 1 ? `${name}, round ${round}` : name;
}

/** What each text beside a verb adds to the sentence, in the order in which they are told; null: nothing. */
const BESIDE: Readonly<Record<Beside, ((text: string, entry: Entry) => string | null) | null>> = {
  was: (was, { verb }) => (verbRow(verb).wasForBack || isTold(verb) ? null : `was ${was}`),
  set: (set, { verb }) => (verb === 'tight' ? null : `set to ${set}`),
  // Told where what was set is another figure.
  printed: null,
  result: (result, { value }) => (result === value ? null : result),
  // A reading says both in its result.
  limit: null,
  judged: (judged, { because }) => {
    if (judged === NO_READING) return 'without a reading';
    return judged === 'beyond' && because !== undefined ? 'beyond its limit' : null;
  },
  // Told with how it went.
  old: null,
  advised: (advised) => `the figures said: ${advised}`,
  // For taking it back.
  brought: null,
  came: null,
  promised: (promised) => `promised for ${promised}`,
  shot: (shot) => `taken ${shot.slice(0, 16).replace('T', ' ')}`,
  tray: (tray, { buy }) => `${buy === undefined ? 'bolts ' : ''}${inPlace(tray)}`,
  says: (says, { verb }) => (isTold(verb) ? null : `“${says}”`),
  because: (because) => `all the same, because “${because}”`,
};

/** Their sentence has both texts in it. */
const isTold = (verb: Verb) => verbRow(verb).kind === 'known' || verbRow(verb).tellsBoth === true;

/** One sentence on one line, without the piece and the day. */
export function entrySaid(entry: Entry, job: Job): string {
  return oneLine(sentence(entry, job));
}

function sentence(entry: Entry, job: Job): string {
  const beside = (Object.keys(BESIDE) as Beside[]).flatMap((key) => {
    const text = entry[key];
    return (text === undefined ? null : BESIDE[key]?.(text, entry)) ?? [];
  });
  const said = [sayEntry(entry, job), ...beside].join('; ');
  // Only our own words begin with a capital: a note stays as somebody wrote it.
  return verbRow(entry.verb).ownWords ? capital(said) : said;
}
