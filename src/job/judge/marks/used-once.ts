/** What is used once and would go back in old: told where it goes in and where it is tightened. */
import { sealsUnder } from '../../../bolt/fit/seals.ts';
import { kept } from '../../../model/kept.ts';
import { keySlug } from '../../../model/slug.ts';
import type {
  BuySpec,
  Entry,
  HoleNow,
  Job,
  Kind,
  PieceNow,
  RowItem,
  Warning,
} from '../../../model/types.ts';
import { list } from '../../../model/words.ts';
import { sealsNamed } from '../../../piece/seals.ts';
import { livingAt } from '../../fold/living-of.ts';
import { isUsedOnce, turnedByAngle } from '../../fold/once.ts';
import { namesOf, type Refused, refuse } from '../base/verdict.ts';
import { isFresh, isHereNow } from './inside.ts';

export interface UsedOnce {
  /** Its kind is `once`, or the list says so of a washer: it has to be said why the old one goes in. All else is told. */
  asks: boolean;
  /** Told at every pass; what seals is told with the first bolt that is tightened. */
  bolts: boolean;
  /** Known to be used once; else it is a question. */
  sure: boolean;
  say: string;
  holes: string[];
  /** Its name on the list of what to get. */
  buy: string;
}

/** A hole with what goes into it, or is in it; null: nobody knows. */
export interface Fitted {
  hole: HoleNow;
  item: RowItem | null;
}

export const asFitted = (hole: HoleNow): Fitted => ({ hole, item: hole.holds });

/** Of these bolts. Empty where new ones are noted as here for this round. */
export function usedOnce(job: Job, piece: PieceNow, bolts: readonly Fitted[]): UsedOnce[] {
  const { key } = piece.spec;
  const holes = bolts.map(({ hole }) => hole);
  const own = buysFor(job, key);
  const fresh = (words: readonly string[]) =>
    own.some((buy) => words.some((word) => speaks(buy, word)) && isFresh(job, key, buy));
  const kinds = new Map<string, HoleNow[]>();
  const under = new Map<string, HoleNow[]>();
  for (const { hole, item } of bolts) {
    if (!item) continue;
    if (isUsedOnce(piece, hole.name, job.upper.kinds.get(item.kind))) add(kinds, item.kind, hole);
    for (const word of item.with) if (sealsUnder(word) !== null) add(under, word, hole);
  }
  const turned = turnedByAngle(job, piece, holes);
  const asked = turned.length > 0 && !isHereNow(job, `${key}-bolts`);
  return [
    ...(asked ? [turnedSaid(key, turned)] : []),
    ...[...kinds].flatMap(([letter, at]) => {
      const kind = job.upper.kinds.get(letter);
      return !kind || fresh(wordsOf(kind)) ? [] : [boltSaid(key, kind, at)];
    }),
    ...[...under].flatMap(([word, at]) => {
      if (fresh([word])) return [];
      const once = own.some((buy) => buy.once && speaks(buy, word));
      return [once ? washerOnce(key, word, at) : washerAgain(key, word, at)];
    }),
  ];
}

/**
 * Seals and gaskets that are used once, or may be, and of which nobody noted a new one: on the list, or named by joint,
 * loose parts or the name of the piece. Told before the first bolt. What was ticked as to hand is not.
 */
export function unnotedOnce(job: Job, piece: PieceNow): UsedOnce[] {
  const { key } = piece.spec;
  const own = buysFor(job, key);
  const listed = own
    .filter((buy) => !isFresh(job, key, buy))
    .filter((buy) => !isOfBolts(job, piece, buy.key))
    .map(({ key: buy, what, once }) => {
      const asks = !once && isHereNow(job, buy);
      const used = once ? 'used once, and no new one is noted' : 'to go in, and it is not noted';
      const say = asks
        ? `${what}: it was in there already: a new one, or does the old one do? (${buy})`
        : `${what}: ${used} as here (${buy}).`;
      return { asks: false, bolts: false, sure: !asks, say, holes: [], buy };
    });
  const named = sealsNamed(piece.spec).flatMap(({ what, ask }) => {
    const buy = `${key}-${keySlug(what)}`;
    const known = own.some((b) => speaks(b, what.split(' ').at(-1) ?? what));
    if (known || isToHand(job, piece, buy)) return [];
    const say = ask
      ? `${what}: a new one, or does the old one do? (${buy})`
      : `${what}: to be new, and no new one is noted as here (${buy}).`;
    return [{ asks: false, bolts: false, sure: !ask, say, holes: [], buy }];
  });
  return [...listed, ...named];
}

/** What is listed, may do again, and was in there in an earlier round; what was ticked before this joint is made is not. */
export function wasInAlready(job: Job, piece: PieceNow): string[] {
  const { key } = piece.spec;
  return buysFor(job, key)
    .filter((buy) => !buy.once && isHereNow(job, buy.key) && !isFresh(job, key, buy))
    .filter((buy) => !isOfBolts(job, piece, buy.key) && !isToHand(job, piece, buy.key))
    .map(({ what }) => what);
}

/** It speaks of the bolts of the piece, or of what lies under their heads. */
export function isOfBolts(job: Job, piece: PieceNow, buy: string): boolean {
  const spec = job.upper.buys.get(buy);
  if (!spec) return false;
  const kinds = [...new Set(piece.holes.flatMap((h) => h.belongs?.kind ?? []))];
  const bolts = kinds.flatMap((letter) => job.upper.kinds.get(letter) ?? []).flatMap(wordsOf);
  const under = piece.holes.flatMap((h) => h.belongs?.with ?? []);
  return [...bolts, ...under].some((word) => speaks(spec, word));
}

