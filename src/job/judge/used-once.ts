/** What is used once and would go back in old: told where it goes in and where it is tightened. */
import { sealsUnder } from '../../bolt/seals.ts';
import type {
  BuySpec,
  Entry,
  HoleNow,
  Job,
  Kind,
  PieceNow,
  RowItem,
  Warning,
} from '../../model/types.ts';
import { list } from '../../model/words.ts';
import { isFresh, isNoted } from './inside.ts';
import { names, type Refused, refuse } from './parts.ts';

export interface UsedOnce {
  /** A bolt of a kind that is `once`: it has to be said why the old one goes in. All else is told. */
  bolts: boolean;
  say: string;
  holes: string[];
  /** Its name on the list of what to get. */
  buy: string;
}

/** Of the bolts that go into these holes, or are in them. Empty where new ones are noted as here for this round. */
export function usedOnce(
  job: Job,
  piece: PieceNow,
  holes: readonly HoleNow[],
  items: readonly (RowItem | null)[],
): UsedOnce[] {
  const { key } = piece.spec;
  const own = [...job.upper.buys.values()].filter((buy) => isFor(buy, key));
  const fresh = (words: readonly string[]) =>
    own.some((buy) => words.some((word) => speaks(buy, word)) && isFresh(job, key, buy));
  const bolts = new Map<string, HoleNow[]>();
  const under = new Map<string, HoleNow[]>();
  for (const [i, hole] of holes.entries()) {
    const item = items[i];
    if (!item) continue;
    if (job.upper.kinds.get(item.kind)?.once) add(bolts, item.kind, hole);
    for (const word of item.with) if (sealsUnder(word) !== null) add(under, word, hole);
  }
  return [
    ...[...bolts].flatMap(([letter, at]) => {
      const kind = job.upper.kinds.get(letter);
      return !kind || fresh(wordsOf(kind)) ? [] : [boltSaid(key, kind, at)];
    }),
    ...[...under].flatMap(([word, at]) => (fresh([word]) ? [] : [washerSaid(key, word, at)])),
  ];
}

/** Seals and gaskets that the list says are used once, and that nobody noted: told before the first bolt. */
export function unnotedOnce(job: Job, piece: PieceNow): UsedOnce[] {
  const { key } = piece.spec;
  const kinds = [...new Set(piece.holes.flatMap((h) => h.belongs?.kind ?? []))];
  const bolts = kinds.flatMap((letter) => job.upper.kinds.get(letter) ?? []).flatMap(wordsOf);
  const under = piece.holes.flatMap((h) => h.belongs?.with ?? []);
  return [...job.upper.buys.values()]
    .filter((buy) => buy.once && isFor(buy, key) && !isNoted(job, buy.key))
    .filter((buy) => ![...bolts, ...under].some((word) => speaks(buy, word)))
    .map(({ key: buy, what }) => {
      const say = `${what}: used once, and no new one is noted as here (${buy}).`;
      return { bolts: false, say, holes: [], buy };
    });
}

function add<T>(map: Map<string, T[]>, key: string, value: T): void {
  map.set(key, [...(map.get(key) ?? []), value]);
}

function isFor({ for: steps }: BuySpec, piece: string): boolean {
  return steps.some((step) => {
    const said = step.trim().replace(/\s+/g, ' ');
    return said === piece || said === `${piece} on`;
  });
}

function speaks(buy: BuySpec, word: string): boolean {
  const plain = (text: string) => text.toLowerCase().replaceAll('×', 'x');
  return `${plain(buy.key)} ${plain(buy.what)}`.includes(plain(word));
}

/** By its size, or by its letter at the end of a key that the program made. */
function wordsOf(kind: Kind): string[] {
  return [kind.text.split(/[\s,]/)[0] || kind.letter];
}

function boltSaid(piece: string, { letter }: Kind, at: readonly HoleNow[]): UsedOnce {
  const buy = `${piece}-${letter.toLowerCase()}`;
  const say = `${list(names(at))}: ${letter} is never used twice, and no new one is noted as here (${buy}).`;
  return { bolts: true, say, holes: names(at), buy };
}

function washerSaid(piece: string, word: string, at: readonly HoleNow[]): UsedOnce {
  const buy = `${piece}-${word.toLowerCase()}`;
  const seals =
    sealsUnder(word) === 'once'
      ? 'seals once: a new one, or the old one flat again'
      : 'a new one, or does the old one do';
  return {
    bolts: false,
    say: `${word} under ${list(names(at))}: ${seals}?`,
    holes: names(at),
    buy,
  };
}

/** The question for bolts; null where there is none, or where it was answered on this piece in this round. */
export function asksOnce(
  job: Job,
  { spec, round }: PieceNow,
  old: readonly UsedOnce[],
): Refused | null {
  const bolts = old.filter((o) => o.bolts);
  const answered = job.entries.some(
    (e) =>
      (e.verb === 'in' || e.verb === 'tight' || isPastSealing(e)) &&
      e.piece === spec.key &&
      e.because !== undefined &&
      job.living.has(e.id) &&
      (job.rounds.get(e.id) ?? round) === round,
  );
  if (bolts.length === 0 || answered) return null;
  const say = `${bolts.map((o) => o.say).join(' ')} Note the new ones, or say why the old ones go in.`;
  const holes = bolts.flatMap((o) => o.holes);
  return refuse('used-once', say, { holes, buy: bolts.map((o) => o.buy) });
}

/** The gate before the joint stops for it too. */
function isPastSealing({ verb, value }: Entry): boolean {
  return verb === 'seen' && value.startsWith('sealing ');
}

export function onceSaid(old: readonly UsedOnce[]): Warning[] {
  return old.map(({ say }) => ({ code: 'used-once', say }));
}
