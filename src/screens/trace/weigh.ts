/** Renew it now or leave it: its figures, what it turns on, and what is decided, by a letter each. */
import { figuresLine, figureTexts } from '../../job/form/typed-figures.ts';
import { adviceSaid, decidedWish, figuresSaid } from '../../plan/trace/weigh-say.ts';
import { type WeighedJob, weighedOf } from '../../plan/trace/weighed.ts';
import { ask } from '../ask/field.ts';
import { ENTER } from '../base/key.ts';
import { type OnJob, onJob, requestMark, say, stay } from '../base/moves.ts';
import type { Page } from '../base/page.ts';
import { type MadeMark, screenOver, type WishTo } from '../base/screen.ts';
import type { State, Updated, View } from '../base/state.ts';
import { bold, hanging, type Line, line, pad, width, wrap } from '../kit/text.ts';

interface OnWeigh extends OnJob<Extract<View, { screen: 'weigh' }>> {
  of: WeighedJob;
  /** What was decided; null while nothing is. */
  decided: string | null;
}

function onWeigh(state: State, view: OnWeigh['view']): OnWeigh | null {
  const here = onJob(state, view);
  const of = here && weighedOf(here.job, view.task, state.hour);
  const now = here?.job.tasks.get(view.task);
  return here && of && { ...here, of, decided: now?.result ?? now?.done ?? null };
}

export const weighScreen = screenOver({
  here: onWeigh,
  keys: [
    {
      id: 'renew-it',
      presses: ENTER,
      anew: ENTER,
      label: 'renew it',
      help: 'it is decided: renew it now',
      does: ({ state, of }) => requestMark(state, decidedWish(of, 'renew it')),
    },
    {
      id: 'leave-as-is',
      presses: ['l'],
      label: 'leave it, and why',
      help: 'it is decided: leave it, with the reason',
      does: ({ state, view }) => ask(state, { ask: 'leaving', task: view.task }),
    },
    {
      id: 'ask-owner',
      presses: ['o'],
      label: 'ask the owner',
      help: 'a note to ask the owner; the question stays open',
      does: ({ state, of }) => requestMark(state, { do: 'note', text: `Ask the owner: ${of.say}` }),
    },
    {
      id: 'other-figures',
      presses: ['c'],
      label: 'other figures',
      help: 'what it costs now and later, how likely it fails, what touching it may break',
      does: ({ state, job, view }) => {
        const texts = figureTexts(job.upper.tasks.get(view.task)?.weigh);
        return ask(state, { ask: 'figures', task: view.task, say: null }, figuresLine(texts));
      },
    },
    {
      id: 'decided-said',
      presses: ['r'],
      label: '',
      help: 'something else is decided, in words',
      does: ({ state, view }) => ask(state, { ask: 'result', task: view.task, how: 'done' }),
    },
  ],
  draw: drawWeigh,
  after: { done: afterDecided, note: (state) => say(state, 'Noted: ask the owner.') },
});

function afterDecided(state: State, { wish }: MadeMark<WishTo<'done'>>): Updated {
  const { view } = state;
  if (view.screen !== 'weigh') return stay(state);
  const { under } = view;
  const back = under.screen === 'job' ? { ...under, here: null } : under;
  return say({ ...state, view: back }, `Decided: ${wish.result ?? 'done'}.`);
}

const GAP = 3;

function drawWeigh({ state, job, of, decided: done }: OnWeigh): Page {
  const rows = figuresSaid(job, of);
  const label = Math.max(0, ...rows.map(({ what }) => width(what))) + GAP;
  return {
    kind: 'page',
    left: line(bold(of.say)),
    right: line(done === null ? 'renew it, or leave it' : `decided: ${done}`),
    under: line(job.upper.job),
    say: adviceSaid(of).flatMap((text, i) =>
      wrap(text, state.columns, i === 0 ? { bold: true } : {}),
    ),
    most: MOST,
    middle: (columns) => [
      [],
      ...rows.flatMap(({ what, say: told }): Line[] =>
        hanging(pad(line('  ', bold(what)), label + 2), told, columns),
      ),
    ],
  };
}

/** Lines under the figures at most. */
const MOST = 9;