/** A question to the manual; its name on the list is that of its piece. */
export function turnedSaid(piece: string, at: readonly HoleNow[]): UsedOnce {
  const buy = `${piece}-bolts`;
  const say = `${list(namesOf(at))}: turned by angle, and such bolts are often used once: does the manual ask for new ones? (${buy})`;
  return { asks: false, bolts: false, sure: false, say, holes: namesOf(at), buy };
}

/** Ticked before the joint was made, in this round. */
function isToHand(job: Job, { spec, round }: PieceNow, buy: string): boolean {
  return livingAt(job, spec.key).some(
    ({ id, verb, value }) =>
      verb === 'seen' &&
      (value === `sealing part-${buy}` || value === 'sealing all') &&
      (job.rounds.get(id) ?? round) === round,
  );
}

function add<T>(map: Map<string, T[]>, key: string, value: T): void {
  map.set(key, [...(map.get(key) ?? []), value]);
}

/** What is listed for a piece, or for it to go on; in the order of the list. */
function buysFor({ upper }: Job, piece: string): BuySpec[] {
  const steps = kept(upper, 'steps of buys', () => {
    const said = (step: string) => step.trim().replace(/\s+/g, ' ');
    return [...upper.buys.values()].map((buy) => ({ buy, steps: new Set(buy.for.map(said)) }));
  });
  const own = steps.filter(({ steps: of }) => of.has(piece) || of.has(`${piece} on`));
  return own.map(({ buy }) => buy);
}

function speaks(buy: BuySpec, word: string): boolean {
  const plain = (text: string) => text.toLowerCase().replaceAll('×', 'x');
  return `${plain(buy.key)} ${plain(buy.what)}`.includes(plain(word));
}

/** By its size, or by its letter at the end of a key that the program made. */
function wordsOf(kind: Kind): string[] {
  return [kind.text.split(/[\s,]/)[0] || kind.letter];
}

/** New bolts of this kind are noted as here, whatever piece they are for. */
export function newBoltsHere(job: Job, kind: Kind): boolean {
  return [...job.upper.buys.values()].some((buy) => {
    return wordsOf(kind).some((word) => speaks(buy, word)) && isHereNow(job, buy.key);
  });
}

function boltSaid(piece: string, { letter }: Kind, at: readonly HoleNow[]): UsedOnce {
  const buy = `${piece}-${letter.toLowerCase()}`;
  const say = `${list(namesOf(at))}: ${letter} is never used twice, and no new one is noted as here (${buy}).`;
  return { asks: true, bolts: true, sure: true, say, holes: namesOf(at), buy };
}

/** The file itself says that it is used once. */
function washerOnce(piece: string, word: string, at: readonly HoleNow[]): UsedOnce {
  const say = `${word} under ${list(namesOf(at))}: used once, and no new one is noted as here.`;
  return { ...washerAgain(piece, word, at), asks: true, sure: true, say };
}

/** Whether it goes in again is for whoever looks at it. */
function washerAgain(piece: string, word: string, at: readonly HoleNow[]): UsedOnce {
  const buy = `${piece}-${word.toLowerCase()}`;
  const seals =
    sealsUnder(word) === 'once'
      ? 'seals once: a new one, or the old one flat again'
      : 'a new one, or does the old one do';
  const say = `${word} under ${list(namesOf(at))}: ${seals}?`;
  return { asks: false, bolts: false, sure: false, say, holes: namesOf(at), buy };
}

/** The question for bolts and washers that are known to be used once; null where there is none, or where it was answered. */
export function asksOnce(job: Job, piece: PieceNow, old: readonly UsedOnce[]): Refused | null {
  const asked = old.filter((o) => o.asks);
  if (asked.length === 0 || whyOld(job, piece).length > 0) return null;
  const say = `${asked.map((o) => o.say).join(' ')} Note the new ones, or say why the old ones go in.`;
  const holes = asked.flatMap((o) => o.holes);
  return refuse('used-once', say, { holes, buy: asked.map((o) => o.buy) });
}

/** The reasons that were given on this piece in this round, where such things were asked about. */
export function whyOld(job: Job, { spec, round }: PieceNow): string[] {
  return livingAt(job, spec.key).flatMap((e) => {
    const asked = e.verb === 'in' || e.verb === 'tight' || isPastSealing(e);
    const here = (job.rounds.get(e.id) ?? round) === round;
    return asked && here ? (e.because ?? []) : [];
  });
}

/** What is used once and is back in old, as far as the diary knows: of a piece that goes on, or is on. */
export function backInOld(job: Job, piece: PieceNow): UsedOnce[] {
  const back = piece.holes.filter((h) => h.state === 'in' || h.state === 'tight');
  return [...usedOnce(job, piece, back.map(asFitted)), ...unnotedOnce(job, piece)];
}

/** The gate before the joint stops for it too. */
function isPastSealing({ verb, value }: Entry): boolean {
  return verb === 'seen' && value.startsWith('sealing ');
}

export function onceSaid(old: readonly UsedOnce[]): Warning[] {
  return old.map(({ say }) => ({ code: 'used-once', say }));
}
