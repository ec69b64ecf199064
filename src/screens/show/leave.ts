/** Back one step, out of the program, the list of keys, and what a screen without a piece does. */
import type { Acts } from '../base/act.ts';
import { keepDraft } from '../base/drafts.ts';
import { LOOK } from '../base/enter.ts';
import { record, say, show, stay, toStep } from '../base/moves.ts';
import type { State, Step, Updated } from '../base/state.ts';

function back(from: State): Updated {
  const state = keepDraft(from);
  const { view } = state;
  switch (view.screen) {
    case 'wait':
      return stay(state);
    case 'bench':
      return say(state, 'This is the bench. Every mark is on disk.');
    case 'job':
    case 'faults':
      return toBench(state);
    case 'note':
      return show(state, { screen: 'job', here: null });
    case 'unsaved':
    case 'gate':
    case 'parts':
    case 'task':
    case 'tests':
    case 'round':
    case 'within':
    case 'draw':
    case 'known':
    case 'field':
    case 'keys':
      return show(state, view.under);
    case 'piece':
      return backStep(state, view.piece, view.step);
  }
}

function toBench(state: State): Updated {
  if (!state.bench) return say(state, 'This is the job. Every mark is on disk.');
  const here = state.open?.file ?? null;
  return {
    state: { ...state, view: { screen: 'bench', here }, waiting: { for: 'bench' } },
    effects: [{ do: 'list', folder: state.bench.folder }],
  };
}

function backStep(state: State, piece: string, step: Step): Updated {
  if ('back' in step) return toStep(state, step.back);
  if (step.step === 'look') return show(state, { screen: 'job', here: piece });
  return toStep(state, LOOK);
}

/** One list over another would be one too many. */
function keys(state: State): Updated {
  const { view } = state;
  if (view.screen === 'keys') return show(state, view.under);
  return show(state, { screen: 'keys', under: view, top: 0 });
}

export const leaveActs = {
  back,
  quit: (state) => ({ state, effects: [{ do: 'quit' }] }),
  leave: (state) => ({ state, effects: [{ do: 'quit' }] }),
  keys,
  'keys-typing': keys,
  close: back,
  again: (state) => {
    const { view } = state;
    if (view.screen !== 'faults') return stay(state);
    const { file } = view;
    return { state: { ...state, waiting: { for: 'file', file } }, effects: [{ do: 'open', file }] };
  },
  retry: (state) => {
    const { view } = state;
    if (view.screen !== 'unsaved') return stay(state);
    return record({ ...state, view: view.under }, view.wish);
  },
} satisfies Acts;
