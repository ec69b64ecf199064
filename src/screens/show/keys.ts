/**
 * The one table of keys. What a press does, the line at the foot and the list of keys all come from it;
 * no other file names a key. Earlier rows matter more: the foot line keeps them longest.
 */

import { someThingInside } from '../base/moves.ts';
import type { State, Step, View } from '../base/state.ts';
import { takesChoice, takesDigit, takesHand, takesText } from '../base/takes.ts';
import { canDraw, drawLabel, keepLabel, liftLabel, putLabel } from '../draw/draw.ts';
import { gateStops, isAtStop, oneLabel, seenLabel, solveLabel } from '../gate/gate.ts';
import { EDITING } from '../kit/field.ts';
import type { Press } from '../kit/press.ts';
import {
  canSay,
  canUnsay,
  hasKnown,
  isInQuestion,
  knownLabel,
  notSoLabel,
  sayLabel,
} from '../known/known.ts';
import {
  furtherLabel,
  goesFurther,
  hasPart,
  isWanted,
  missingLabel,
} from '../parts-list/parts-list.ts';
import { canRedo } from '../piece/undo.ts';
import { roundLabel } from '../tasks/round.ts';
import { canDone, canFail, doneLabel, hasFailed, mustReadTask } from '../tasks/task.ts';
import { hasTest, testsLabel } from '../tasks/tests-list.ts';
import * as when from './when.ts';

export type Place = Exclude<View['screen'], 'piece'> | Step['step'];

type Label = string | ((state: State) => string);

export interface Key<I extends string = string> {
  /** What it does; the screens say how. */
  id: I;
  places: readonly Place[];
  /** Presses that do it; the first is the one at the foot. */
  presses: readonly Press[];
  /** At the foot; empty: only in the list of keys. */
  label: Label;
  /** In the list of keys. */
  help: string;
  /** Takes other presses as well: letters of kinds, digits, text. These come before all plain presses. */
  takes?: (state: State, press: Press) => boolean;
  /** As written in the list of keys, where `presses` alone do not say it. */
  shown?: string;
  /** Whether it holds just now. */
  holds?: (state: State) => boolean;
}

type More = Pick<Key, 'takes' | 'shown' | 'holds'>;

function key<I extends string>(
  id: I,
  places: readonly Place[],
  presses: readonly Press[],
  label: Label,
  help: string,
  more: More = {},
): Key<I> {
  return { id, places, presses, label, help, ...more };
}

const GO = ['space', 'enter'];
const MAPS: readonly Place[] = ['look', 'off', 'on', 'tight'];
const TYPED: readonly Place[] = ['field', 'off-row'];
const PAGES: readonly Place[] = ['note', 'faults', 'read', 'answer', 'round', 'within', 'keys'];
const LISTS: readonly Place[] = ['bench', 'job', 'gate', 'parts', 'tests', 'known', 'trouble'];
const ASKED: readonly Place[] = ['off-count', 'settle', 'trouble', 'advice', 'stop', 'sure'];
const UNTYPED: readonly Place[] = [
  ...(['wait', 'bench', 'job', 'gate', 'parts', 'tests', 'task', 'known', 'unsaved'] as const),
  ...PAGES,
  ...MAPS,
  ...ASKED,
];

