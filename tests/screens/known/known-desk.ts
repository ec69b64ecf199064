/** Benches and words for the screens that show what is true beside what is printed. */
import { Bench } from '../../job/bench.ts';
import { LEFT_COVER } from '../covers.ts';
import type { Desk } from '../desk.ts';

export const LATER = '2026-05-02T10:00:00+02:00';

/** Words of the frame with line breaks undone. */
export const said = (desk: Desk) => desk.frame.replace(/\s+/g, ' ');

/** The whole cover off, its joint with two texts, tasks beside it. */
export const TASKS = LEFT_COVER.replace(
  'diary:',
  `tasks:
  play: {adjust: Chain slack, limit: 20..30 mm, after: sprocket-cover on}
  weep: {test: Five minutes at idle, limit: no oil at the edge, after: alternator on}
diary:`,
);

export function coverOff(text = TASKS): Bench {
  const bench = new Bench(text);
  for (const piece of ['gear-lever', 'sprocket-cover', 'alternator']) {
    bench.mark({ do: 'out', piece });
    bench.mark({ do: 'off', piece, tray: 'cup 2' });
  }
  return bench;
}

/** All its bolts in by fingers, through these passes. */
export function coverIn(passes: readonly string[] = [], text = TASKS): Bench {
  const bench = coverOff(text);
  for (const kind of ['S', 'M', 'L']) bench.mark({ do: 'in', piece: 'alternator', hand: { kind } });
  for (const pass of passes) bench.mark({ do: 'tight', piece: 'alternator', pass });
  return bench;
}
