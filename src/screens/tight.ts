/** Tight: in its order, pass by pass, at the torque as printed. */
import { printQuantity } from '../bolt/units.ts';
import type { PassSpec, PieceNow } from '../job/types.ts';
import type { Acts } from './act.ts';
import { LOOK, ON, TIGHT } from './enter.ts';
import { litHole } from './lit.ts';
import { at, record, say, stay, toStep } from './moves.ts';
import { noteOf } from './off.ts';
import type { Page } from './page.ts';
import { names, type PassNow, passNow, toFill } from './parts/piece-now.ts';
import { piecePage, shapeOf } from './parts/piece-page.ts';
import { bold, line, wrap } from './parts/text.ts';
import { list, many, ordinal } from './parts/words.ts';
import type { State, Updated } from './state.ts';

export const tightActs = {
  click: (state) => {
    const here = at(state);
    const hole = here ? litHole(here) : null;
    if (!here || hole === null) return say(state, 'Nothing here is left to tighten.');
    const now = passNow(here.piece, here.job.upper.kinds);
    const pass = now?.rest.includes(hole) ? { pass: now.pass.name } : {};
    return record(state, { do: 'tight', piece: here.key, holes: [hole], ...pass });
  },
  pulled: (state) => {
    const here = at(state);
    const hole = here ? litHole(here) : null;
    if (!here || hole === null) return stay(state);
    return record(state, { do: 'state', piece: here.key, hole, state: 'pulled' });
  },
  'to-in': (state) => toStep(state, ON),
} satisfies Acts;

/**
 * After a bolt clicked: the next one, or tight. Between two passes the piece is looked at: the wrench is set
 * anew, and one press too many must not count for the next pass.
 */
export function nextTight(state: State, before: PassNow | null): Updated {
  const here = at(state);
  if (!here) return stay(state);
  const now = passNow(here.piece, here.job.upper.kinds);
  if (now === null) {
    const bad = here.piece.holes.filter((h) => h.trouble !== null);
    const quiet = bad.length === 0 ? null : `Tight but for ${list(names(bad))}.`;
    return toStep({ ...state, quiet }, LOOK);
  }
  const through = before !== null && before.pass.name !== now.pass.name;
  if (!through) return toStep(state, TIGHT);
  return toStep({ ...state, quiet: `${before.pass.name} is through.` }, LOOK);
}

/** `full, 10 N·m`, `angle, 90°`. */
export function sayPass(pass: PassSpec): string {
  const parts = [
    pass.name,
    pass.torque?.quantity ? printQuantity(pass.torque.quantity) : (pass.torque?.text ?? null),
    pass.angle === null ? null : `${pass.angle}\u00b0`,
  ];
  return parts.filter((p) => p !== null && p !== '').join(', ');
}

export function sayPrinted(piece: PieceNow, pass: PassSpec): string {
  const where = pass.torque?.where ?? piece.spec.torque?.where ?? null;
  return where === null || pass.torque === null ? '' : ` (${where})`;
}

export function drawTight(state: State): Page {
  const here = at(state);
  if (!here) return { left: [], middle: () => [] };
  const { piece, job } = here;
  const now = passNow(piece, job.upper.kinds);
  const lit = litHole(here);
  const number = (name: string) => {
    const index = now?.rest.indexOf(name) ?? -1;
    return index < 0 || !now ? '' : ordinal(now.done.length + index + 1);
  };
  return piecePage(
    piece,
    (h) => {
      const shape = shapeOf(h);
      const inPass = shape === 'in' || shape === 'tight';
      return {
        shape: inPass ? (now?.rest.includes(h.name) ? 'in' : 'tight') : shape,
        here: h.name === lit,
        label: number(h.name),
      };
    },
    {
      right: now
        ? line(`tight, pass ${now.number} of ${now.of}: ${sayPass(now.pass)}`)
        : line('tight'),
      under: now ? line(sayPrinted(piece, now.pass).trim()) : [],
      say: now
        ? [
            ...wrap(nextSaid(now, lit), state.columns, { bold: true }),
            ...noteOf(state, lit),
            ...wrap(
              `${now.done.length} of ${now.done.length + now.rest.length} done in this pass.${missing(piece)}`,
              state.columns,
            ),
          ]
        : [line(bold('Nothing is left to tighten.'))],
    },
  );
}

function nextSaid(now: PassNow, lit: string | null): string {
  if (lit === null) return '';
  if (!now.rest.includes(lit)) return `${lit} has had this pass.`;
  const first = now.rest[0];
  return lit === first
    ? `Next: ${lit}, ${sayPass(now.pass)}.`
    : `${lit}. In order it would be ${first}.`;
}

function missing(piece: PieceNow): string {
  const empty = toFill(piece).length;
  return empty === 0 ? '' : ` ${many(empty, 'hole')} still empty.`;
}
