/** Screens where a torque wants words, what is left over, heights, and what was taken back: reached by keys. */
import { readBench } from '../../src/diary/bench.ts';
import type { Opening } from '../../src/screens/base/start.ts';
import { Bench } from '../job/bench.ts';
import { GRINDER, LEFT_COVER } from './covers.ts';
import { Desk } from './desk.ts';

type Look = Partial<Omit<Opening, 'on'>> & { on?: Opening['on'] };

/** As bench.yaml has them. */
export const WRENCHES = readBench(
  'bench',
  `wrenches:
  small: {range: 2..12 N·m, step: 0.5}
  big: {range: 40..200 N·m, step: 1}
`,
).wrenches;

/** A piece of the grinder that is off, its bolts in cup 1. */
export function off(piece: string, text = GRINDER): Bench {
  const bench = new Bench(text);
  bench.mark({ do: 'out', piece });
  bench.mark({ do: 'off', piece, tray: 'cup 1' });
  return bench;
}

/** In by fingers, through the first passes named. */
export function inAgain(piece: string, passes: readonly string[] = [], text = GRINDER): Bench {
  const bench = off(piece, text);
  for (const kind of new Set(bench.piece(piece).holes.map((h) => h.belongs?.kind ?? ''))) {
    const spec = bench.job.upper.kinds.get(kind);
    if (spec?.once) {
      const add = { what: spec.text, for: `${piece} on`, once: true } as const;
      bench.mark({ do: 'buy', buy: `${piece}-${kind.toLowerCase()}`, state: 'here', add });
    }
    bench.mark({ do: 'in', piece, hand: { kind } });
  }
  for (const pass of passes) bench.mark({ do: 'tight', piece, pass });
  return bench;
}

export function tightening(piece: string, passes: readonly string[] = [], look: Look = {}): Desk {
  const desk = new Desk(inAgain(piece, passes), look, WRENCHES).open(piece);
  return desk.step === 'tight' ? desk : desk.press('go');
}

/** The cover of the whole job, in but for these holes. */
export function coverBut(...empty: string[]): Bench {
  const piece = 'alternator';
  const bench = new Bench(LEFT_COVER);
  for (const over of ['gear-lever', 'sprocket-cover', piece]) {
    bench.mark({ do: 'out', piece: over });
    bench.mark({ do: 'off', piece: over, tray: 'cup 2' });
  }
  for (const h of bench.piece(piece).holes) {
    if (empty.includes(h.name)) continue;
    bench.mark({ do: 'in', piece, holes: [h.name], hand: { kind: h.belongs?.kind ?? '' } });
  }
  return bench;
}

const cover = (bench: Bench, look: Look, keys: string) =>
  new Desk(bench, look).open('alternator').press(keys);

export const MORE: Record<string, (look: Look) => Desk> = {
  'tight, on a wrench': (look) => tightening('guard', ['snug'], look).press('go'),
  'tight, a left-hand thread': (look) => tightening('guard', ['snug'], look).press('3'),
  "tight, not the maker's order": (look) => tightening('yoke', ['snug', 'part'], look),
  'tight, a spring': (look) => tightening('plate', [], look),
  'tight, by angle': (look) => tightening('cap', ['snug', 'full'], look).press('go'),
  'tight, once more round': (look) => tightening('lid', ['snug', 'full'], look).press('go'),
  'tight, a figure that is odd': (look) => tightening('tag', ['snug'], look),
  'off, a left-hand thread': (look) =>
    new Desk(new Bench(GRINDER), look).open('guard').press('go 3'),
  'off, a spring': (look) => new Desk(new Bench(GRINDER), look).open('plate').press('go go'),
  'gate, before the first bolt': (look) =>
    new Desk(new Bench(GRINDER), look).open('yoke').press('go'),
  'on, threads that look alike': (look) => new Desk(off('tag'), look).open('tag').press('go'),
  'left over, asked': (look) =>
    new Desk(inAgain('tag'), look).open('tag').press('escape l').type('u 2 q').press('enter'),
  'left over': (look) => cover(coverBut('10'), look, 'escape l').type('s m').press('enter'),
  'left over, nothing wrong': (look) =>
    cover(coverBut('10'), look, 'escape l').type('l').press('enter'),
  'left over, too few': (look) => cover(coverBut('10'), look, 'escape l enter'),
  'left over, far down': (look) =>
    cover(coverBut('10'), look, 'escape l').type('m').press('enter down down'),
  'heights, asked': (look) => cover(coverBut('10'), look, 'escape d').type('12 12').press('enter'),
  heights: (look) =>
    cover(coverBut(), look, 'escape d').type('12 12.5 12 12 12 12 22 12 12 30 12').press('enter'),
  'taken back': (look) => cover(coverBut('1', '10'), look, 's go backspace'),
};
