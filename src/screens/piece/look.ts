/** The piece as it stands, and the ways on from here. */

import { otherFigure } from '../../job/fold/other-figure.ts';
import { mustRead } from '../../plan/known/to-read.ts';
import { stillIn, toFill } from '../../plan/piece/piece-now.ts';
import { comesAlong, WAY_LABELS, type WayNow, wayNow } from '../../plan/piece/way.ts';
import { cameOut, goesIn } from '../ask/inside.ts';
import { keepKey } from '../ask/keep-key.ts';
import { noteKey } from '../ask/note.ts';
import { keepDraft, PIECE_DRAFT } from '../base/drafts.ts';
import { goWay, OFF, readFirst, rowStep, TIGHT, toSettleStep } from '../base/enter.ts';
import { ENTER, type Key } from '../base/key.ts';
import { holeNamed, pieceNamed, requestMark, say, show, stay, toStep } from '../base/moves.ts';
import type { State, Updated } from '../base/state.ts';
import { drawKey } from '../draw/draw-key.ts';
import { inPiece } from '../known/in-question.ts';
import { knownKey } from '../known/known-keys.ts';
import { notSo } from '../known/not-so.ts';
import { lastKey } from '../last/last-key.ts';
import { asItWasKey } from '../paper/photos.ts';
import { partsKey } from '../parts-list/missing.ts';
import { belongsKey } from './belongs.ts';
import { drawLook, type OnLook } from './look-page.ts';
import { goKey, pointKey } from './point.ts';
import { onPiece, type StepView, stepScreen } from './step.ts';
import {
  adviceKey,
  asideKey,
  gatesKey,
  heightsKey,
  leftKey,
  mendedKey,
  nothingIn,
  someIn,
  troubleKey,
} from './step-keys.ts';
import { redoKey, undoKey } from './undo.ts';
import { marksKey, unmarkKey } from './unmark.ts';

function takeOff({ state, job, key, piece }: OnLook): Updated {
  const bare = piece.holes.length === 0;
  // Nothing holds it and nothing is to be read, so it is off by this one key.
  if (bare && !mustRead(job, piece.spec, 'removal'))
    return requestMark(state, { do: 'off', piece: key });
  const out = bare || stillIn(piece).length === 0;
  return readFirst(state, 'removal', out ? { step: 'off-count' } : OFF);
}

function offLabel({ way, piece }: OnLook): string {
  if (comesAlong(piece)) return 'off by itself';
  if (way === 'done') return 'take it off again';
  return way === 'row' ? 'off, no bolts' : '';
}

/** Columns from which the foot has room for more than what a hand needs next. */
const WIDE = 100;

/** While bolts go in, or where something is lit or inside, what is to be done about that is at the foot first. */
function knownLabel(here: OnLook): string {
  const { state, job, key, piece, step } = here;
  const busy = step.here !== null || someIn(here) || job.inside.some((i) => i.piece === key);
  // A piece without bolts is opened to take it off or move it aside.
  const bare = piece.holes.length === 0 && piece.where === 'home';
  return (busy || bare) && state.columns < WIDE ? '' : 'what is known';
}

/** What it turns from coming off to going on, what begins a pass, and what is noted by this one key. */
const ON_WAYS: readonly WayNow[] = ['settle', 'in', 'fit', 'tight'];

const isPulled = ({ piece, step }: OnLook): boolean =>
  step.here !== null && holeNamed(piece, step.here)?.trouble === 'pulled';

const isSetOff = ({ job, piece, way }: OnLook): boolean =>
  way === 'done' && otherFigure(job, piece).length > 0;

const tightenKey: Key<OnLook> = {
  id: 'tighten',
  presses: ['t'],
  label: '',
  help: 'tighten its bolts',
  does: ({ state }) => toStep(state, TIGHT),
};

const KEYS: readonly Key<OnLook>[] = [
  pointKey,
  {
    id: 'forth',
    presses: ENTER,
    anew: ({ way }) => (ON_WAYS.includes(way) ? ENTER : []),
    label: ({ way }) => WAY_LABELS[way],
    help: 'the next right thing for this piece',
    does: ({ state, way }) => goWay(state, way),
  },
  // All is tight, and some of it was set to another figure than is printed.
  { ...tightenKey, label: 'set it right', holds: isSetOff },
  // Beside the page that says how a thread is mended: it is what comes of it.
  { ...mendedKey, holds: isPulled },
  {
    id: 'row',
    presses: ['r'],
    label: 'type the row',
    help: 'type the whole row as it came out',
    // The next right thing is to take it off, and its bolts can be typed as a row.
    holds: ({ way }) => way === 'out',
    does: ({ state }) => readFirst(state, 'removal', rowStep(state)),
  },
  keepKey,
  lastKey,
  drawKey,
  knownKey<OnLook>(({ job, key }) => (job.pieces.has(key) ? { piece: key } : null), knownLabel),
  undoKey,
  redoKey,
  unmarkKey,
  marksKey,
  // Not at the foot: the page of all that is known is one key away and has this key too.
  notSo<OnLook>(({ job, key, step }) => inPiece(job, key, step.here), ''),
  troubleKey,
  { ...mendedKey, holds: (here) => !isPulled(here) && (mendedKey.holds?.(here) ?? true) },
  adviceKey,
  {
    id: 'take-off',
    presses: ['o'],
    label: offLabel,
    help: 'take it off, or off again',
    holds: (here) => here.piece.away === 'no' || !nothingIn(here),
    does: takeOff,
  },
  {
    id: 'put-on',
    presses: ['p'],
    label: '',
    help: 'put it back on',
    holds: ({ piece }) => piece.away !== 'no' || toFill(piece).length > 0,
    does: ({ state }) => toSettleStep(state),
  },
  { ...tightenKey, holds: (here) => someIn(here) && !isSetOff(here) },
  asItWasKey,
  belongsKey,
  leftKey,
  heightsKey,
  asideKey,
  gatesKey,
  goesIn,
  cameOut,
  partsKey,
  noteKey,
  goKey,
];

export const lookScreen = stepScreen({
  here: (state: State, view: StepView<'look'>): OnLook | null => {
    const here = onPiece(state, view);
    return here && { ...here, lit: here.step.here, way: wayNow(here.job, here.piece) };
  },
  keys: KEYS,
  draw: drawLook,
  back: (state, { piece }) => {
    const { state: below } = show(state, { screen: 'job', here: piece });
    if (state.open?.job.pieces.has(piece) !== false) return stay(below);
    // It was only named: the file gets it with what is noted of it first.
    const name = pieceNamed(state.open.job, piece).spec.name;
    const quiet = `${name} is not in the file yet: nothing is noted of it. o takes it up again.`;
    return say(keepDraft(below, PIECE_DRAFT, name), quiet);
  },
});
