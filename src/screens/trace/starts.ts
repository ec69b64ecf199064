/** Lists to start from: one is taken over whole, what is not so on this machine goes out by hand. */
import { list } from '../../model/words.ts';
import { onlyWarmSaid, type Start, startFor } from '../../plan/trace/starts.ts';
import { ENTER } from '../base/key.ts';
import { type OnJob, onJob, requestMark, say } from '../base/moves.ts';
import { listLines, type Page } from '../base/page.ts';
import { type MadeMark, screenOver, type WishTo } from '../base/screen.ts';
import type { State, Updated, View } from '../base/state.ts';
import { bold, line, span, wrap } from '../kit/text.ts';

interface OnStarts extends OnJob<Extract<View, { screen: 'starts' }>> {
  /** While nobody has moved, the one that fits what is complained of; null where none does. */
  marked: Start | null;
}

function onStarts(state: State, view: OnStarts['view']): OnStarts | null {
  const here = onJob(state, view);
  if (!here) return null;
  const { complaint, job } = here.job.upper;
  const chosen = state.starts.find(({ name }) => name === view.here);
  return { ...here, marked: chosen ?? startFor(state.starts, complaint ?? job) };
}

export const startsScreen = screenOver({
  here: onStarts,
  keys: [
    {
      id: 'take-start',
      presses: ENTER,
      label: 'take it over',
      help: 'its suspects and looks go into the file, for what is not there yet',
      does: ({ state, marked }) =>
        marked ? requestMark(state, { do: 'start', ...marked }) : say(state, NONE),
    },
  ],
  draw: drawStarts,
  rows: ({ state, view, marked }) => ({
    names: state.starts.map(({ name }) => name),
    marked: marked?.name ?? null,
    mark: (here) => ({ ...view, here }),
  }),
  after: { start: afterStart },
});

const NONE =
  'None of these is taken yet: mark one with the arrows first, or Esc and list your own.';

function afterStart(state: State, { wish }: MadeMark<WishTo<'start'>>): Updated {
  const { view } = state;
  return say(
    { ...state, view: view.screen === 'starts' ? view.under : view },
    `Taken over: ${wish.say}. What your machine has not got goes out by hand.`,
  );
}

function drawStarts({ state, job, marked }: OnStarts): Page {
  const names = marked?.suspects.map(({ fields }) => `${fields.what}`) ?? [];
  const listed =
    marked === null ? 'None of these is plainly about that.' : `It may be: ${list(names, 'or')}.`;
  const warm = onlyWarmSaid(job.upper);
  return {
    kind: 'list',
    left: line(bold('A list to start from')),
    under: line(job.upper.job),
    above: [[]],
    most: MOST,
    say: [
      ...wrap(listed, state.columns),
      ...(warm === null ? [] : wrap(warm, state.columns, { bold: true })),
      ...wrap(
        'Common practice: the maker’s manual goes first. Each look brings its caution.',
        state.columns,
      ),
    ],
    middle: () =>
      state.starts.flatMap((start, i) => {
        const is = start === marked;
        const row = line(span(is ? '> ' : '  ', { bold: true }), is ? bold(start.say) : start.say);
        return listLines([row], i, is);
      }),
  };
}

/** Lines under the rows at most. */
const MOST = 10;
