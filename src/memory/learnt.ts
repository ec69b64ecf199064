/**
 * What a job file says and its diary taught, without the diary: rows as they were settled, figures as they turned
 * out to be true, and what was stuck or broke as tips. As the texts of a job file.
 */
import { openDoc, plainOf } from '../job/edit/doc.ts';
import { saidOfValue } from '../job/edit/pairs.ts';
import { isFail } from '../job/edit/splice.ts';
import { sameText } from '../job/truth/figures.ts';
import type { Correction, Job, PieceNow, Said } from '../model/types.ts';
import { printRow } from '../piece/row.ts';
import { AS_IS, type AsIs, PIECE_CARRIED } from './carried.ts';
import { type Known, remember } from './remember.ts';

export type LearntKeys = Record<string, Said>;

export interface Learnt {
  /** Where it comes from: the job's title. */
  title: string;
  machine: string | null;
  kinds: LearntKeys;
  pieces: Record<string, LearntKeys>;
  tasks: LearntKeys;
  buys: LearntKeys;
  /** Other sections of the file, as they stand: what it may be, what to look at. */
  more: Record<AsIs, LearntKeys>;
  /** How a figure is printed whose truth stands there now: by its path, `pieces.cover.torque`. */
  printed: Record<string, string>;
}

function mapAt(said: Said | undefined): LearntKeys {
  return typeof said === 'object' && !Array.isArray(said) ? said : {};
}

/** `text` is the file that `job` was read from. Total: what is no mapping has nothing in it. */
export function learntFrom(text: string, job: Job): Learnt {
  const doc = openDoc(text);
  const root = isFail(doc) ? {} : mapAt(saidOfValue(plainOf(doc.contents)));
  const printed: Record<string, string> = {};
  const raw = mapAt(root.pieces);
  const pieces = [...job.pieces.values()].map(({ spec: { key } }): [string, LearntKeys] => {
    const now = job.pieces.get(key);
    return [key, now ? pieceOf(mapAt(raw[key]), now, job, printed) : {}];
  });
  return {
    title: job.upper.job,
    machine: job.upper.machine,
    kinds: filled(mapAt(root.bolts)),
    pieces: Object.fromEntries(pieces),
    tasks: tasksOf(filled(mapAt(root.tasks)), job, printed),
    buys: buysOf(filled(mapAt(root.buy)), job),
    more: moreOf(root),
    printed,
  };
}

function moreOf(root: LearntKeys): Record<AsIs, LearntKeys> {
  const sections = AS_IS.map((name) => [name, filled(mapAt(root[name]))] as const);
  return Object.fromEntries(sections) as Record<AsIs, LearntKeys>;
}

function filled(keys: LearntKeys): LearntKeys {
  return Object.fromEntries(Object.entries(keys).filter(([, value]) => value !== ''));
}

function pieceOf(
  raw: LearntKeys,
  piece: PieceNow,
  job: Job,
  printed: Record<string, string>,
): LearntKeys {
  const { key } = piece.spec;
  let keys: LearntKeys = {};
  for (const name of PIECE_CARRIED) {
    const value = raw[name];
    if (value !== undefined && value !== '') keys[name] = value;
  }
  for (const c of job.corrections) {
    if (c.piece === key) keys = corrected(keys, c, printed);
  }
  const row = piece.holes.flatMap((h) => (h.belongs ? [h.belongs] : []));
  if (row.length > 0 && row.length === piece.holes.length) {
    const now = printRow(row);
    const before = piece.spec.row ? printRow(piece.spec.row) : null;
    if (before !== now) {
      if (before !== null) printed[`pieces.${key}.bolts`] = before;
      keys.bolts = now;
    }
  }
  const known = remember(job, key);
  const time = known.find((k) => k.about === 'time' && k.id !== null);
  if (time && keys.takes === undefined) keys.takes = time.text.replace(' of marks', '');
  return withTips(keys, known, piece, job);
}

// ---------------------------------------------------------------- what is true

function corrected(keys: LearntKeys, c: Correction, printed: Record<string, string>): LearntKeys {
  const path = [
    'pieces',
    c.piece ?? '',
    ...(c.hole === undefined ? [] : ['holes', c.hole]),
    c.what,
  ];
  printed[path.join('.')] = c.printed;
  if (c.hole !== undefined) {
    const holes = mapAt(keys.holes);
    const hole = { ...mapAt(holes[c.hole]), [c.what]: c.says };
    return { ...keys, holes: { ...holes, [c.hole]: hole } };
  }
  const value = keys[c.what];
  if (value === undefined) return keys;
  return { ...keys, [c.what]: c.what === 'sequence' ? c.says : replaced(value, c) };
}

