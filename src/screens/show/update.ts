/**
 * The heart of the screens: a state and what happened give the next state and what is to be done.
 *
 * One thing is asked of the loop at a time. What is pressed while its answer is awaited is kept, and read
 * against the state that the answer gives: so five quick presses mark five holes, and none twice. After a
 * refusal the rest is dropped: it was meant for a screen that did not come.
 */

import { safe } from '../../model/safe.ts';
import { withoutDigits } from '../base/digits.ts';
import { foundRead } from '../base/found.ts';
import { benchRead, earlierRead, fileRead, LEFT } from '../base/from-file.ts';
import { GO } from '../base/key.ts';
import { say, stay } from '../base/moves.ts';
import { isTooSmall } from '../base/page.ts';
import { steadyHoles } from '../base/piece-page.ts';
import type { Effect, Happening, Input, State, Updated, View } from '../base/state.ts';
import type { Press } from '../kit/press.ts';
import { split } from '../kit/text.ts';
import { afterRecorded } from './after.ts';
import { guided } from './guide.ts';
import { keyIn, meantPress, paste, press, unquiet } from './press.ts';
import { openOf } from './screens.ts';

/** Said of a press that would answer something and came from a key that was not let go. */
const HELD = 'That key was still down. Read this, then press it anew.';

export function update(state: State, happening: Happening): Updated {
  const next = steady(stepped(state, happening));
  // Only the practice has a guide.
  return state.guide === null ? next : { ...next, state: guided(next.state) };
}

/** A list or a piece that one has come to keeps its rows and holes where they are from here on. */
function steady(next: Updated): Updated {
  const state = steadyHoles(openOf(next.state).steadied());
  return state === next.state ? next : { ...next, state };
}

function stepped(state: State, happening: Happening): Updated {
  switch (happening.on) {
    case 'press':
    case 'paste':
      return input(state, happening);
    case 'recorded':
      return recorded(state, happening);
    case 'again':
      return tryAgain(state);
    case 'file':
      return goOn(fileRead(state, happening));
    case 'bench':
      return goOn(benchRead(state, happening.jobs, happening.more));
    case 'earlier':
      return earlierRead(state, happening);
    case 'due':
      return state.view.screen === 'due'
        ? stay({
            ...state,
            view: { ...state.view, due: happening.due, unread: happening.unread ?? [] },
          })
        : stay(state);
    case 'found':
    case 'finding':
      return foundRead(state, happening);
    case 'size':
      return stay({ ...state, columns: happening.columns, rows: happening.rows });
    case 'time':
      return stay({ ...state, now: happening.now });
    case 'quiet':
      // It comes by itself, and takes nothing away that was said before it.
      return say(state, [state.quiet, happening.say].filter(Boolean).join(' '));
  }
}

function recorded(state: State, happening: Extract<Happening, { on: 'recorded' }>): Updated {
  const { waiting, view } = state;
  if (waiting?.for !== 'recorded') return stay(state);
  const again = waiting.again === true && view.screen === 'unsaved';
  const from: State = { ...state, waiting: null, ...(again ? { view: view.under } : {}) };
  const { ok, ...answer } = afterRecorded(from, happening);
  const after = { ...answer, state: unread(from, stillLeaving(view, answer.state)) };
  if (!again && ok) return goOn(after);
  if (!again || ok) return { ...after, state: { ...after.state, ahead: [] } };
  // It failed once more, by itself: no second ring, and what was pressed meanwhile was meant for this screen.
  return goOn({ ...after, effects: after.effects.filter((e) => e.do !== 'ring') });
}

/** The question whether to leave without the mark stays open while the mark fails once more. */
function stillLeaving(before: View, state: State): State {
  const leaving = before.screen === 'unsaved' && before.leaving;
  if (!leaving || state.view.screen !== 'unsaved') return state;
  return { ...state, view: { ...state.view, leaving } };
}

