/**
 * The items of a gate: what is worked out from the job, and what somebody has to look at and tick.
 *
 * Three lines of the diary belong to a gate, each with its moment and a name behind it: `seen: sealing faces` ticks an
 * item (`seen: sealing all` every one that does not stop), `struck: sealing wrench` leaves one out, `added: sealing`
 * with `says` puts one on.
 */
import { inWords, type Words } from '../../job/truth/said.ts';
import type { Moment } from '../../model/types.ts';
import type { DiaryLine } from '../order/lines.ts';
import type { ItemKey } from './item-rows.ts';

export type { Moment } from '../../model/types.ts';

/** Where one goes, or what one says, to be rid of what stops. */
export type WayOut =
  /** It came out again. */
  | { to: 'out'; piece: string | null; what: string; count: number }
  /** To the bolts of a piece: those that are in, those to tighten. */
  | { to: 'bolts' | 'tighten'; piece: string }
  /** To a hole: to be mended, or to be settled. */
  | { to: 'mend' | 'settle'; piece: string; hole: string }
  | { to: 'task'; task: string }
  /** A new one is here. */
  | { to: 'buy'; buy: string }
  /** The file is mended in an editor. */
  | { to: 'file' }
  /** Only somebody's eyes can tell: it is ticked by itself. */
  | { to: 'tick' };

export interface GateItem {
  /** Its name in the diary. */
  key: ItemKey;
  say: string;
  done: boolean;
  /** STOP until it is done: no tick for all passes it. */
  stops: boolean;
  /** It can hurt somebody, or comes too soon: told loudly, and let through. */
  loud: boolean;
  /** Of what stops: why, since when, and the way out, in one sentence; null of all other items. */
  stop: string | null;
  /** Of what stops. */
  way: WayOut | null;
}

/** With its sentence in parts: what is printed and not so beside what is true. */
export interface ItemInWords extends GateItem {
  words: Words;
  /** The job itself knows whether it is so: no tick changes it. */
  known: boolean;
}

/** `done: null` where only somebody's eyes can tell. */
export interface AskedItem {
  key: ItemKey;
  words: Words;
  done: boolean | null;
  stops: boolean;
  loud?: boolean;
  /** See GateItem; without it what stops says its sentence. */
  stop?: string;
  /** Without it what stops is ticked by itself. */
  way?: WayOut;
}

type Sentence = string | Words;
const inParts = (say: Sentence): Words => (typeof say === 'string' ? [say] : say);

export const look = (key: ItemKey, say: Sentence): AskedItem => ({
  key,
  words: inParts(say),
  done: null,
  stops: false,
});
/** What can hurt somebody. */
export const warn = (key: ItemKey, say: Sentence): AskedItem => ({ ...look(key, say), loud: true });
/** The job knows that it is well; while it was not, it stopped. */
export const ticked = (key: ItemKey, say: Sentence): AskedItem => ({
  ...look(key, say),
  done: true,
  stops: true,
});
/** The job knows that it is not done, which stops nobody. */
export const unticked = (key: ItemKey, say: Sentence): AskedItem => ({
  ...look(key, say),
  done: false,
});
/** The item about these, where there are any. */
export const ifAny = (things: readonly unknown[], item: () => AskedItem): AskedItem[] =>
  things.length > 0 ? [item()] : [];
/** STOP until the job knows that it is over; `stop` says why, since when and the way out. */
export const stopped = (key: ItemKey, say: Sentence, stop: string, way: WayOut): AskedItem => ({
  ...unticked(key, say),
  stops: true,
  stop,
  way,
});

/** Ticks, strikes and additions that count at this moment, from the line behind `since` on. */
export function withTicks(
  asked: readonly AskedItem[],
  lines: readonly DiaryLine[],
  at: { moment: Moment; piece: string | null; since: number },
): ItemInWords[] {
  const own = lines.filter(
    (line) => (line.piece ?? null) === at.piece && line.value.split(' ')[0] === at.moment,
  );
  const wordsOf = (verb: string, from = -1) =>
    own.filter((line) => line.verb === verb && line.index > from).map((l) => l.value.split(' ')[1]);
  const seen = new Set<string | undefined>(wordsOf('seen', at.since));
  const struck = new Set<string | undefined>(wordsOf('struck'));
  const added = own
    .filter((line) => line.verb === 'added' && line.says !== undefined)
    .map((line, i) => look(`added-${i + 1}`, line.says ?? ''));
  return [...asked, ...added]
    .filter((item) => !struck.has(item.key) || (item.stops && item.done === false))
    .map(({ key, words, done, stops, loud, stop, way }) => ({
      key,
      say: inWords(words),
      words,
      known: done !== null,
      // What the job knows to be undone no tick can do.
      done: done ?? (seen.has(key) || (!stops && seen.has('all'))),
      stops,
      loud: loud === true,
      stop: stops ? (stop ?? inWords(words)) : null,
      way: stops ? (way ?? { to: 'tick' }) : null,
    }));
}

/** Questions among what is open: whoever says that all is seen has not answered them. */
export function questions(items: readonly ItemInWords[]): ItemInWords[] {
  return items.filter(({ done, stops, say }) => !done && !stops && say.endsWith('?'));
}

/** `Not answered by that: A new one, or does the old one do: gasket?`; null where nothing was asked. */
export function notAnswered(asked: readonly ItemInWords[]): string | null {
  if (asked.length === 0) return null;
  return `Not answered by that: ${asked.map(({ say }) => say).join(' ')}`;
}
