/** Finding the fault: what it may be, what to look at next, and each look marked by one key. */
import type { Looked, Refusal, Wish } from '../../model/types.ts';
import { nextNow } from '../../plan/next/next-now.ts';
import { foundWish } from '../../plan/trace/found.ts';
import { suspectSaid } from '../../plan/trace/say.ts';
import { isUnmended } from '../../plan/trace/traced.ts';
import { ask } from '../ask/field.ts';
import { ENTER, type Key } from '../base/key.ts';
import { requestMark, say, show, stay } from '../base/moves.ts';
import { type MadeMark, screenOver, type WishTo } from '../base/screen.ts';
import type { State, Updated } from '../base/state.ts';
import { type OnTrace, onTrace } from './on-trace.ts';
import { drawTrace } from './trace-page.ts';

const isLook = ({ look }: OnTrace): boolean => look !== null;
const isOpen = ({ now, suspect }: OnTrace): boolean =>
  now.answer.suspects.some(({ name }) => name === suspect);

/** The task by which the marked suspect, which was found, is put right, while that is not done. */
function mendOf({ now, suspect }: OnTrace): string | null {
  const one = now.found.findLast((made) => made.suspect === suspect);
  return isUnmended(one) ? (one?.mend?.spec.key ?? null) : null;
}

function limited({ job, look }: OnTrace): boolean {
  return Boolean(job.upper.checks.get(look?.check ?? '')?.limit);
}

function looked(how: Looked): Key<OnTrace>['does'] {
  return ({ state, look }) =>
    look ? requestMark(state, { do: 'look', check: look.check, how }) : stay(state);
}

/** Good without a reading, where the check has a limit: what was measured is asked; all else, why all the same. */
function lookRefused(state: State, why: Refusal, wish: Wish): Updated {
  if (!why.overrulable || wish.do !== 'look') return say(state, why.say);
  return why.code === 'no-reading'
    ? ask(state, { ask: 'reading', check: wish.check, say: NO_FIGURE })
    : ask(state, { ask: 'why', wish, refused: why });
}

const NO_FIGURE = 'Its limit says whether it is good. Not measured: write good, and then why.';

function askReading({ state, look }: OnTrace): Updated {
  return look ? ask(state, { ask: 'reading', check: look.check, say: null }) : stay(state);
}

/** What was put in; where something is in, how that went. */
function askTried({ state, suspect, tries }: OnTrace): Updated {
  if (suspect === null) return stay(state);
  const isIn = tries.some((one) => one.suspect === suspect);
  return ask(state, isIn ? { ask: 'went', suspect, say: null } : { ask: 'put', suspect });
}

export const traceScreen = screenOver({
  here: onTrace,
  keys: [
    {
      id: 'look-reading',
      presses: ENTER,
      label: 'with a reading',
      help: 'what was measured: its limit says good or bad',
      holds: (here) => isLook(here) && limited(here),
      does: askReading,
    },
    {
      id: 'look-good',
      presses: ['g'],
      label: 'good',
      help: 'the marked look came out good',
      holds: isLook,
      does: looked('good'),
    },
    {
      id: 'look-bad',
      presses: ['b'],
      label: 'bad',
      help: 'the marked look came out bad',
      holds: isLook,
      does: looked('bad'),
    },
    {
      id: 'look-unclear',
      presses: ['u'],
      label: "can't say",
      help: 'the marked look told nothing',
      holds: isLook,
      does: looked('unclear'),
    },
    {
      id: 'look-read',
      presses: ['r'],
      label: (here) => (limited(here) ? '' : 'with a reading'),
      help: 'the marked look, with what was measured or seen',
      holds: isLook,
      does: askReading,
    },
    {
      id: 'found-it',
      presses: ENTER,
      label: 'it is this one',
      help: 'the marked suspect is what it was: its part goes on the list, its piece is next',
      holds: isOpen,
      does: ({ state, job, suspect }) =>
        suspect === null ? stay(state) : requestMark(state, foundWish(job, suspect)),
    },
    {
      id: 'put-right',
      presses: ['p'],
      label: 'it is put right',
      help: 'what was found is put right: what was done, in words',
      holds: (here) => mendOf(here) !== null,
      does: (here) => {
        const task = mendOf(here);
        return task === null
          ? stay(here.state)
          : ask(here.state, { ask: 'result', task, how: 'done' });
      },
    },
    {
      id: 'changed-to-try',
      presses: ['c'],
      label: ({ suspect, tries }) =>
        tries.some((one) => one.suspect === suspect) ? 'how it went' : 'changed to try',
      help: 'a part of the marked suspect was changed to try; then how that went',
      holds: ({ suspect }) => suspect !== null,
      does: askTried,
    },
    {
      id: 'trace-add',
      presses: ['n'],
      label: 'list more',
      help: 'what it may be, what can be looked at: a line each',
      does: ({ state }) => ask(state, { ask: 'listed', of: 'suspects', say: null }),
    },
    {
      id: 'trace-starts',
      presses: ['l'],
      label: ({ names }) => (names.length === 0 ? 'lists to start from' : ''),
      help: 'a list to start from: what it mostly is, and how that is looked at',
      holds: ({ state }) => state.starts.length > 0,
      does: ({ state, view }) => show(state, { screen: 'starts', here: null, under: view }),
    },
  ],
  draw: drawTrace,
  rows: ({ view, names, marked }) => ({ names, marked, mark: (here) => ({ ...view, here }) }),
  after: { look: afterLook, found: afterFound, done: afterMended },
  refused: lookRefused,
});

/** The next look is marked, and who is left is said. */
function afterLook(state: State, { wish }: MadeMark<WishTo<'look'>>): Updated {
  const { view, open } = state;
  if (view.screen !== 'trace' || !open) return stay(state);
  const said = open.job.upper.checks.get(wish.check)?.check ?? wish.check;
  const last = open.job.entries.at(-1);
  return say({ ...state, view: { ...view, here: null, top: 0 } }, `${said}: ${last?.value ?? ''}.`);
}

function afterFound(state: State, { wish }: MadeMark<Extract<Wish, { do: 'found' }>>): Updated {
  const { view, open } = state;
  if (view.screen !== 'trace' || !open) return stay(state);
  const { job } = open;
  const next = nextNow(job, state.now);
  const part = wish.buy ? ' Its part is on the list.' : '';
  const said = `Found: ${suspectSaid(job, wish.suspect)}.${part}${next ? ` Next: ${next.say}` : ''}`;
  return say({ ...state, view: { ...view, here: null, top: 0 } }, said);
}

/** What was found is put right: what proves it is marked. */
function afterMended(state: State, { wish }: MadeMark<WishTo<'done'>>): Updated {
  const { view, open } = state;
  if (view.screen !== 'trace' || !open) return stay(state);
  const what = open.job.tasks.get(wish.task)?.spec.say.text ?? wish.task;
  return say({ ...state, view: { ...view, here: null, top: 0 } }, `${what}: done.`);
}
