/** Every kind against every hole of a large piece, against one frame of a screen. */
import { fit } from '../../src/bolt/fit/fit.ts';
import type { Place } from '../../src/bolt/fit/reach.ts';
import { readKind } from '../../src/bolt/read/kind.ts';
import { holeOf } from '../bolt/holes.ts';
import { type Figures, median, ms, time } from './measure.ts';

const HOLES = 200;
const KINDS = 20;
const RUNS = 51;
const FRAME = 1000 / 60;

const kinds = Array.from({ length: KINDS }, (_, i) => {
  const thread = ['M6', 'M8', '1/4-20', 'M10x1.25'][i % 4];
  const length = 16 + 3 * i;
  return readKind(
    `K${i}`,
    thread === '1/4-20' ? `1/4-20 x ${1 + i / 4} in` : `${thread}x${length} flange, 8 mm`,
  );
});

const places: Place[] = Array.from({ length: HOLES }, (_, i) => {
  const kind = kinds[i % KINDS] ?? readKind('S', 'M6x25');
  const known = i % 3 === 0;
  return {
    takes: { kind, with: i % 7 === 0 ? ['washer-1.6mm'] : [] },
    hole: holeOf(`${i + 1}`, {
      wet: i % 11 === 0,
      thick: known ? 8 + (i % 5) : null,
      thread: known ? { from: 0, to: 18 } : null,
      turns: i % 3 === 1 ? 12 : null,
      into: i % 2 === 0 ? 'cast aluminium' : null,
    }),
    piece: null,
  };
});

export const figures: Figures = async () => {
  const times: number[] = [];
  let judged = 0;
  for (let n = 0; n < RUNS; n++) {
    const took = await time(() => {
      for (const place of places) {
        for (const kind of kinds) if (fit(kind, null, place).verdict !== null) judged += 1;
      }
    });
    times.push(took);
  }
  const middle = median(times);
  return [
    {
      what: `fit of ${KINDS} kinds in ${HOLES} holes, ${Math.round(judged / RUNS)} with a verdict`,
      against: 'one frame, 1/60 s',
      ratio: middle / FRAME,
      goal: 0.5,
      measured: `${ms(middle)} / ${ms(FRAME)}`,
    },
  ];
};