export const KEYS = [
  // What is typed.
  key(
    'type',
    TYPED,
    EDITING,
    '',
    'write; arrows, Ctrl-A, -E, -W, -U, -K and -Z correct it, as in a shell',
    { takes: takesText, shown: 'text' },
  ),
  key('hand', ['off', 'on'], [], '', 'what is in the hand: the letter of its kind, or its length', {
    takes: takesHand,
    shown: 'letters, + and .25',
  }),
  key('choose', ['trouble'], [], '', 'what is wrong, by its letter', {
    takes: takesChoice,
    shown: 'letters',
  }),
  key('point', MAPS, [], '', 'another hole, by its number', { takes: takesDigit, shown: 'digits' }),

  // The next right thing.
  key('open', ['bench'], GO, 'open', 'open the marked job'),
  key('open-piece', ['job'], GO, 'open', 'open the marked piece', { holds: when.hasPieces }),
  key('pieces', ['note'], GO, 'to the pieces', 'go on to the pieces of this job'),
  key('again', ['faults'], GO, 'read it again', 'read the file again, once it is mended'),
  key('retry', ['unsaved'], GO, 'save it again', 'try to save this mark again'),
  key('forth', ['look'], GO, when.forthLabel, 'the next right thing for this piece'),
  key('seen', ['read'], GO, 'read, go on', 'this has been read: go on'),
  key('out', ['off'], GO, 'this one is out', 'the lit bolt is out, as said or as the file has it'),
  key('came', ['off-count'], GO, 'it came off', 'the piece is off', { holds: when.nothingIn }),
  key('to-stuck', ['off-count'], GO, 'back to that bolt', 'back to the bolts that are in', {
    holds: when.someInside,
  }),
  key('in', ['on'], GO, 'in, three turns', 'what is in the hand goes into the lit hole', {
    holds: when.handSaid,
  }),
  key(
    'click',
    ['tight'],
    GO,
    when.clickLabel,
    'the lit bolt has had this pass: its torque, or its angle',
  ),
  key('note-it', ['trouble'], GO, 'note it', 'note the marked trouble'),
  key('go-on', ['advice', 'answer'], GO, 'go on', 'read: go on with the other bolts'),
  key('yes', ['sure'], ['t'], 'take it back', 'take back that mark of an earlier day'),
  key('close', ['keys'], [...GO, 'tab'], 'close', 'close this list'),
  key('done', ['field'], ['enter'], 'keep it', 'keep what is written'),
  key('put', ['draw'], ['space'], putLabel, 'the next hole is under the mark'),
  key('keep-drawing', ['draw'], ['enter'], keepLabel, 'keep the picture, once all holes are drawn'),
  key(
    'lift',
    ['draw'],
    ['backspace'],
    liftLabel,
    'take the hole under the mark away, or else the last one drawn',
  ),
  key('walk', ['draw'], ['left', 'right', 'up', 'down'], '', 'one step over the piece', {
    shown: 'arrows',
  }),
  key('keep', ['off-row'], ['enter'], 'keep the row', 'note this row as what came out'),

  // Gates.
  key(
    'solve',
    ['gate'],
    ['enter'],
    solveLabel,
    'the way out of what stops: it is out, or to where it is mended',
    {
      holds: isAtStop,
    },
  ),
  key('past', ['gate'], ['w'], 'all the same, and why', 'on in spite of STOP, with a reason', {
    holds: gateStops,
  }),
  key(
    'all-seen',
    ['gate'],
    ['space'],
    seenLabel,
    'all of this is seen to, as far as it does not stop',
  ),
  key('one-seen', ['gate'], ['enter'], oneLabel, 'the marked one is seen to, or is here', {
    holds: (s) => !isAtStop(s),
  }),
  key('strike', ['gate'], ['x', 'delete'], 'strike', 'the marked one does not count here'),
  key('add-item', ['gate'], ['a'], 'add', 'something else that is to be seen to here'),
  key(
    'untick',
    ['job', 'gate', 'parts', 'task', 'tests'],
    ['backspace'],
    '',
    'take the last mark of this sitting back',
  ),

  // What must be had.
  key('further', ['parts'], GO, furtherLabel, 'how far the marked part has come, one on', {
    holds: goesFurther,
  }),
  key('part-here', ['parts'], ['t'], 'to hand', 'it is here already', { holds: isWanted }),
  key('part-wrong', ['parts'], ['w'], 'wrong', 'it came, and does not fit', { holds: hasPart }),
  key('part-short', ['parts'], ['s'], 'short', 'fewer came than are needed', { holds: hasPart }),
  key('superseded', ['parts'], ['n'], 'new number', 'it is sold under another number now', {
    holds: hasPart,
  }),

  // Tasks and tests.
  key('read-task', ['task'], GO, 'read, go on', 'the caution has been read: go on', {
    holds: mustReadTask,
  }),
  key('task-done', ['task'], GO, doneLabel, 'it is done, passed, over; or what it was and is now', {
    holds: canDone,
  }),
  key('next-round-of', ['task'], GO, 'round again', 'it failed: what comes off once more', {
    holds: hasFailed,
  }),
  key('task-failed', ['task'], ['f'], 'failed', 'it failed, and what it showed', {
    holds: canFail,
  }),
  key(
    'task-said',
    ['task'],
    ['r'],
    'with a word',
    'done, with what it was, what it is set to, what came of it',
    {
      holds: canDone,
    },
  ),
  key('next-round', ['round'], GO, roundLabel, 'off with the first piece of the next round'),
  key('open-test', ['tests'], GO, 'open', 'open the marked test', { holds: hasTest }),
  key('leave-within', ['within'], GO, 'go on', 'back to where this was asked'),

  // What is known.
  key('known-forth', ['known'], GO, sayLabel, 'one text more there, or what is true in its place', {
    holds: canSay,
  }),

  // STOP and choices.
  key('drop', ['stop', 'sure'], ['backspace'], when.dropLabel, 'leave it: nothing is written'),
  key(
    'force',
    ['stop'],
    ['w'],
    'all the same, and why',
    'overrule this, with a reason that is written down',
    {
      holds: when.canForce,
    },
  ),
  key(
    'pry',
    ['off-count'],
    ['w'],
    'all the same, and why',
    'overrule this, with a reason that is written down',
    {
      holds: when.someInside,
    },
  ),
  key('file', ['settle'], ['f'], 'the file is right', 'what the file says belongs there', {
    holds: (s) => when.differs(s, 'claim'),
  }),
  key('find', ['settle'], ['b'], 'what came out is right', 'what came out belongs there', {
    holds: (s) => when.differs(s, 'found'),
  }),
  key('other', ['settle'], ['o'], 'another', 'something else belongs there'),
  key('later', ['settle'], ['l'], 'later', 'leave this one for later'),

  // What else a hand does.
  key('row', ['look'], ['r'], 'type the row', 'type the whole row as it came out', {
    holds: when.comesOff,
  }),
  key('draw', ['look'], ['w'], drawLabel, 'walk round the piece and draw where its holes lie', {
    holds: canDraw,
  }),
  key('draw-row', ['off-row'], ['up'], drawLabel, 'draw where the holes lie', {
    holds: canDraw,
  }),
  key('known', ['look', 'task'], ['k'], knownLabel, 'all that is known of it, and add to it', {
    holds: hasKnown,
  }),
  key('to-row', ['off'], ['tab'], 'type the row', 'type the whole row as it came out'),
  key('all', ['on'], ['a', 'end'], when.allLabel, 'all of the kind in the hand are in', {
    holds: when.handSaid,
  }),
  key(
    'pulled',
    ['tight'],
    ['!'],
    when.pulledLabel,
    'it turns without tightening: the thread is pulled',
  ),
  key(
    'undo',
    [...MAPS, 'off-count', 'settle', 'advice'],
    ['backspace'],
    'back',
    'take the last thing back',
  ),
  key(
    'redo',
    [...MAPS, 'off-count', 'settle', 'advice'],
    ['y', ','],
    'redo',
    'what was just taken back in this sitting stands again',
    { holds: canRedo },
  ),
  key(
    'not-so',
    ['known', 'look', 'read', 'tight', 'gate', 'task', 'tests'],
    ['c'],
    notSoLabel,
    'what is printed is not so on this machine: what is true; both are shown from then on',
    { holds: isInQuestion },
  ),
  key('unsay', ['known', 'read'], ['backspace'], 'back', 'take back what was just written here', {
    holds: canUnsay,
  }),
  key('trouble', MAPS, ['-', '!'], 'trouble', 'something is wrong with the lit bolt or hole', {
    holds: when.isPointed,
  }),
  key('mended', ['look', 'tight'], ['m'], 'mended', 'what was wrong with the lit hole is mended', {
    holds: when.hereIsTrouble,
  }),
  key('take-off', ['look'], ['o'], when.offLabel, 'take it off, or off again', {
    holds: when.isOn,
  }),
  key('put-on', ['look'], ['p'], '', 'put it back on', { holds: when.goesOn }),
  key('tighten', ['look'], ['t'], '', 'tighten its bolts', { holds: when.someIn }),
  key('to-tight', ['on'], ['tab'], 'tighten', 'on to tightening what is in', {
    holds: when.someIn,
  }),
  key('to-in', ['tight'], ['tab'], 'put more in', 'back to the bolts that are not in yet', {
    holds: when.someToFill,
  }),
  // A letter that is a kind of this job is in the hand first: so each has a second press.
  key(
    'left',
    ['look', 'on', 'tight'],
    ['l', 'delete'],
    when.leftLabel,
    'say what is left in the tray: which hole may hold the wrong bolt',
    { holds: when.someMoved },
  ),
  key(
    'heights',
    ['look', 'on'],
    ['d', 'home'],
    when.heightsLabel,
    'heights of the heads, dropped in and not turned: which bolt may be the wrong one',
    { holds: when.someLoose },
  ),
  key('correct', ['answer'], ['r'], 'type it again', 'type it again, with what was typed'),
  key('aside', ['look', 'off-count'], ['a'], 'moved aside', 'out of the way, still connected', {
    holds: when.goesAside,
  }),
  key(
    'gates',
    ['look', 'off-count'],
    ['g'],
    '',
    'what is to be seen to here, one by one: tick, strike, add',
    {
      holds: when.hasGate,
    },
  ),
  key(
    'start-gate',
    ['job'],
    ['s'],
    when.startLabel,
    'what is to be seen to before the first start',
  ),
  key('inside', ['job', 'look', 'off-count'], ['i'], '', 'what goes in and must come out: 2 rags'),
  key('cleared', ['job', 'look'], ['x'], 'it is out', 'what was inside came out again', {
    holds: someThingInside,
  }),
  key('parts', ['job', 'note', 'look'], ['b'], missingLabel, 'what must be had, and how far it is'),
  key('tests', ['job', 'note'], ['t'], testsLabel, 'what is to be tested, and what passed'),
  key('within', ['job', 'note'], ['m'], '', 'what can be done in a given time, and left safe'),
  key('where', ['job'], ['w'], 'where it stands', 'where the job stands, in words'),
  key('add', ['job'], ['a'], when.addLabel, 'a piece that the file does not know yet comes off'),
  key('note', ['job', ...MAPS], ['n'], 'note', 'write a note'),

  // Moving.
  key('up', [...LISTS, ...PAGES], ['up'], '', 'the one above, or the lines above'),
  key('down', [...LISTS, ...PAGES], ['down'], '', 'the one below, or the lines below'),
  key('go', MAPS, ['left', 'right', 'up', 'down'], '', 'the nearest hole in that direction', {
    shown: 'arrows',
  }),
  key(
    'back',
    [...UNTYPED, ...TYPED, 'draw'],
    ['escape'],
    when.backLabel,
    'back one step; nothing is lost',
  ),
  key('quit', UNTYPED, ['q'], when.quitLabel, 'leave; every mark is on disk already'),
  key(
    'leave',
    [...UNTYPED, ...TYPED, 'draw'],
    ['ctrl-c'],
    '',
    'leave at once; every mark is on disk already',
  ),
  key('keys', [...UNTYPED, 'draw'], ['?', 'h'], 'keys', 'this list'),
  key('keys-typing', TYPED, ['tab'], 'keys', 'this list'),
] as const;

export type KeyId = (typeof KEYS)[number]['id'];
