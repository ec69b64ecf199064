/** Every way of filling the holes of a small piece, tried one by one, against what is computed. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { mixup } from '../../../src/piece/mixup/mixup.ts';
import type { Explanation, TrayHole } from '../../../src/piece/mixup/types.ts';
import { hole, kindsOf } from './make.ts';

/** B and C are too near each other for a height to tell them apart. */
const LENGTHS: Record<string, number> = { A: 20, B: 30, C: 31, D: 50 };
/** Heights nearer than this are one height, mm. */
const NEAR = 2;
const KINDS = kindsOf(
  Object.fromEntries(Object.entries(LENGTHS).map(([k, mm]) => [k, `M6x${mm} flange`])),
);
const LETTERS = [...KINDS.keys()];
/** A right bolt stands so high in every hole of these pieces, mm. */
const OWN = 35;

interface Piece {
  full: { name: string; takes: string; height: number | null }[];
  empty: string[];
  left: Map<string, number>;
}

const letter = fc.constantFrom(...LETTERS);
/** Bolts put back at random, what is left in the tray, and the heights of some heads where that is wanted. */
const pieces = (heights: boolean) =>
  fc
    .record({
      takes: fc.array(letter, { minLength: 1, maxLength: 6 }),
      empty: fc.array(letter, { maxLength: 4 }),
      holds: fc.array(letter, { minLength: 6, maxLength: 6 }),
      measured: fc.array(fc.boolean(), { minLength: 6, maxLength: 6 }),
      stray: fc.boolean(),
    })
    .map(({ takes, empty, holds, measured, stray }): Piece => {
      const left = new Map<string, number>();
      const add = (k: string, n: number) => left.set(k, (left.get(k) ?? 0) + n);
      for (const k of [...takes, ...empty]) add(k, 1);
      const there = (k: string) => (left.get(k) ?? 0) > 0;
      // Taken out of the heap one after the other, so that every bolt is in one place only.
      const real = takes.map((own, i) => {
        const wanted = stray ? (holds[i] ?? own) : own;
        const k = there(wanted) ? wanted : (LETTERS.find(there) ?? own);
        add(k, -1);
        return k;
      });
      const stands = (i: number) =>
        OWN + (LENGTHS[real[i] ?? ''] ?? 0) - (LENGTHS[takes[i] ?? ''] ?? 0);
      return {
        full: takes.map((own, i) => ({
          ...{ name: `${i + 1}`, takes: own },
          height: heights && measured[i] ? stands(i) : null,
        })),
        empty,
        left: new Map([...left].filter(([, n]) => n > 0)),
      };
    });

function holesOf(piece: Piece): TrayHole[] {
  const full = piece.full.map((h) => ({ ...hole(h.name, h.takes, 'in'), proud: h.height }));
  return [...full, ...piece.empty.map((k, i) => hole(`${full.length + i + 1}`, k, 'out'))];
}

/** Three heads measured and none as it should be: the piece may not be down, and heights then say nothing. */
function mayNotBeDown(piece: Piece): boolean {
  const heights = piece.full.filter((h) => h.height !== null);
  return heights.length > 2 && heights.every((h) => Math.abs((h.height ?? 0) - OWN) > NEAR);
}

const ask = (piece: Piece) =>
  mixup({
    ...{ holes: holesOf(piece), left: piece.left, kinds: KINDS },
    fitOf: () => ({
      ...{ verdict: 'right', sure: true, engagement: null, bottomsBy: null, sticksOut: null },
      ...{ proud: OWN, byLength: null, measure: [], why: '' },
    }),
  });

const may = (h: Piece['full'][number], kind: string) =>
  h.height === null ||
  Math.abs(h.height - OWN - (LENGTHS[kind] ?? 0) + (LENGTHS[h.takes] ?? 0)) <= NEAR;
const isSure = (h: Piece['full'][number]) => !may(h, h.takes);

/** For each kind how many more lie there than belong there. */
function overOf(piece: Piece): Map<string, number> {
  const over = new Map(LETTERS.map((k) => [k, piece.left.get(k) ?? 0]));
  for (const k of piece.empty) over.set(k, (over.get(k) ?? 0) - 1);
  return over;
}

/** Wrong holes by their place; the rest is right. */
type Wrong = ReadonlyMap<number, string>;

function explains(piece: Piece, wrong: Wrong): boolean {
  const over = overOf(piece);
  for (const [i, holds] of wrong) {
    const takes = piece.full[i]?.takes ?? '';
    over.set(takes, (over.get(takes) ?? 0) - 1);
    over.set(holds, (over.get(holds) ?? 0) + 1);
  }
  const agrees = piece.full.every((h, i) => may(h, wrong.get(i) ?? h.takes));
  return agrees && [...over.values()].every((n) => n === 0);
}

/** Every way to fill the holes. */
function everyWay(piece: Piece, at = 0): Wrong[] {
  const here = piece.full[at];
  if (!here) return [new Map()];
  return everyWay(piece, at + 1).flatMap((rest) =>
    LETTERS.map((k) => (k === here.takes ? rest : new Map([...rest, [at, k] as const]))),
  );
}

function parts(wrong: Wrong): Wrong[] {
  const all = [...wrong];
  return Array.from(
    { length: 2 ** all.length - 1 },
    (_, bits) => new Map(all.filter((_, i) => (bits & (1 << i)) !== 0)),
  );
}

