/** What is said while tightening: the next bolt, what to set, what stands beside the torque. */
import { printQuantity } from '../../bolt/read/units.ts';
import { hasNoFigure, NO_TORQUE } from '../../job/fold/no-figure.ts';
import type { OtherFigure } from '../../job/fold/other-figure.ts';
import { sayTrouble } from '../../job/fold/say-hole.ts';
import type { Job, PassSpec, PieceNow } from '../../model/types.ts';
import { wheelOffSaid } from '../../plan/care/still-off.ts';
import { knownRows } from '../../plan/known/rows.ts';
import { torqueRows } from '../../plan/known/torque-rows.ts';
import { howFar } from '../../plan/piece/how-far.ts';
import { type OnWrench, onWrench } from '../../plan/piece/on-wrench.ts';
import { layoutOf, type PassNow, tipsOf, toFill } from '../../plan/piece/piece-now.ts';
import { besideTorque, ordered, passSaid, turnSaid } from '../../plan/piece/say-tight.ts';
import { leftOver } from '../../plan/piece/tray.ts';
import { hurrySaid } from '../../plan/seal/sealant.ts';
import { holeNamed } from '../base/moves.ts';
import { corrected } from '../kit/both.ts';
import { bold, type Line, line, spread, width, wrap } from '../kit/text.ts';
import { many } from '../kit/words.ts';
import { noteOf } from './said.ts';
import type { OnHoles } from './step.ts';

export interface OnTight extends OnHoles<'tight'> {
  /** Null where nothing is left to tighten. */
  now: PassNow | null;
  /** Then: what was set to another figure, and is set again. */
  again: readonly OtherFigure[];
  /** This pass for the lit hole, which may have a torque of its own. */
  pass: PassSpec | null;
  /** What the torque of this pass would break at the lit hole, while nobody gave a reason for it; null: nothing. */
  breaks: string | null;
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

/** No wrench is set to what would break something. */
export function settingOf({ state, breaks }: OnTight, pass: PassSpec): OnWrench | null {
  const quantity = pass.torque?.quantity;
  return quantity && breaks === null ? onWrench(quantity, state.wrenches) : null;
}

interface Turn {
  now: PassNow;
  pass: PassSpec;
  before: string | null;
  /** What to set, where there is no room for it at the head. */
  set: string | null;
}

export function tightSaid(here: OnTight, turn: Turn): Line[] {
  const { state, job, piece, lit, breaks } = here;
  const { now, pass } = turn;
  const { columns } = state;
  const hole = holeNamed(piece, lit);
  const kind = job.upper.kinds.get(hole?.holds?.kind ?? hole?.belongs?.kind ?? '');
  const quantity = pass.torque?.quantity;
  const figures = torqueRows(job, piece, pass, lit);
  const wrong = figures.some((f) => f.printed !== null);
  const on = quantity && breaks === null ? onWrench(quantity, state.wrenches, wrong) : null;
  const texts = [
    ...ordered(piece, tipsOf(piece, job.upper.kinds).tighten),
    on?.converted ?? null,
    passSaid(pass),
    on?.off ?? null,
    ...(lit === null ? [] : besideTorque(job, piece, lit, pass, breaks !== null)),
  ].filter((t) => t !== null);
  const done = `${now.done.length} of ${now.done.length + now.rest.length} done in this pass`;
  const next = nextSaid(here, turn);
  const first = line(bold(next));
  const beside = width(first) + width(done) + 2 <= columns;
  const stop = breaks === null ? '' : `STOP before it is turned. ${breaks}`;
  return [
    ...wrap(stop, columns, { colour: 'red', bold: true }),
    ...(beside
      ? [spread(first, line(done), columns)]
      : [...wrap(next, columns, { bold: true }), line(`${done}.`)]),
    ...wrap(hurrySaid(job, piece, state.now), columns, { bold: true }),
    ...wrap(turnSaid(kind) ?? '', columns, { bold: true }),
    ...wrap(turn.set ?? '', columns, { bold: true }),
    ...wrap(wheelOffSaid(job, piece) ?? '', columns, { bold: true }),
    ...wrap((now.number === 1 && leftOver(piece)?.say) || '', columns, { bold: true }),
    ...wrap(unknownSaid(here, pass), columns, { bold: true }),
    ...corrected(figures, columns),
    ...wrap(orderSaid(job, piece), columns),
    ...texts.flatMap((t) => wrap(t, columns)),
    ...noteOf(here, lit, columns),
    ...wrap(missing(piece), columns),
  ];
}

function unknownSaid({ job, piece, lit }: OnTight, pass: PassSpec): string {
  const unknown = lit !== null && hasNoFigure(piece.spec, job.upper.kinds, lit);
  return unknown && pass.name !== 'snug' ? NO_TORQUE : '';
}

/** Only that it is not the printed order: the picture has the order itself, the page of what is known has both. */
function orderSaid(job: Job, { spec }: PieceNow): string {
  const row = knownRows(job, { piece: spec.key }).find((r) => r.figure?.what === 'sequence');
  return row && row.printed !== null ? 'The order is the true one here, not the printed one.' : '';
}

function nextSaid({ piece, lit }: OnTight, { now, before }: Turn): string {
  if (lit === null) return '';
  const trouble = holeNamed(piece, lit)?.trouble;
  if (trouble) return `${lit}: ${sayTrouble(trouble)}. Mend it first: m.`;
  if (now.done.includes(lit)) return `${lit} has had this pass.`;
  if (holeNamed(piece, lit)?.state === 'out')
    return `${lit} is empty. Its bolt goes in first: Tab.`;
  if (!now.rest.includes(lit)) return `${lit} has no turn in this pass.`;
  const first = now.rest[0];
  if (lit !== first) return `${lit}. In order it would be ${first}.`;
  if (before === null) return `Next: ${lit}, to begin with.`;
  return `Next: ${[lit, howFar(layoutOf(piece), before, lit)].filter((t) => t !== null).join(', ')}.`;
}

function missing(piece: PieceNow): string {
  const empty = toFill(piece).length;
  return empty === 0 ? '' : `${many(empty, 'hole')} still empty.`;
}
