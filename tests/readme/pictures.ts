/**
 * The README's pictures, made from the screens themselves: `npm run pictures` writes them to jobs/pictures, and a test
 * finds out when they no longer show what the program shows.
 */

import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { mapFile } from '../../src/paper/map-picture.ts';
import type { Line } from '../../src/screens/kit/text.ts';
import { picture, rowsOf } from '../../src/screens/show/picture.ts';
import { Bench } from '../job/bench.ts';
import { practice } from '../paper/jobs.ts';
import { Desk } from '../screens/desk.ts';
import { type Frame, moving, still } from './svg.ts';

export const FOLDER = join(import.meta.dirname, '../../jobs/pictures');

const COVER = `putback: 1
job: Left cover weeps oil
machine: Hollin 400 Twin, 1998, 41230 km
bolts:
  S: M6x25 flange, 8 mm
  M: M6x35 flange, 8 mm
pieces:
  alternator:
    name: Alternator cover
    bolts: S S S M+clip S S S M S
    torque: 10 N·m, manual 2-17
    into: cast aluminium
    thick: 12
    thread: 0..16
    map: |
      .  9  1  2  .
      8  .  .  .  3
      7  .  .  .  4
      .  .  6  5  .
diary:
`;

const lines = (desk: Desk) => picture(desk.state).lines;
const plain = (desk: Desk) => rowsOf({ ...desk.state, colour: false }).join('\n');

/** A bolt that is too long for its hole: in the hand, and when it is about to be put in. */
function stop(): string {
  const bench = new Bench(COVER);
  bench.mark({ do: 'out', piece: 'alternator' });
  bench.mark({ do: 'off', piece: 'alternator', tray: 'cup 2' });
  const desk = new Desk(bench, { colour: true, rows: 16 }).open('alternator');
  for (let i = 0; i < 12 && desk.step !== 'on'; i += 1)
    desk.press(desk.screen === 'gate' ? 'a' : 'enter');
  desk.press('m 3');
  const before = lines(desk);
  desk.press('go');
  // What is between the two is empty rows.
  const after = lines(desk).slice(1);
  const shown = [...trimmed(before.slice(0, -1)), [], ...trimmed(after)];
  return still(shown, 80, 'STOP: the wrong bolt for this hole, before the wrench turns');
}

const isEmpty = (line: Line) => line.every((s) => s.text.trim() === '');

/** Without empty rows at its ends and behind another one. */
function trimmed(all: readonly Line[]): Line[] {
  const once = all.filter((line, i) => !isEmpty(line) || !isEmpty(all[i - 1] ?? []));
  return once.slice(isEmpty(once[0] ?? []) ? 1 : 0, isEmpty(once.at(-1) ?? []) ? -1 : undefined);
}

/** A minute at the bench: a row typed, a wrong bolt stopped, the refit, the star. */
function minute(): string {
  const frames: Frame[] = [];
  const desk = new Desk(new Bench(COVER), { colour: true });
  const see = (seconds: number) => frames.push({ lines: lines(desk), seconds });
  const keys = (text: string, seconds: number) => {
    for (const key of text.split(' ')) {
      desk.press(key);
      see(seconds);
    }
  };
  const type = (text: string) => {
    for (const letter of text) {
      desk.type(letter);
      see(0.12);
    }
  };
  see(2);
  keys('enter', 1.5);
  keys('r', 1);
  type('s s s m+clip s s s m s');
  see(1.5);
  keys('enter', 2);
  for (let i = 0; i < 12 && desk.step !== 'on'; i += 1) {
    if (desk.screen === 'field') {
      type('cup 2');
      keys('enter', 1);
    } else keys(desk.screen === 'gate' ? 'a' : 'enter', 1.2);
  }
  keys('m 3 go', 1);
  see(4);
  keys('backspace', 1);
  for (let i = 0; i < 30 && desk.step === 'on'; i += 1) {
    const [kind] = /What is in your hand\? +(\w)/.exec(plain(desk))?.slice(1) ?? [];
    keys(kind === undefined ? 'go' : kind.toLowerCase(), 0.5);
  }
  for (let i = 0; i < 60 && desk.step !== 'tight'; i += 1)
    keys(desk.screen === 'gate' ? 'a' : 'enter', 1);
  for (let i = 0; i < 9; i += 1) keys('go', 0.6);
  see(2);
  for (let i = 0; i < 6 && desk.step !== 'tight'; i += 1) keys('enter', 1);
  for (let i = 0; i < 9; i += 1) keys('go', 0.6);
  see(4);
  return moving(frames, 80, 'A row typed, a wrong bolt stopped, the refit hole by hole, the star');
}

/** The picture of a piece, as `putback map FILE PIECE --svg` makes it. */
function cover(): string {
  const piece = practice('hollin-left-cover').pieces.get('alternator');
  return (piece && mapFile(piece)) ?? '';
}

export const PICTURES: Readonly<Record<string, () => string>> = {
  'stop.svg': stop,
  'minute.svg': minute,
  'cover.svg': cover,
};

if (import.meta.main) {
  for (const [name, make] of Object.entries(PICTURES)) writeFileSync(join(FOLDER, name), make());
}
