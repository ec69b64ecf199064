/** What is kept for next time, taken over from last time, and read off the machine. */
import { readCounter, readingText, readReading } from '../../../bolt/read/counter.ts';
import { readFigure } from '../../../bolt/read/reading-limit.ts';
import { sumOf } from '../../../model/sum.ts';
import type { Edit, Entry, Job, Said, Verdict, Warning } from '../../../model/types.ts';
import { verbRow } from '../../../model/verbs/verbs.ts';
import { NAME } from '../../diary/entry.ts';
import { TAKEN_WORD } from '../../fold/say-taken.ts';
import {
  already,
  judgedAnew,
  refuse,
  type Stamp,
  type Wished,
  write,
  wrong,
} from '../base/verdict.ts';

export function judgeKeep(job: Job, wish: Wished<'keep'>, stamp: Stamp): Verdict {
  const told = job.entries.filter((e) => job.living.has(e.id) && !verbRow(e.verb).afterwards);
  const kept = wish.id === undefined ? told.at(-1) : told.find((e) => e.id === wish.id);
  if (!kept) {
    if (wish.id === undefined) return wrong('nothing', 'There is nothing to keep.');
    return wrong('no-such-entry', `No entry ${wish.id} that counts in the diary.`, { id: wish.id });
  }
  const again = job.entries.some(
    (e) => e.verb === 'keep' && e.value === kept.id && job.living.has(e.id),
  );
  return again ? already() : write(stamp, wish, { verb: 'keep', value: kept.id });
}

export function judgeReading(job: Job, wish: Wished<'reading'>, stamp: Stamp): Verdict {
  const text = wish.reading.trim();
  const read = readCounter(text);
  if (read === null) {
    const like = 'write it as the counter shows it: 41400 km, 25700 mi or 120 h.';
    return wrong('bad-reading', `${text || 'Nothing'} is no reading: ${like}`);
  }
  const told = job.entries.filter((e) => e.verb === 'reading' && job.living.has(e.id));
  if (told.at(-1)?.value === text) return already();
  // Of one machine there may be two counters.
  const before = [...told.map((e) => e.value).reverse(), job.upper.machine ?? ''].find(
    (said) => readReading(said)?.unit === read.unit,
  );
  const less = before !== undefined && (readReading(before)?.value ?? 0) > read.value;
  if (!less) return write(stamp, wish, { verb: 'reading', value: text });
  const say = `Before it said ${readingText(before)}: a counter does not run back.`;
  const right = rightCounter(wish);
  if (right) return judgedAnew(judgeReading(job, right.wish, stamp), right.say);
  if (wish.because === undefined)
    return refuse('runs-back', `${say} A slip of the pen, or another counter?`);
  const warnings: Warning[] = [{ code: 'runs-back', say }];
  return write(stamp, wish, { verb: 'reading', value: text }, { warnings });
}

/** What the counter shows, given where a reason was asked for; null where the reason is one. */
export function rightCounter({
  because,
  ...wish
}: Wished<'reading'>): { wish: Wished<'reading'>; say: string } | null {
  if (because === undefined || !isReadingAlone(because)) return null;
  const reading = because.trim();
  return { wish: { ...wish, reading }, say: `${reading} is a reading, and no reason` };
}

/** Nothing but what a counter shows, its unit left out or not. */
function isReadingAlone(text: string): boolean {
  return readFigure(text) !== null || readingText(text) === text.trim();
}

/** Only keys that are not there yet are put in: what the person wrote stays. */
export function judgeTake(job: Job, wish: Wished<'take'>, stamp: Stamp): Verdict {
  const { piece, from, pairs } = wish;
  if (!NAME.test(piece)) return wrong('bad-name', `${piece} is no name of a piece.`, { piece });
  if (pairs.length === 0 && wish.truths !== true) return already();
  if (pairs.length === 0) return write(stamp, wish, { verb: 'taken', value: from, piece });
  const edits: Edit[] = [
    ...(job.upper.pieces.has(piece) ? [] : [{ edit: 'piece', piece } as const]),
    { edit: 'pairs', pairs },
  ];
  const made = [
    ...(job.upper.pieces.has(piece) ? [] : [`/pieces/${piece}=${EMPTY}`]),
    ...(job.upper.kinds.size === 0 && pairs.some(({ path }) => path[0] === 'bolts')
      ? [`/bolts=${EMPTY}`]
      : []),
  ];
  const filled = pairs.map(({ path, value }) => `${nameOf(path)}=${sumOf(spelled(value))}`);
  const was = [...made, ...filled];
  const entry = { verb: 'taken', value: from, piece, was: was.join(' ') } as const;
  return write(stamp, wish, entry, { edits });
}

/** `torque`, `holes/4` of the piece; `/bolts/H` of the file. */
function nameOf([section, ...path]: readonly string[]): string {
  return section === 'pieces' ? path.slice(1).join('/') : ['', section, ...path].join('/');
}

/** Of what had to be made first: it goes again when nothing is left in it. */
const EMPTY = sumOf(spelled(''));

/** A value in one spelling, to be held against itself. */
function spelled(value: Said): string {
  return JSON.stringify(value);
}

/** To have it again: what came along stands in no diary, only where it came from. */
export function takeAgain({ value, piece = '' }: Entry): Verdict {
  const say = `What came from ${value} stands there and not in the diary: take it over again. putback last FILE ${piece} --take --from ${value}`;
  return wrong('take-again', say, { piece, from: value });
}

/** Takes out what was taken over and is still as it came; what somebody changed since stays. */
export function takeUndone({ was = '', piece = '' }: Entry): { edits: Edit[] } {
  const pairs = was.split(' ').flatMap((word): { path: string[]; sum: string }[] => {
    const [, root, path, sum] = TAKEN_WORD.exec(word) ?? [];
    if (path === undefined || sum === undefined) return [];
    const under = root === '' ? ['pieces', piece] : [];
    return [{ path: [...under, ...path.split('/')], sum }];
  });
  return { edits: [{ edit: 'pairs-out', pairs }] };
}
