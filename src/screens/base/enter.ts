/** Where one comes to in a piece: straight into a step that has begun, else to the piece as it stands. */
import type { Moment } from '../../model/types.ts';
import { field } from '../kit/field.ts';
import { gateMark, gatesOn, isStopped } from '../now/gate-now.ts';
import { toSettle } from '../now/piece-now.ts';
import { mustRead } from '../now/reading.ts';
import { type Way, wayOf } from '../now/way.ts';
import { draftOf, rowDraft } from './drafts.ts';
import { type At, at, record, show, stay, toStep } from './moves.ts';
import type { State, Step, Updated } from './state.ts';

export const LOOK: Step = { step: 'look', here: null, typed: '' };
export const OFF: Step = { step: 'off', here: null, typed: '', hand: '' };
export const ON: Step = { step: 'on', here: null, typed: '', hand: '', fresh: false };
export const TIGHT: Step = { step: 'tight', here: null, typed: '' };

export function enterPiece(state: State, key: string): Updated {
  const opened: State = { ...state, view: { screen: 'piece', piece: key, step: LOOK } };
  const here = at(opened);
  return here ? toStep(opened, firstStep(here)) : { state: opened, effects: [] };
}

function firstStep({ job, piece }: At): Step {
  const way = wayOf(job, piece);
  if (way === 'count') return { step: 'off-count' };
  if (way === 'out' && piece.where === 'off') return OFF;
  if (way === 'in' && piece.where === 'on') return ON;
  if (way === 'tight') return TIGHT;
  return LOOK;
}

/** The row to be typed, or typed by half before. */
export function rowStep(state: State): Step {
  const { view } = state;
  const text = view.screen === 'piece' ? draftOf(state, rowDraft(view.piece)) : null;
  return { step: 'off-row', field: field(text ?? ''), say: null };
}

export function toJob(state: State): Updated {
  return show(state, { screen: 'job', here: null });
}

/** Goes where the piece stands: the act behind the key that does the next right thing. */
export function goWay(state: State, way: Way): Updated {
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
    case 'tight':
      return toStep(state, TIGHT);
    case 'done':
      return toJob(state);
  }
}

/** To the first hole where file and find differ, or on where none does. */
export function toSettleStep(state: State): Updated {
  const here = at(state);
  const first = here ? toSettle(here.piece)[0] : undefined;
  if (!here || !first) return goOn(state);
  return toStep(state, { step: 'settle', here: first.name });
}

/** On with a piece: through the gates that are not passed yet, then what is to be read, then its bolts. */
export function goOn(state: State): Updated {
  const here = at(state);
  if (!here) return stay(state);
  const { job, piece, key } = here;
  const [gate] = gatesOn(job, piece, state.now, state.read);
  if (gate !== undefined) return openGate(state, gate, 'on');
  if (piece.holes.length === 0) return record(state, { do: 'on', piece: key });
  // A joint's gate has said all that stands to be read.
  const said = state.read.includes(gateMark('sealing', piece));
  return said ? toStep(state, ON) : readFirst(state, 'fitting', ON);
}

export function openGate(state: State, moment: Moment, goes: 'on' | 'back'): Updated {
  const here = at(state);
  const piece = moment === 'start' ? null : (here?.key ?? null);
  const base = { screen: 'gate', moment, piece, here: null, ticked: false, goes } as const;
  const opened = show(state, { ...base, under: state.view });
  const job = state.open?.job;
  const rings = job !== undefined && isStopped(job, moment, piece, state.now);
  return rings ? { ...opened, effects: [...opened.effects, { do: 'ring' }] } : opened;
}

/** What stands in the file to be read before this way, once a sitting, and not when it is half done. */
export function readFirst(state: State, way: 'removal' | 'fitting', then: Step): Updated {
  const here = at(state);
  if (!here) return toStep(state, then);
  const mark = readMark(here.key, here.piece.round, way);
  const begun = way === 'removal' ? here.piece.where === 'off' : here.piece.where === 'on';
  if (begun || state.read.includes(mark) || !mustRead(here.piece.spec, way)) {
    return toStep(state, then);
  }
  return toStep(state, { step: 'read', way, then });
}

export function readMark(piece: string, round: number, way: string): string {
  return `${piece} ${round} ${way}`;
}
