/** What the tray, or the heights of the heads, say of the holes of a piece: in lines, with the holes to look at. */

import type { Fit } from '../../bolt/fit/fit.ts';
import { fitOfPiece, kindsIn } from '../../job/fold/fit-of.ts';
import { kindLetters } from '../../job/judge/marks/found.ts';
import { kept } from '../../model/kept.ts';
import type { Job, PieceNow } from '../../model/types.ts';
import { list, many } from '../../model/words.ts';
import { heights, readHeights } from '../../piece/heights.ts';
import { sayKinds, shouldHave } from '../../piece/mixup/count.ts';
import { trayHoles } from '../../piece/mixup/holes.ts';
import { mixup } from '../../piece/mixup/mixup.ts';
import { readLeft } from '../../piece/mixup/read-left.ts';
import type { Mixup } from '../../piece/mixup/types.ts';
import { type Swap, sayWorst, swaps } from '../../piece/swaps.ts';
import type { Typed } from '../../piece/typed.ts';
import { names } from './piece-now.ts';
import { leftOver } from './tray.ts';

/** What lies in the tray; the heights at which the heads stand. */
export type AnswerKind = 'left' | 'heights';

export interface AnswerNow {
  /** The first is what it comes to; each is a paragraph. */
  says: string[];
  /** Holes to be looked at. */
  look: ReadonlySet<string>;
  /** What stands beside a hole on the map, by its name. */
  labels: ReadonlyMap<string, string>;
  /** Bolts that no empty hole takes: `1 S (25 mm)`; null where none are over, or nothing was counted. */
  over: string | null;
}

/** Each kind in each hole, judged once. */
export function fitsOf(job: Job, piece: PieceNow): (kind: string, hole: string) => Fit | null {
  return kept(piece, 'fits', () => fitOfPiece(job, piece));
}

// ---------------------------------------------------------------- the tray

/** `You should have 7 S (25 mm), 1 M (35 mm), 8 bolts in all.`; null when no hole is empty. */
export function shouldSaid(job: Job, piece: PieceNow): string | null {
  return kept(
    piece,
    'should',
    () => shouldHave(trayHoles(piece.holes), job.upper.kinds).say ?? null,
  );
}

/**
 * Which wrong bolt of the piece's own tray would go in unnoticed, worst first; in a sentence, told once when the piece
 * comes off, null when none would.
 */
export function swapsIn(job: Job, piece: PieceNow): { swaps: Swap[]; say: string | null } {
  return kept(piece, 'swaps', () => {
    const holes = piece.holes.map((h) => ({ name: h.name, takes: h.belongs?.kind ?? null }));
    const fitOf = fitsOf(job, piece);
    const all = swaps({ holes, tray: kindsIn(piece), kinds: job.upper.kinds, fitOf });
    return { swaps: all, say: sayWorst(all, holes) };
  });
}

/** So many explanations are read; the ranking has put the likely ones first. */
const MOST = 3;

/** What the tray says of the holes that are full, a paragraph each; where to look comes after it. */
export function traySaid(found: Mixup): string[] {
  const said: string[] = [];
  if (found.count) said.push(found.count.say);
  const [best, ...others] = found.explanations;
  if (!best && !found.count) said.push('What is left is what the empty holes take.');
  for (const [i, e] of [best, ...others].slice(0, MOST).entries()) {
    if (!e) break;
    const lead = i === 0 ? 'Most likely' : 'Or';
    const each = e.holes.map((h) => {
      const where = h.among.length === 1 ? h.among[0] : `One of ${list(h.among)}`;
      return `${where} takes ${h.takes} and holds ${h.holds}. ${h.look}`;
    });
    said.push(`${lead}: ${many(e.wrong, 'hole is', 'holes are')} wrong. ${each.join(' ')}`);
  }
  if (others.length >= MOST || !found.complete) said.push('There are more ways, each less likely.');
  if (found.invisible) said.push(found.invisible);
  return said;
}

/** `2 and 3: Pull one and measure it.`: holes to look at, those together of which the same is said. */
export function looksSaid(check: Mixup['check']): string[] {
  const looks = Map.groupBy(check, ({ look }) => look);
  return [...looks].map(([look, of]) => `${list(of.map(({ hole }) => hole))}: ${look}`);
}

function ofTray(job: Job, piece: PieceNow, left: ReadonlyMap<string, number>): AnswerNow {
  const holes = trayHoles(piece.holes);
  const found = mixup({ holes, left, kinds: job.upper.kinds, fitOf: fitsOf(job, piece) });
  const look = new Set(found.check.map((c) => c.hole));
  // The map shows where to look. Where no explanation names the holes, the count alone does not add up.
  const why = leftOver(piece)?.why ?? null;
  const says = [
    ...traySaid(found),
    ...(why === null ? [] : [why]),
    ...(found.explanations.length > 0 ? [] : looksSaid(found.check)),
  ];
  const over = Object.keys(found.surplus).length > 0;
  return {
    says,
    look,
    labels: new Map(),
    over: over ? sayKinds(found.surplus, job.upper.kinds) : null,
  };
}

// ---------------------------------------------------------------- heights

function ofHeights(job: Job, piece: PieceNow, typed: ReadonlyMap<string, number>): AnswerNow {
  const { kinds } = job.upper;
  const fitOf = fitsOf(job, piece);
  const holes = piece.holes.map(({ name, belongs }) => ({
    name,
    takes: belongs,
    mm: typed.get(name) ?? null,
    expects: belongs ? (fitOf(belongs.kind, name)?.proud ?? null) : null,
  }));
  const found = heights(holes, kinds);
  const says = [
    ...(found.notDown ? [found.notDown.say] : []),
    // Holes whose like stand at several heights share one sentence.
    ...new Set(found.odd.map((o) => o.say)),
  ];
  const judged = typed.size - found.unjudged.length;
  if (says.length === 0 && judged > 0) {
    says.push(judged === 1 ? 'It stands as it should.' : `All ${judged} stand as they should.`);
  }
  if (found.unjudged.length > 0) {
    const which = found.unjudged.length === 1 ? 'has' : 'have';
    says.push(`${list(found.unjudged)} ${which} nothing to be held against.`);
  }
  if (says.length === 0) says.push('No height was typed.');
  return {
    says,
    look: new Set(found.odd.map((o) => o.hole)),
    labels: new Map([...typed].map(([hole, mm]) => [hole, `${mm}`])),
    over: null,
  };
}

// ---------------------------------------------------------------- what was typed

function read<T>(typed: Typed<T>, answer: (value: T) => AnswerNow): AnswerNow | { fault: string } {
  if (typed.ok) return answer(typed.value);
  return { fault: typed.faults.map((f) => f.say).join(' ') };
}

/** The answer, or what is wrong with what was typed. */
export function answerTo(
  job: Job,
  piece: PieceNow,
  about: AnswerKind,
  text: string,
): AnswerNow | { fault: string } {
  return kept(piece, `${about} ${text}`, () =>
    about === 'left'
      ? read(readLeft(text, kindLetters(job)), (left) => ofTray(job, piece, left))
      : read(readHeights(text, names(piece.holes)), (mm) => ofHeights(job, piece, mm)),
  );
}
