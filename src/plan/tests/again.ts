/** A test failed: what comes off once more, what the rounds before it found, and what is wanted anew. */
import type { Job } from '../../model/types.ts';
import { verbRow } from '../../model/verbs/verbs.ts';
import { type Buy, buysOf } from '../buy/list.ts';
import { reach } from '../order/reach.ts';
import { type Standing, standingOf } from '../order/standing.ts';
import { type TestItem, testListOf } from './testlist.ts';

interface Again {
  /** What costs nothing and may spare the round, in its order. Common practice, no source. */
  first: string[];
  /** Pieces, in the order in which they come off. */
  off: string[];
  /** Notes, and words beside marks, on these pieces and tests so far. */
  found: { at: string; piece: string | null; hole: string[] | null; say: string }[];
  /** Things used once that go in with these pieces. */
  anew: Pick<Buy, 'buy' | 'what' | 'count'>[];
}

/** Null when there is no such test, or when it tests no piece that came off. */
export function roundAgain(job: Job, test: string, now: string): Again | null {
  const standing = standingOf(job, now);
  const item = testListOf(standing).find((t) => t.test === test);
  if (!item || item.pieces.length === 0) return null;
  const off = [...new Set(item.pieces.flatMap((piece) => reach(job, piece)))];
  const pieces = new Set([...item.pieces, ...off]);
  return {
    first: cheapFirst(item),
    off,
    found: foundSoFar(standing, pieces, test),
    anew: wantedAnew(standing, pieces),
  };
}

const LEAKS =
  /\b(?:weeps?|leaks?|drips?|drops?|oil|fuel|petrol|gas|water|tight|dry|bubbles?|sweats?)\b/i;
const HOT = /\bhot\b|\bwarm\b|after a run|at idle|under load/i;

/** Before anything comes off again. */
function cheapFirst({ say, limit, when }: TestItem): string[] {
  const text = [say, limit, when].filter((t) => t !== null).join(' ');
  return [
    ...(HOT.test(text) ? ['Wait until it is cool.'] : []),
    LEAKS.test(text)
      ? 'Wipe it dry, run it again for a moment and find the place: chalk or paper shows it.'
      : 'Do it once more and find the place: look, listen, feel.',
    'Go round with the wrench, cold, at the torque as it counts: does a bolt turn?',
  ];
}

function foundSoFar(
  { lines }: Standing,
  pieces: ReadonlySet<string>,
  test: string,
): Again['found'] {
  return lines.all.flatMap(({ at, piece, hole, task, buy, verb, value, says, result }) => {
    const ofJob = verb === 'note' && task === undefined && buy === undefined;
    const about = piece === undefined ? task === test || ofJob : pieces.has(piece);
    const words = [verb === 'note' ? value : null, says, result].filter((w) => w != null);
    // Corrections and texts written into the file are no findings of a round.
    const known = verbRow(verb).kind === 'known';
    if (!about || known || words.length === 0) return [];
    const say = [...new Set(words)].join('; ');
    return [{ at, piece: piece ?? null, hole: hole ?? null, say }];
  });
}

/** As the list will be once they are off: what the file marks as used once, and bolts that are. */
function wantedAnew(standing: Standing, pieces: ReadonlySet<string>): Again['anew'] {
  const { job } = standing;
  const isFor = (buy: { for: readonly string[] }) =>
    buy.for.some((step) => step.endsWith(' on') && pieces.has(step.split(' ')[0] ?? ''));
  const coming = [...job.pieces.values()].filter((p) => pieces.has(p.spec.key));
  return buysOf(standing, coming)
    .filter((buy) => buy.once && isFor(buy))
    .map(({ buy, what, count }) => ({ buy, what, count }));
}
