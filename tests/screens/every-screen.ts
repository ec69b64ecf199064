/** One state of every screen there is, reached by keys. */

import type { Wish } from '../../src/model/types.ts';
import { LEFT } from '../../src/screens/base/from-file.ts';
import type { Opening } from '../../src/screens/base/start.ts';
import type { PieceStep, State, View } from '../../src/screens/base/state.ts';
import { Bench } from '../job/bench.ts';
import { LEFT_COVER } from './covers.ts';
import { Desk, FILE } from './desk.ts';
import { DRAWING } from './draw/draw-screens.ts';
import { KNOWN } from './known/known-screens.ts';
import { MEMORY } from './memory-screens.ts';
import { MORE } from './more-screens.ts';
import { CASE } from './plan-jobs.ts';
import { OF_THE_JOB } from './plan-screens.ts';
import { TRACE } from './trace/trace-screens.ts';

type Look = Partial<Omit<Opening, 'on'>> & { on?: Opening['on'] };
export const LATER = '2026-05-02T10:00:00+02:00';

function leversOff(): Bench {
  const bench = new Bench(LEFT_COVER);
  for (const piece of ['gear-lever', 'sprocket-cover']) {
    bench.mark({ do: 'out', piece });
    bench.mark({ do: 'off', piece, tray: 'cup 1' });
  }
  return bench;
}

function coverOff(row = 'S S S M+clip S S S+copper S S L S'): Bench {
  const bench = leversOff();
  bench.mark({ do: 'out', piece: 'alternator', row });
  bench.mark({ do: 'off', piece: 'alternator', tray: 'cup 2' });
  return bench;
}

function photographed(): Bench {
  const bench = coverOff();
  const photo = { do: 'photo', piece: 'alternator', taken: '2026-04-11T16:40:12+02:00' } as const;
  bench.mark({ ...photo, picture: 'photos/p104.jpg', says: 'the lead behind the tube' });
  bench.mark({ ...photo, picture: 'photos/p105.jpg', hole: '7' });
  return bench;
}

function coverIn(): Bench {
  const bench = coverOff();
  for (const kind of ['S', 'M', 'L']) bench.mark({ do: 'in', piece: 'alternator', hand: { kind } });
  return bench;
}

function coverTight(): Bench {
  const bench = coverIn();
  for (const pass of ['snug', 'full']) bench.mark({ do: 'tight', piece: 'alternator', pass });
  return bench;
}

const cover = (bench: Bench, look: Look, keys: string) =>
  new Desk(bench, look).open('alternator').press(keys);

