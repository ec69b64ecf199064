/** What comes on the list by itself: whatever is used once at a piece that comes off, and what its joint asks for. */
import { sealsUnder } from '../../bolt/fit/seals.ts';
import { isUsedOnce, turnedByAngle } from '../../job/fold/once.ts';
import { keySlug } from '../../model/slug.ts';
import type { BuySpec, Job, Kind, PieceNow } from '../../model/types.ts';
import { sealsNamed } from '../../piece/seals.ts';
import { spoken } from '../order/relations.ts';
import { type Consumable, consumablesIn } from '../seal/joint.ts';

export interface Itself extends BuySpec {
  /** Why it is on the list. */
  why: string;
  /** A bolt or part known to be used once holds its piece up; what was only read out of a text does not. */
  sure: boolean;
  /** It is only named, or may well do again: whether there is to be a new one is a question. */
  ask: boolean;
}

/** `pieces` are those that come off and are not back; `listed` is what the file lists already. */
export function itselfOf(
  job: Job,
  pieces: readonly PieceNow[],
  listed: readonly BuySpec[],
): Itself[] {
  const byPiece = new Map<string, BuySpec[]>();
  for (const buy of listed) {
    for (const key of new Set(buy.for.map((step) => spoken(step).split(' ')[0] ?? ''))) {
      byPiece.set(key, [...(byPiece.get(key) ?? []), buy]);
    }
  }
  const own = pieces.flatMap((piece) => {
    const here = byPiece.get(piece.spec.key) ?? [];
    const said = (word: string) => here.some((buy) => speaksOf(buy, word));
    return [
      ...usedBolts(piece, job.upper.kinds, said),
      ...turnedBolts(job, piece, said),
      ...sealingWashers(piece, said),
      ...seals(piece, said),
    ];
  });
  return [...own, ...consumables(job, pieces, listed)];
}

function speaksOf(buy: BuySpec, word: string): boolean {
  const plain = (text: string) => text.toLowerCase().replaceAll('×', 'x');
  return `${plain(buy.key)} ${plain(buy.what)}`.includes(plain(word));
}

function counted<T>(items: readonly T[]): Map<T, number> {
  const counts = new Map<T, number>();
  for (const item of items) counts.set(item, (counts.get(item) ?? 0) + 1);
  return counts;
}

function row(piece: PieceNow, tail: string, what: string, count: number | null): BuySpec {
  return {
    key: `${piece.spec.key}-${keySlug(tail)}`,
    what,
    price: null,
    count: count === null ? null : `${count}`,
    from: null,
    once: true,
    for: [`${piece.spec.key} on`],
    note: null,
  };
}

function usedBolts(
  piece: PieceNow,
  kinds: ReadonlyMap<string, Kind>,
  said: (word: string) => boolean,
): Itself[] {
  const used = piece.holes.flatMap(({ name, belongs }) =>
    belongs && isUsedOnce(piece, name, kinds.get(belongs.kind)) ? belongs.kind : [],
  );
  if (used.length === 0) return [];
  return [...counted(used)].flatMap(([letter, count]) => {
    const kind = kinds.get(letter);
    if (!kind || said(kind.text.split(/[\s,]/)[0] || letter)) return [];
    const what = kind.text === '' ? `bolt ${letter}` : kind.text;
    const why = `used once, comes off with ${piece.spec.name}`;
    return [{ ...row(piece, letter, what, count), why, sure: true, ask: false }];
  });
}

/** Bolts that are turned by angle: whether they are used once only the manual says. */
function turnedBolts(job: Job, piece: PieceNow, said: (word: string) => boolean): Itself[] {
  const at = turnedByAngle(job, piece, piece.holes);
  if (at.length === 0 || said('bolt')) return [];
  const texts = at.flatMap((h) => job.upper.kinds.get(h.belongs?.kind ?? '')?.text || []);
  const what = ['bolts', ...new Set(texts)].join(' ');
  const why = `turned by angle at ${piece.spec.name}, often used once: does the manual ask for new ones?`;
  return [{ ...row(piece, 'bolts', what, at.length), why, sure: false, ask: true }];
}