function tryAgain(state: State): Updated {
  const { view, waiting, open } = state;
  if (view.screen !== 'unsaved' || waiting !== null || open === null) return stay(state);
  if (view.why.code === LEFT.code) return stay(state);
  const { wish } = view;
  return {
    state: { ...state, waiting: { for: 'recorded', wish, again: true } },
    effects: [{ do: 'record', file: open.file, wish }],
  };
}

function input(state: State, happening: Input): Updated {
  if (happening.on === 'paste') {
    return state.waiting ? later(state, happening) : paste(state, happening.text);
  }
  const said: State = {
    ...unquiet(state),
    blind: false,
    soon: happening.soon === true,
    last: happening.press,
  };
  const { key, press: pressed } = meantPress(said, happening.press);
  // Leaving waits for nothing: what was asked for is being written anyway.
  if (state.waiting && !key?.atOnce) return later(state, happening);
  if (state.blind && happening.soon && isText(happening.press)) return typedBlind(state, happening);
  const isTyped = key?.takes?.(happening.press) ?? false;
  const goes = happening.repeats && GO.includes(pressed) && key !== null && !isTyped;
  if (goes || (happening.held && key?.anew.includes(pressed))) return say(said, HELD);
  if (key?.alone && happening.soon && state.last !== null && isLetter(state.last)) {
    const say = `${safe(pressed)} right behind another letter is no answer: press it by itself.`;
    return stay({ ...said, quiet: say, blind: true });
  }
  if (key === null && isSign(happening.press)) {
    return stay({
      ...withoutDigits(said),
      quiet: `${safe(happening.press)} is no key here.`,
      blind: true,
    });
  }
  if (key === null && pressed === 'space' && !isTooSmall(said)) {
    return say(withoutDigits(said), noSpace(said));
  }
  const done = press(said, key, pressed);
  return key?.dropsRest ? { ...done, state: { ...done.state, blind: true } } : done;
}

/**
 * A letter that is no key begins a text typed without looking: until Enter its letters are no keys either, and the screen
 * says so.
 */
function typedBlind(state: State, { press: pressed }: Extract<Input, { on: 'press' }>): Updated {
  const { quiet } = state;
  const told = quiet?.endsWith(DROPPED) ? quiet : [quiet, DROPPED].filter(Boolean).join(' ');
  return stay({ ...state, quiet: told, blind: pressed !== 'enter' });
}

const DROPPED = 'What was typed right behind it did nothing.';

/** One sign, not a key with a name. */
/** Whoever goes on by Space hears that it marked nothing, and which key does go on. */
function noSpace(state: State): string {
  const on = keyIn(state, 'enter')?.label() ?? '';
  return `Space marks nothing here.${on === '' ? '' : ` Enter: ${on}.`}`;
}

const isSign = (pressed: Press): boolean => split(pressed).length === 1;

/** A number is a hole, and a key may follow it at once. */
const isLetter = (pressed: Press): boolean => isSign(pressed) && !/\d/.test(pressed);

/** Part of a text that is typed, and what ends it or takes of it. */
const isText = (pressed: Press): boolean => isSign(pressed) || WITHIN.includes(pressed);
const WITHIN: readonly Press[] = ['space', 'enter', 'backspace', 'delete'];

function later(state: State, happening: Input): Updated {
  return stay({ ...state, ahead: [...state.ahead, happening] });
}

/** Reads what was typed ahead, until something is asked of the loop again. */
function goOn(from: Updated): Updated {
  let { state } = from;
  const effects: Effect[] = [...from.effects];
  while (state.waiting === null) {
    const [next, ...rest] = state.ahead;
    if (!next) break;
    const now = input({ ...state, ahead: rest }, next);
    state = unread(state, now.state);
    effects.push(...now.effects);
  }
  return { state, effects };
}

/** Whoever typed before a caution or a gate came in sight has not seen it: what was typed ahead is dropped. */
function unread(before: State, state: State): State {
  const seen = state.ahead.length === 0 ? null : openOf(state).mustSee();
  return seen === null || seen === openOf(before).mustSee() ? state : { ...state, ahead: [] };
}
