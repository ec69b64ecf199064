/** Tight: in its order, pass by pass, at the torque as printed. */
import { printQuantity } from '../../bolt/units.ts';
import type { Job, PassSpec, PieceNow, Wish } from '../../model/types.ts';
import type { Acts } from '../base/act.ts';
import { LOOK, ON, TIGHT } from '../base/enter.ts';
import { litHole } from '../base/lit.ts';
import { type At, at, holeNamed, record, say, stay, toStep } from '../base/moves.ts';
import type { Page } from '../base/page.ts';
import { piecePage, shapeOf } from '../base/piece-page.ts';
import type { State, Updated } from '../base/state.ts';
import { corrected } from '../kit/both.ts';
import { bold, type Line, line, spread, width, wrap } from '../kit/text.ts';
import { list, many, ordinal } from '../kit/words.ts';
import { howFar } from '../now/how-far.ts';
import { knownRows } from '../now/known-rows.ts';
import { type OnWrench, onWrench } from '../now/on-wrench.ts';
import { passFor } from '../now/pass-of.ts';
import { layoutOf, names, type PassNow, passNow, tipsOf, toFill } from '../now/piece-now.ts';
import { besideTorque, ordered, passSaid, turnSaid } from '../now/say-tight.ts';
import { hurrySaid } from '../now/sealant.ts';
import { torqueRows } from '../now/tight-figures.ts';
import { noteOf } from './off.ts';

export const tightActs = {
  click: (state) => {
    const here = at(state);
    const hole = here ? litHole(here) : null;
    if (!here || hole === null) return say(state, 'Nothing here is left to tighten.');
    const { kinds } = here.job.upper;
    const now = passNow(here.piece, kinds);
    const wish: Wish = { do: 'tight', piece: here.key, holes: [hole] };
    if (!now?.rest.includes(hole)) return record(state, wish);
    const pass = now.pass.name;
    // A hole with a torque of its own was set to that, and not to the one of the piece.
    const own = passFor(here.piece, kinds, now.pass, hole).torque?.quantity;
    const set = own && now.pass.torque?.quantity !== own ? { set: printQuantity(own) } : {};
    return record(state, { ...wish, pass, ...set });
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
  if (!now) {
    return piecePage(piece, (h) => ({ here: h.name === lit }), {
      right: line('tight'),
      say: [line(bold('Nothing is left to tighten.'))],
    });
  }
  const pass = passFor(piece, job.upper.kinds, now.pass, lit);
  const before = lastDone(here, now);
  const set = settingOf(state, pass)?.set ?? null;
  const where = sayPrinted(piece, pass).trim();
  const both = [where, set ?? ''].filter((t) => t !== '');
  const fits = width(both.join('   ')) <= state.columns;
  const under = fits ? both : [where];
  const number = (name: string) => {
    const index = now.rest.indexOf(name);
    return index < 0 ? '' : ordinal(now.done.length + index + 1);
  };
  return piecePage(
    piece,
    (h) => {
      const shape = shapeOf(h);
      const inPass = shape === 'in' || shape === 'tight';
      return {
        shape: inPass ? (now.rest.includes(h.name) ? 'in' : 'tight') : shape,
        here: h.name === lit,
        label: number(h.name),
      };
    },
    {
      right: line(`tight, pass ${now.number} of ${now.of}: ${sayPass(pass)}`),
      under: line(under.join('   ')),
      say: tightSaid(state, here, { now, pass, lit, before, set: fits ? null : set }),
      most: MOST,
    },
    before !== null && lit !== null && lit === now.rest[0] ? { from: before, to: lit } : null,
  );
}

/** Lines that may be said here where the screen is high enough: cautions are not cut for the map. */
const MOST = 9;

function settingOf(state: State, pass: PassSpec): OnWrench | null {
  const quantity = pass.torque?.quantity;
  return quantity ? onWrench(quantity, state.wrenches) : null;
}

/** The hole that this pass came from: the last that was done in it, where one was done alone. */
function lastDone({ job, key }: At, now: PassNow): string | null {
  const last = job.entries.findLast(
    (e) => e.piece === key && e.verb === 'tight' && job.living.has(e.id),
  );
  const hole = last?.value === now.pass.name && last.hole?.length === 1 ? last.hole[0] : undefined;
  return hole !== undefined && now.done.includes(hole) ? hole : null;
}

interface Turn {
  now: PassNow;
  pass: PassSpec;
  lit: string | null;
  before: string | null;
  /** What to set, where there is no room for it at the head. */
  set: string | null;
}

function tightSaid(state: State, { job, piece }: At, turn: Turn): Line[] {
  const { now, pass, lit } = turn;
  const { columns } = state;
  const hole = holeNamed(piece, lit);
  const kind = job.upper.kinds.get(hole?.holds?.kind ?? hole?.belongs?.kind ?? '');
  const quantity = pass.torque?.quantity;
  const figures = torqueRows(job, piece, pass, lit);
  const wrong = figures.some((f) => f.printed !== null);
  const on = quantity ? onWrench(quantity, state.wrenches, wrong) : null;
  const texts = [
    ...ordered(piece, tipsOf(piece).tighten),
    on?.converted ?? null,
    passSaid(pass),
    on?.off ?? null,
    ...(lit === null ? [] : besideTorque(job, piece, lit, pass)),
  ].filter((t) => t !== null);
  const done = `${now.done.length} of ${now.done.length + now.rest.length} done in this pass`;
  const next = nextSaid(piece, turn);
  const first = line(bold(next));
  const beside = width(first) + width(done) + 2 <= columns;
  return [
    ...(beside
      ? [spread(first, line(done), columns)]
      : [...wrap(next, columns, { bold: true }), line(`${done}.`)]),
    ...wrap(hurrySaid(job, piece, state.now), columns, { bold: true }),
    ...wrap(turnSaid(kind) ?? '', columns, { bold: true }),
    ...wrap(turn.set ?? '', columns, { bold: true }),
    ...corrected(figures, columns),
    ...wrap(orderSaid(job, piece), columns),
    ...texts.flatMap((t) => wrap(t, columns)),
    ...noteOf(state, lit),
    ...wrap(missing(piece), columns),
  ];
}

/** The numbers in the picture are the order itself: which one was printed stands where all is that is known. */
function orderSaid(job: Job, { spec }: PieceNow): string {
  const row = knownRows(job, { piece: spec.key }).find((r) => r.figure?.what === 'sequence');
  return row && row.printed !== null ? 'The order is the true one here, not the printed one.' : '';
}

function nextSaid(piece: PieceNow, { now, lit, before }: Turn): string {
  if (lit === null) return '';
  if (!now.rest.includes(lit)) return `${lit} has had this pass.`;
  const first = now.rest[0];
  if (lit !== first) return `${lit}. In order it would be ${first}.`;
  if (before === null) return `Next: ${lit}, to begin with.`;
  return `Next: ${[lit, howFar(layoutOf(piece), before, lit)].filter((t) => t !== null).join(', ')}.`;
}

function missing(piece: PieceNow): string {
  const empty = toFill(piece).length;
  return empty === 0 ? '' : `${many(empty, 'hole')} still empty.`;
}