/** The value with the truth in the place of what is printed, wherever that stands in it. */
function replaced(value: Said, { what, printed, says }: Correction): Said {
  const through = (said: Said): Said => {
    if (typeof said === 'string') return sameText(what, said, printed) ? says : said;
    if (Array.isArray(said)) return said.map(through);
    return Object.fromEntries(Object.entries(said).map(([key, v]) => [key, through(v)]));
  };
  return through(value);
}

function tasksOf(raw: LearntKeys, job: Job, printed: Record<string, string>): LearntKeys {
  const tasks = { ...raw };
  for (const c of job.corrections) {
    if (c.task === undefined) continue;
    const task = mapAt(tasks[c.task]);
    const verb = job.upper.tasks.get(c.task)?.verb ?? 'do';
    const key = c.what === 'step' ? verb : c.what;
    if (task[key] === undefined) continue;
    printed[`tasks.${c.task}.${key}`] = c.printed;
    tasks[c.task] = { ...task, [key]: replaced(task[key] ?? '', c) };
  }
  return tasks;
}

/** What did not fit is no part to buy again: a tip says so. */
function buysOf(raw: LearntKeys, job: Job): LearntKeys {
  const not = new Set(remember(job).flatMap((k) => (k.about === 'not' ? [k.id] : [])));
  const wrong = new Set(job.entries.flatMap((e) => (not.has(e.id) && e.buy ? [e.buy] : [])));
  return Object.fromEntries(Object.entries(raw).filter(([key]) => !wrong.has(key)));
}

// ---------------------------------------------------------------- tips

/** On the way off, on the way back, or on both. */
const WAYS: Partial<Record<Known['about'], readonly ('removal' | 'fitting')[]>> = {
  stuck: ['removal'],
  broke: ['removal', 'fitting'],
  insert: ['fitting'],
  not: ['fitting'],
  true: ['fitting'],
  failed: ['fitting'],
  kept: ['removal', 'fitting'],
};
const SAYS: Partial<Record<Known['about'], (text: string) => string>> = {
  stuck: (text) => `${text}; heat and time before force`,
  not: (text) => `does not fit: ${text}`,
  failed: (text) => `failed afterwards: ${text}`,
};

/** `9 stuck: soaking; heat and time before force (Left cover weeps oil, 2025-11-03)`. */
function tipOf(known: Known, title: string): string {
  const text = SAYS[known.about]?.(known.text) ?? known.text;
  return `Last time: ${text} (${[title, known.day].filter((t) => t !== null).join(', ')})`;
}

function withTips(
  keys: LearntKeys,
  known: readonly Known[],
  piece: PieceNow,
  job: Job,
): LearntKeys {
  const ways = { removal: [] as string[], fitting: [] as string[] };
  for (const k of known)
    for (const way of WAYS[k.about] ?? []) ways[way].push(tipOf(k, job.upper.job));
  for (const h of piece.holes) {
    if (!h.unsettled || !h.found || !h.claim) continue;
    const text = `${h.name}: ${printRow([h.found])} came out, and ${printRow([h.claim])} was written; nobody said which is right`;
    ways.removal.push(`Last time: ${text} (${job.upper.job})`);
  }
  if (ways.removal.length === 0 && ways.fitting.length === 0) return keys;
  const before = stepsOf(keys.tip);
  const tip: LearntKeys = {};
  for (const way of ['removal', 'fitting'] as const) {
    const all = [...new Set([...before[way], ...ways[way]])];
    if (all.length > 0) tip[way] = all;
  }
  return { ...keys, tip };
}

function stepsOf(said: Said | undefined): Record<'removal' | 'fitting', string[]> {
  const texts = (s: Said | undefined): string[] =>
    typeof s === 'string' ? (s === '' ? [] : [s]) : Array.isArray(s) ? s.flatMap(texts) : [];
  if (typeof said === 'object' && !Array.isArray(said))
    return { removal: texts(said.removal), fitting: texts(said.fitting) };
  return { removal: texts(said), fitting: texts(said) };
}