/** Wrong holes beyond those that their height shows. */
function bound(piece: Piece, wrong: Wrong): number {
  const over = overOf(piece);
  for (const [i, holds] of wrong) {
    const h = piece.full[i];
    if (!h || !isSure(h)) continue;
    over.set(h.takes, (over.get(h.takes) ?? 0) - 1);
    over.set(holds, (over.get(holds) ?? 0) + 1);
  }
  const D = [...over.values()].reduce((sum, n) => sum + Math.max(0, n), 0);
  return Math.max(D, 3) + piece.full.filter(isSure).length;
}

/** Irreducible ways, those that differ only in which of the like holes is wrong together; with every hole of each. */
function brute(piece: Piece): Map<string, Map<string, string[]>> {
  const found = new Map<string, Map<string, string[]>>();
  for (const wrong of everyWay(piece)) {
    if (wrong.size === 0 || !explains(piece, wrong) || wrong.size > bound(piece, wrong)) continue;
    if (parts(wrong).some((part) => explains(piece, part))) continue;
    const words = [...wrong].map(([i, holds]) => {
      const h = piece.full[i];
      return {
        name: h?.name ?? '',
        word: `${h?.takes}<${holds}${h && isSure(h) ? `@${h.name}` : ''}`,
      };
    });
    const key = words
      .map((w) => w.word)
      .sort()
      .join(' ');
    const among = found.get(key) ?? new Map<string, string[]>();
    for (const { word, name } of words) {
      among.set(word, [...new Set([...(among.get(word) ?? []), name])].sort());
    }
    found.set(key, among);
  }
  return found;
}

function computed(piece: Piece, list: readonly Explanation[]): Map<string, Map<string, string[]>> {
  const sure = new Set(piece.full.filter(isSure).map((h) => h.name));
  return new Map(
    list.map((e) => {
      const words = e.holes.map((h) => {
        const only = h.among.length === 1 && sure.has(h.among[0] ?? '') ? `@${h.among[0]}` : '';
        return { word: `${h.takes}<${h.holds}${only}`, among: [...h.among].sort() };
      });
      const key = words
        .map((w) => w.word)
        .sort()
        .join(' ');
      return [key, new Map(words.map((w) => [w.word, w.among]))];
    }),
  );
}

describe('explanations of a tray, against every way to fill the holes', () => {
  test('each listed one explains it, each irreducible one is listed, and every hole that it can be is named', () => {
    fc.assert(
      fc.property(pieces(false), (piece) => {
        const answer = ask(piece);
        expect(computed(piece, answer.explanations)).toEqual(brute(piece));
        expect(answer.complete).toBe(true);
      }),
      { numRuns: 300 },
    );
  });

  test('with some heads measured too', () => {
    fc.assert(
      fc.property(pieces(true), (piece) => {
        fc.pre(!mayNotBeDown(piece));
        expect(computed(piece, ask(piece).explanations)).toEqual(brute(piece));
      }),
      { numRuns: 300 },
    );
  });

  test('bolts that were only mixed up are always explained, or the tray shows nothing', () => {
    fc.assert(
      fc.property(pieces(true), (piece) => {
        fc.pre(!mayNotBeDown(piece));
        const { count, surplus, explanations } = ask(piece);
        expect(count).toBeNull();
        const shown = Object.keys(surplus).length > 0 || piece.full.some(isSure);
        expect(explanations.length > 0).toBe(shown);
      }),
    );
  });

  test('any tray at all: what cannot be explained is said, what is explained adds up', () => {
    const anyTray = fc.tuple(pieces(false), fc.dictionary(letter, fc.nat(3)));
    fc.assert(
      fc.property(anyTray, ([piece, left]) => {
        const other = { ...piece, left: new Map(Object.entries(left)) };
        const answer = ask(other);
        expect(computed(other, answer.explanations)).toEqual(brute(other));
        const nothing = Object.keys({ ...answer.surplus, ...answer.missing }).length === 0;
        expect(answer.count !== null).toBe(!nothing && answer.explanations.length === 0);
      }),
      { numRuns: 200 },
    );
  });

  test('the order of holes, of kinds and of the tray changes nothing', () => {
    fc.assert(
      fc.property(pieces(true), fc.infiniteStream(fc.nat(999)), (piece, stream) => {
        const shuffled = <T>(items: T[]): T[] =>
          items
            .map((item) => ({ item, by: Number(stream.next().value) }))
            .sort((a, b) => a.by - b.by)
            .map(({ item }) => item);
        const input = { holes: holesOf(piece), left: piece.left, kinds: KINDS };
        const other = {
          holes: shuffled(input.holes),
          left: new Map(shuffled([...piece.left])),
          kinds: new Map(shuffled([...KINDS])),
        };
        expect(mixup(other)).toEqual(mixup(input));
      }),
    );
  });

  test('fewest wrong holes first, then the hardest to see, then the smallest difference in length', () => {
    fc.assert(
      fc.property(pieces(false), (piece) => {
        const list = ask(piece).explanations;
        const ranks = list.map((e) => [e.wrong, e.hard, e.difference] as const);
        const sorted = [...ranks].sort((a, b) => a[0] - b[0] || a[1] - b[1] || a[2] - b[2]);
        expect(ranks).toEqual(sorted);
      }),
    );
  });
});
