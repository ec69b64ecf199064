/** Which step of a piece opens: the one that has begun, else the piece as it stands. */
import type { Moment, PieceNow, Wish } from '../../model/types.ts';
import { caresOf } from '../../plan/care/care.ts';
import { gateMark, gatesOn, isStopped, toLoosen } from '../../plan/gates/gate-now.ts';
import { mustRead } from '../../plan/known/to-read.ts';
import { toSettle } from '../../plan/piece/piece-now.ts';
import { pulledHole, type WayNow, wayNow } from '../../plan/piece/way.ts';
import { field } from '../kit/field.ts';
import { draftOf, rowDraft } from './drafts.ts';
import { type At, at, requestMark, show, stay, toStep } from './moves.ts';
import type { PieceStep, State, Updated, View } from './state.ts';

export const LOOK: PieceStep = { step: 'look', here: null, typed: '' };
export const OFF: PieceStep = { step: 'off', here: null, typed: '', hand: '' };
export const ON: PieceStep = { step: 'on', here: null, typed: '', hand: '', fresh: false };
export const TIGHT: PieceStep = { step: 'tight', here: null, typed: '' };

export function enterPiece(state: State, key: string): Updated {
  const opened: State = { ...state, view: { screen: 'piece', piece: key, step: LOOK } };
  const here = at(opened);
  return here ? toStep(opened, firstStep(here)) : { state: opened, effects: [] };
}

function firstStep({ job, piece }: At): PieceStep {
  const way = wayNow(job, piece);
  if (way === 'count') return { step: 'off-count' };
  if (way === 'out' && piece.where === 'off') return OFF;
  if (way === 'in' && piece.where === 'on') return ON;
  if (way === 'tight') return TIGHT;
  return LOOK;
}

/** The step in which the row is typed, with what was left half typed. */
export function rowStep(state: State): PieceStep {
  const { view } = state;
  const text = view.screen === 'piece' ? draftOf(state, rowDraft(view.piece)) : null;
  return { step: 'off-row', field: field(text ?? ''), say: null };
}

export function toJob(state: State): Updated {
  return show(state, { screen: 'job', here: null });
}

/** Does the next right thing for a piece. */
export function goWay(state: State, way: WayNow): Updated {
  const here = at(state);
  if (!here) return toJob(state);
  switch (way) {
    case 'row':
      return readFirst(state, 'removal', rowStep(state));
    case 'out':
      return readFirst(state, 'removal', OFF);
    case 'count':
      return toStep(state, { step: 'off-count' });
    case 'remove':
      return readFirst(state, 'removal', { step: 'off-count' });
    case 'settle':
      return toSettleStep(state);
    case 'in':
    case 'fit':
      return goOn(state);
    case 'mend': {
      const hole = pulledHole(here.piece);
      const back = { ...LOOK, here: hole } as PieceStep;
      return hole === null ? stay(state) : toStep(state, { step: 'advice', hole, back });
    }
    case 'tight':
      return toStep(state, TIGHT);
    case 'done':
      return toJob(state);
  }
}

/** To the first hole where the file and what came out differ; where none does, on with the piece. */
export function toSettleStep(state: State): Updated {
  const here = at(state);
  const first = here ? toSettle(here.piece)[0] : undefined;
  // Whoever comes back from a gate has nothing more to settle: the piece as it stands is what is left.
  if (!here || !first) return goOn(toStep(state, LOOK).state);
  return toStep(state, { step: 'settle', here: first.name });
}

/** Putting a piece on: first the gates not passed yet, then what is to be read, then its bolts. */
export function goOn(state: State): Updated {
  const here = at(state);
  if (!here) return stay(state);
  const { job, piece, key } = here;
  const [gate] = gatesOn(job, piece, state.now, state.read);
  if (gate !== undefined) return openGate(state, gate, 'on');
  // The gate of a joint shows the same texts, so they are not shown once more.
  const said = state.read.includes(gateMark(job, 'sealing', piece));
  if (piece.holes.length > 0) return said ? toStep(state, ON) : readFirst(state, 'fitting', ON);
  const wish: Wish = { do: 'on', piece: key };
  if (said || !toBeRead(state, 'fitting')) return requestMark(state, wish);
  return readFirst(state, 'fitting', LOOK);
}

type GateView = Extract<View, { screen: 'gate' }>;

export function openGate(state: State, moment: Moment, goes: GateView['goes']): Updated {
  const here = at(state);
  const piece = moment === 'start' ? null : (here?.key ?? null);
  const base = { screen: 'gate', moment, piece, here: null, ticked: false, goes } as const;
  const opened = show(state, { ...base, under: state.view });
  const job = state.open?.job;
  const rings = job !== undefined && isStopped(job, moment, piece, state.now);
  return rings ? { ...opened, effects: [...opened.effects, { do: 'ring' }] } : opened;
}

/** Shows the cautions for taking off or putting on before `then`: once a sitting, and not when it is half done. */
export function readFirst(state: State, way: 'removal' | 'fitting', then: PieceStep): Updated {
  const here = at(state);
  if (!here) return toStep(state, then);
  if (way === 'removal' && !isBegun(here.piece, way)) {
    const open = toLoosen(here.job, here.piece, state.now, state.read);
    // Who types the row has its bolts out already: what was to be seen to before is only said. Where the piece itself
    // is dangerous the gate opens all the same.
    const cared = caresOf(here.piece.spec).care.length > 0;
    if (open.length > 0 && then.step === 'off-row' && !cared) {
      const said = `Before the first bolt: ${open.map((item) => item.say).join(' ')}`;
      return toStep({ ...state, quiet: said }, then);
    }
    if (open.length > 0) return openGate(state, 'loosening', { off: then });
    // The gate shows the same texts, so they are not shown once more.
    if (state.read.includes(gateMark(here.job, 'loosening', here.piece)))
      return toStep(state, then);
  }
  return toStep(state, toBeRead(state, way) ? { step: 'read', way, then } : then);
}

function isBegun({ where }: PieceNow, way: 'removal' | 'fitting'): boolean {
  return where === (way === 'removal' ? 'off' : 'on');
}

/** Something is to be read before this piece comes off or goes on, and was not in this sitting. */
function toBeRead(state: State, way: 'removal' | 'fitting'): boolean {
  const here = at(state);
  if (!here || isBegun(here.piece, way)) return false;
  const { job, piece, key } = here;
  return !state.read.includes(readMark(key, piece.round, way)) && mustRead(job, piece.spec, way);
}

export function readMark(piece: string, round: number, way: string): string {
  return `${piece} ${round} ${way}`;
}
