/** Leftovers of a piece with 60 holes and 6 kinds, every hole probed, against one frame of a screen. */
import { type Fit, fit } from '../../src/bolt/fit/fit.ts';
import { readKind } from '../../src/bolt/read/kind.ts';
import { mixup } from '../../src/piece/mixup/mixup.ts';
import type { TrayHole } from '../../src/piece/mixup/types.ts';
import { type Given, holeOf } from '../bolt/holes.ts';
import { type Figures, median, ms, type Row, time } from './measure.ts';

const RUNS = 51;
/** ms; a screen that shows sixty pictures a second. */
const FRAME = 1000 / 60;

const LETTERS = ['A', 'B', 'C', 'D', 'E', 'F'];
const KINDS = new Map(
  LETTERS.map((letter, i) => [letter, readKind(letter, `M6x${20 + 5 * i} flange, 8 mm`)]),
);

const HOLE: Given = { thick: 12, thread: { from: 0, to: 25 }, into: 'cast aluminium' };

/** A capital is a full hole, a small letter an empty one; what lies in the tray. */
function ask(row: string, tray: string) {
  const holes: TrayHole[] = [...row].map((word, i) => ({
    ...{ name: `${i + 1}`, takes: { kind: word.toUpperCase(), with: [] } },
    state: word === word.toUpperCase() ? 'in' : 'out',
  }));
  const left = new Map(LETTERS.map((k) => [k, [...tray].filter((t) => t === k).length]));
  const takes = new Map(holes.map((h) => [h.name, KINDS.get(h.takes?.kind ?? '')]));
  const fitOf = (letter: string, name: string): Fit | null => {
    const [kind, own] = [KINDS.get(letter), takes.get(name)];
    if (!kind || !own) return null;
    const place = { takes: { kind: own, with: [] }, hole: holeOf(name, HOLE), piece: null };
    return fit(kind, null, place);
  };
  return () => mixup({ holes, left, kinds: KINDS, fitOf });
}

const each = (n: number, letters = LETTERS) => letters.map((k) => k.repeat(n)).join('');

async function row(what: string, question: ReturnType<typeof ask>, goal: number): Promise<Row> {
  const found = question().explanations.length;
  const times: number[] = [];
  for (let i = 0; i < RUNS; i++) times.push(await time(question));
  const middle = median(times);
  return {
    what: `${what}: ${found} explanations`,
    against: 'one frame, 1/60 s',
    ratio: middle / FRAME,
    goal,
    measured: `${ms(middle)} / ${ms(FRAME)}`,
  };
}

export const figures: Figures = async () => [
  await row('60 holes, 6 kinds, 1 bolt over', ask(`${each(9)}abcdef`, 'AABCDE'), 0.5),
  await row('60 holes, 6 kinds, 2 bolts over', ask(`${each(9)}abcdef`, 'AABBCD'), 0.5),
  await row('60 holes, 6 kinds, 3 bolts over', ask(`${each(9)}abcdef`, 'AABBCC'), 0.5),
  await row(
    '60 holes, 6 kinds, 30 bolts over, every full hole wrong',
    ask(`${each(10, ['A', 'B', 'C'])}${each(10, ['d', 'e', 'f'])}`, each(10, ['A', 'B', 'C'])),
    4,
  ),
];
