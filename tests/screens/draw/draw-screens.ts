/** Screens on which the holes of a piece are drawn: reached by keys. */
import type { Opening } from '../../../src/screens/base/start.ts';
import { Bench } from '../../job/bench.ts';
import { LEFT_COVER } from '../covers.ts';
import { Desk } from '../desk.ts';

type Look = Partial<Omit<Opening, 'on'>> & { on?: Opening['on'] };

/** A lathe's gear cover: eleven holes and no picture; a guard of which nothing is noted; a shim of one bolt; holes measured. */
export const LATHE = `putback: 1
job: Gear cover of the lathe rattles
machine: Brennick 280
bolts:
  S: M6x25 flange, 8 mm
  M: M6x35 flange, 8 mm
pieces:
  gear-cover: {name: Gear cover, bolts: S S S M S S S S M S S}
  guard: {name: Chip guard}
  shim: {bolts: S}
  scale: {bolts: S S S, holes: {1: {at: [0, 0]}, 2: {at: [40, 0]}, 3: {at: [20, 30]}}}
  odd: {name: Odd plate, bolts: S S S S, holes: {3a: {note: drilled later}}}
diary:
`;

/** Round the gear cover: eleven holes at uneven distances. */
export const ROUND = [
  'space',
  'right right right space',
  'right right down space',
  'down down space',
  'down down space',
  'left left down space',
  'left left left space',
  'left left left space',
  'left up space',
  'up up up space',
  'up up right space',
].join(' ');

export const drawing = (piece = 'gear-cover', look: Look = {}, text = LATHE): Desk =>
  new Desk(new Bench(text), look).open(piece).press('z');

export const DRAWING: Record<string, (look: Look) => Desk> = {
  'draw, nothing yet': (look) => drawing('gear-cover', look),
  'draw, half way': (look) => drawing('gear-cover', look).press(`${ROUND.slice(0, 75)} left left`),
  'draw, all there': (look) => drawing('gear-cover', look).press(ROUND),
  'draw, nobody knows how many': (look) => drawing('guard', look).press(ROUND.slice(0, 30)),
  'draw, another picture': (look) => drawing('alternator', look, LEFT_COVER),
  'look, as drawn': (look) => drawing('gear-cover', look).press(ROUND).press('enter'),
  'row, to be drawn': (look) => new Desk(new Bench(LATHE), look).open('gear-cover').press('r'),
};