const MAKERS: Record<string, (look: Look) => Desk> = {
  bench: (look) =>
    new Desk(leversOff(), { ...look, on: { folder: '/home/me/Repairs' }, now: LATER }),
  job: (look) => new Desk(leversOff(), look),
  note: (look) => new Desk(coverOff('S S S M+clip S S S+copper S S M S'), { ...look, now: LATER }),
  look: (look) => cover(leversOff(), look, ''),
  'look at a hole': (look) => cover(leversOff(), look, '7'),
  read: (look) => new Desk(leversOff(), look).open('gear-lever').press('go'),
  'before it closes': (look) => cover(coverOff(), look, 'go'),
  'before the joint is made': (look) => cover(coverOff(), look, 'go go'),
  off: (look) => cover(leversOff(), look, 'go go go'),
  'off, in the hand': (look) => cover(leversOff(), look, 'go 3 m'),
  'off, stuck': (look) => cover(leversOff(), look, 'go 9 - s'),
  'off, at the stuck one': (look) => cover(leversOff(), look, 'go 9 - s 9'),
  trouble: (look) => cover(leversOff(), look, 'go 9 -'),
  row: (look) => cover(leversOff(), look, 'r').type('s s s m+ s s s+ s ! l s'),
  'under the head': (look) =>
    cover(leversOff(), look, 'r').type('s s s m+ s s s s s l s').press('enter'),
  count: (look) => cover(leversOff(), look, `go ${'go '.repeat(11)}`),
  'count, stuck': (look) => cover(leversOff(), look, `go 9 - s ${'go '.repeat(10)}`),
  'no bolts': (look) => new Desk(new Bench(CASE), look).open('fuel-pipe').press('o go'),
  'new piece': (look) => new Desk(new Bench(LEFT_COVER), look).press('o').type('cover 10'),
  'a name like another': (look) =>
    new Desk(leversOff(), look).press('escape o').type('gear levers').press('enter'),
  'not this one': (look) => cover(coverTight(), look, '4 ]'),
  'another letter': (look) => cover(coverOff(), look, '4 .').type('= L20'),
  'off, far': (look) => cover(leversOff(), look, 'go go f'),
  'on, far': (look) => cover(coverOff(), look, 'go go go m f'),
  'tight, far': (look) => cover(coverIn(), look, 'go f'),
  'a line more': (look) => cover(leversOff(), look, '+').type('spring, goggles!'),
  'what a line is': (look) =>
    cover(leversOff(), look, '7 +').type('spring, goggles!').press('enter'),
  'how it runs': (look) => new Desk(leversOff(), look).open('hose').press('o').type('over'),
  tray: (look) => cover(leversOff(), look, `go ${'go '.repeat(12)}`).type('cup 2'),
  'look, mended': (look) => {
    const bench = coverOff();
    bench.mark({ do: 'state', piece: 'alternator', hole: '9', state: 'pulled' });
    return cover(bench, look, '9');
  },
  'tight, some out': (look) => {
    const bench = coverOff();
    bench.mark({ do: 'in', piece: 'alternator', hand: { kind: 'S' } });
    return cover(bench, look, 'tab');
  },
  settle: (look) => cover(coverOff('S S S M+clip S S S+copper S S M S'), look, 'go'),
  on: (look) => cover(coverOff(), look, 'go go go'),
  'on, in the hand': (look) => cover(coverOff(), look, 'go go go s go go m'),
  stop: (look) => cover(coverOff(), look, 'go go go m 3 go'),
  why: (look) => cover(coverOff(), look, 'go go go m 3 go w').type('chased the thread'),
  tight: (look) => cover(coverIn(), look, 'go go go'),
  'tight, second pass': (look) => cover(coverIn(), look, `${'go '.repeat(11)} go go go`),
  advice: (look) => cover(coverIn(), look, 'go go !'),
  'tight, done': (look) => cover(coverTight(), look, ''),
  sure: (look) => cover(coverTight(), { ...look, now: LATER }, 'backspace'),
  faults: faulty,
  unsaved,
  'unsaved, asked before leaving': (look) => unsaved(look).press('q'),
  'unsaved, left so': (look) => {
    const desk = cover(leversOff(), look, '');
    const { view: under } = desk.state;
    const wish: Wish = { do: 'out', piece: 'cover', holes: ['6'] };
    desk.state = { ...desk.state, view: { screen: 'unsaved', wish, why: LEFT, under } };
    return desk;
  },
  paper: (look) => new Desk(leversOff(), look).press('down down down p'),
  photos: (look) => cover(photographed(), look, 'x'),
  'look, with photographs': (look) => cover(photographed(), look, ''),
  'a hint of the practice': (look) => new Desk(leversOff(), { ...look, guide: true }),
  'keys with hints': (look) => new Desk(leversOff(), { ...look, guide: true }).press('?'),
  keys: (look) => cover(coverOff(), look, 'go go go s ?'),
};

/** A mark on a full disk. */
function unsaved(look: Look): Desk {
  const desk = cover(leversOff(), look, 'go');
  const full = { code: 'no-space', say: 'There is no room on the disk.' };
  desk.broken = { ok: false, unsaved: { ...full, fix: 'Make room, then save it again.' } };
  return desk.press('go');
}

/** A file with two faults, instead of a mark. */
function faulty(look: Look): Desk {
  const desk = cover(leversOff(), look, 'go');
  const fault = { code: 'x', severity: 'error', file: FILE, line: 7, column: 3 } as const;
  desk.broken = {
    ok: false,
    faults: [
      {
        ...fault,
        say: 'cover stands here twice',
        fix: 'Take one of them away.',
        excerpt: '  cover:\n  ^',
      },
      { ...fault, line: 31, say: 'no kind Q', fix: 'Write it under bolts:', excerpt: 'Q\n^' },
    ],
  };
  return desk.press('go');
}
/** A screen, or a step of a piece, by its name. */
export type Place = Exclude<View['screen'], 'piece'> | PieceStep['step'];

export function placeOf({ view }: State): Place {
  return view.screen === 'piece' ? view.step.step : view.screen;
}

export interface Screen {
  name: string;
  place: Place;
  state: State;
  desk: Desk;
}

export function everyScreen(look: Look = {}): Screen[] {
  const made = Object.entries({
    ...MAKERS,
    ...MORE,
    ...MEMORY,
    ...OF_THE_JOB,
    ...DRAWING,
    ...KNOWN,
    ...TRACE,
  }).map(([name, make]) => {
    const desk = make(look);
    return { name, desk, state: desk.state, place: placeOf(desk.state) };
  });
  const desk = new Desk(new Bench(), look);
  const state: State = { ...desk.state, view: { screen: 'wait' }, open: null };
  return [...made, { name: 'wait', place: 'wait', state, desk }];
}
