/** File and find differ, or two marks do: which is true, one hole at a time, before anything goes back. */
import type { HoleNow } from '../../model/types.ts';
import { printItem } from '../../piece/row.ts';
import { names, toSettle } from '../../plan/piece/piece-now.ts';
import { sayTakes } from '../../plan/piece/say-piece.ts';
import { goOn } from '../base/enter.ts';
import type { Key } from '../base/key.ts';
import { holeNamed, requestMark, stay, toStep } from '../base/moves.ts';
import type { Page } from '../base/page.ts';
import { piecePage } from '../base/piece-page.ts';
import type { State, Updated } from '../base/state.ts';
import { hanging, type Line, line, pad, wrap } from '../kit/text.ts';
import { many, sayItem } from '../kit/words.ts';
import { belongsKey } from './belongs.ts';
import { type OnPiece, onPiece, type StepView, stepScreen } from './step.ts';
import { redoKey, undoKey } from './undo.ts';

interface OnSettle extends OnPiece<'settle'> {
  hole: HoleNow;
}

function onSettle(state: State, view: StepView<'settle'>): OnSettle | null {
  const here = onPiece(state, view);
  const hole = here && holeNamed(here.piece, here.step.here);
  return here && hole && { ...here, hole };
}

/** The key that says which of the two is true: what the file claims, or what came out. */
function trueKey(
  words: Pick<Key<OnSettle>, 'id' | 'presses' | 'label' | 'help'>,
  what: 'claim' | 'found',
): Key<OnSettle> {
  return {
    ...words,
    holds: ({ hole }) => hole[what] !== null && hole.conflict === null,
    does: ({ state, key, hole }) => {
      const item = hole[what];
      if (!item) return stay(state);
      return requestMark(state, {
        do: 'settle',
        piece: key,
        hole: hole.name,
        kind: printItem(item),
      });
    },
  };
}

function later({ state, piece, hole }: OnSettle): Updated {
  const odd = names(toSettle(piece));
  const next = odd[odd.indexOf(hole.name) + 1];
  return next === undefined ? goOn(state) : toStep(state, { step: 'settle', here: next });
}

export const settleScreen = stepScreen({
  here: onSettle,
  keys: [
    trueKey(
      {
        id: 'file',
        presses: ['k'],
        label: 'the file is right',
        help: 'what the file says belongs there',
      },
      'claim',
    ),
    trueKey(
      {
        id: 'find',
        presses: ['c'],
        label: 'what came out is right',
        help: 'what came out belongs there',
      },
      'found',
    ),
    { ...belongsKey, label: 'another' },
    {
      id: 'later',
      presses: ['l'],
      label: 'later',
      help: 'leave this one for later',
      does: later,
    },
    undoKey,
    redoKey,
  ],
  draw: drawSettle,
});

const LABEL = 16;

function drawSettle(here: OnSettle): Page {
  const { state, job, piece, hole } = here;
  const left = toSettle(piece).length;
  return piecePage(
    here,
    (h) => ({
      here: h.name === hole.name,
      lit: h.unsettled || h.conflict !== null,
      litSaid: 'to settle',
      label: h.belongs ? sayItem(h.belongs) : '',
      short: h.belongs?.kind ?? '',
    }),
    {
      right: line(`before it goes back: ${many(left, 'hole')} to settle`),
      say: hole.conflict ? sayConflict(hole, state.columns) : sayBoth(hole),
    },
  );

  function sayBoth(odd: HoleNow): Line[] {
    const row = (label: string, item: HoleNow['claim']) =>
      hanging(pad(line(label), LABEL), sayTakes(job, item), state.columns);
    return [
      ...wrap(`${odd.name}: which is true?`, state.columns, { bold: true }),
      ...row('The file says', odd.claim),
      ...row('Came out', odd.found),
    ];
  }
}

function sayConflict(hole: HoleNow, columns: number): Line[] {
  const text = `${hole.name}: ${hole.conflict?.say ?? ''}. Look what is really in it.`;
  return wrap(text, columns, { bold: true });
}
