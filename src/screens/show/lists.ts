/** Going up and down: the mark in a list, or the first line of a page. */
import type { Acts } from '../base/act.ts';
import { show, stay, toStep } from '../base/moves.ts';
import type { State, Updated } from '../base/state.ts';
import { CHOICES } from '../base/takes.ts';
import { moveGate } from '../gate/gate.ts';
import { moveJob } from '../job/job.ts';
import { neighbour } from '../kit/neighbour.ts';
import { moveKnown } from '../known/known.ts';
import { moveParts } from '../parts-list/parts-list.ts';
import { moveTests } from '../tasks/tests-list.ts';
import { rowsOf } from './picture.ts';

function move(state: State, by: number): Updated {
  const { view } = state;
  switch (view.screen) {
    case 'bench': {
      const files = state.bench?.jobs?.map((j) => j.file) ?? [];
      return show(state, { ...view, here: neighbour(files, view.here, by) });
    }
    case 'job':
      return moveJob(state, by);
    case 'tests':
      return moveTests(state, by);
    case 'known':
      return moveKnown(state, by);
    case 'round':
    case 'within':
    case 'gate':
      return moveGate(state, by);
    case 'parts':
      return moveParts(state, by);
    case 'note':
    case 'faults':
    case 'keys':
      return scroll(state, show(state, { ...view, top: Math.max(0, view.top + by) }));
    case 'piece':
      return moveStep(state, by);
    default:
      return stay(state);
  }
}

/** A page that has come to its end stays where it is, however often one presses. */
function scroll(from: State, to: Updated): Updated {
  const plain = (state: State) => rowsOf({ ...state, colour: false }).join('\n');
  return plain(from) === plain(to.state) ? stay(from) : to;
}

function moveStep(state: State, by: number): Updated {
  const step = state.view.screen === 'piece' ? state.view.step : null;
  if (step?.step === 'read' || step?.step === 'answer') {
    return scroll(state, toStep(state, { ...step, top: Math.max(0, step.top + by) }));
  }
  if (step?.step !== 'trouble') return stay(state);
  const choice = Math.max(0, Math.min(CHOICES.length - 1, step.choice + by));
  return toStep(state, { ...step, choice });
}

export const listActs = {
  up: (state) => move(state, -1),
  down: (state) => move(state, 1),
} satisfies Acts;