function sealingWashers(piece: PieceNow, said: (word: string) => boolean): Itself[] {
  const under = piece.holes.flatMap((h) => h.belongs?.with ?? []);
  if (under.length === 0) return [];
  return [...counted(under)].flatMap(([word, count]) => {
    const seals = sealsUnder(word);
    if (seals === null || said(word)) return [];
    const what = /washer|ring/i.test(word) ? word : `${word} washer`;
    const why = `seals once, under a head of ${piece.spec.name}`;
    return [{ ...row(piece, word, what, count), why, sure: false, ask: seals === 'maybe' }];
  });
}

/** What joint, loose parts or the name of the piece call a seal or a gasket; asked where nobody says it is to be new. */
function seals(piece: PieceNow, said: (word: string) => boolean): Itself[] {
  return sealsNamed(piece.spec).flatMap(({ what, why, ask }) => {
    if (said(what.split(' ').at(-1) ?? what)) return [];
    const asks = ask ? `${why}: a new one, or does the old one do?` : why;
    return [{ ...row(piece, what, what, null), why: asks, sure: false, ask }];
  });
}

/** It takes the stuff away, or is about what is left of it. */
const AWAY = /\b(?:old|off|away|remove|clean|scrape|wipe|peel|rest)\b/i;

/** What is open of the work while a piece is off, as far as it puts something on. */
function toDoWhileOff(job: Job, { spec }: PieceNow): string[] {
  return [...job.tasks.values()].flatMap(({ spec: task, done }) => {
    const here = task.while.some((step) => spoken(step) === `${spec.key} off`);
    const puts = task.verb === 'do' && done === null && !AWAY.test(task.say.text);
    return here && puts ? [task.say.text] : [];
  });
}

/** Tubes and tins that the work takes and nobody noted as there: out of a drawer, or out of the shop. */
export function isStuff(buy: { what: string; why: string | null; once: boolean }): boolean {
  return buy.why !== null && !buy.once && consumablesIn([buy.what]).length > 0;
}

/** One tube serves all pieces. */
function consumables(job: Job, pieces: readonly PieceNow[], listed: readonly BuySpec[]): Itself[] {
  const found = new Map<string, { consumable: Consumable; pieces: PieceNow[] }>();
  for (const piece of pieces) {
    const kinds = new Set(piece.holes.flatMap((h) => h.belongs?.kind ?? []));
    const notes = [...kinds].flatMap((letter) => job.upper.kinds.get(letter)?.note ?? []);
    const own = [...piece.spec.holes.values()].flatMap((h) => [h.note?.text, h.torque?.text]);
    const texts = [
      ...piece.spec.joint.flatMap(({ text }) => text.split(';')),
      ...notes,
      ...[piece.spec.torque?.text, ...own].filter((text) => text !== undefined),
      ...toDoWhileOff(job, piece),
    ];
    for (const consumable of consumablesIn(texts)) {
      const { what, grade } = consumable;
      const key = grade === null ? what : `${what}-${grade}`;
      const there = found.get(key) ?? { consumable, pieces: [] };
      there.pieces.push(piece);
      found.set(key, there);
    }
  }
  return [...found].flatMap(([key, { consumable, pieces: at }]) => {
    const { what, grade } = consumable;
    if (listed.some((buy) => speaksOf(buy, what))) return [];
    return [
      {
        key,
        what: grade === null ? what : `${what}, ${grade} strength`,
        price: null,
        count: null,
        from: null,
        once: false,
        for: at.map((piece) => `${piece.spec.key} on`),
        note: null,
        why: `the joint of ${at.map((piece) => piece.spec.name).join(', ')} takes it`,
        sure: false,
        ask: false,
      },
    ];
  });
}
