/** A whole job in an invented scenario: what is over what, tasks, parts, a joint with sealant. */
import { Bench } from '../job/bench.ts';

export const CASE = `putback: 1
job: Case weeps
machine: Marlow 250, 1991
bolts:
  S: M6x25 flange, 8 mm
  M: M6x35 flange, 8 mm
pieces:
  lever: {bolts: S, marks: dot on the shaft}
  fuel-pipe:
  case-cover:
    under: [lever]
    bolts: S S M S
    torque: 10 N·m, manual 3-4
    joint: sealant on both faces, open 10 min; dowels at 1 and 3
    loose: [2 dowels]
    caution: {fitting: The magnet pulls it in. Fingers off the edge.}
tasks:
  drain: {do: Drain the oil, before: case-cover off}
  scrape: {do: Scrape both faces, while: case-cover off, takes: 10 min}
  play: {adjust: Lever play, limit: 2..4 mm, after: lever on}
  fill: {do: Fill the oil in again, after: case-cover on}
  weep: {test: Five minutes at idle, limit: no oil at the edge, after: fill}
buy:
  gasket: {what: cover gasket, once: true, for: case-cover on}
  insert: {what: wire inserts M6 x 9, for: case-cover}
diary:
`;

/** Oil out, lever and cover off. */
export function caseOpen(text = CASE): Bench {
  const bench = new Bench(text);
  bench.mark({ do: 'out', piece: 'lever' });
  bench.mark({ do: 'off', piece: 'lever', tray: 'cup 1' });
  bench.mark({ do: 'done', task: 'drain', result: '1.4 l, clean' });
  bench.mark({ do: 'out', piece: 'case-cover' });
  bench.mark({ do: 'off', piece: 'case-cover', tray: 'cup 2' });
  return bench;
}

/** All back and tight, the oil not in yet. */
export function caseShut(text = CASE): Bench {
  const bench = caseOpen(text);
  for (const buy of ['gasket', 'insert']) bench.mark({ do: 'buy', buy, state: 'here' });
  bench.mark({ do: 'done', task: 'scrape' });
  for (const piece of ['case-cover', 'lever']) {
    for (const kind of new Set(bench.piece(piece).holes.map((h) => h.belongs?.kind ?? ''))) {
      bench.mark({ do: 'in', piece, hand: { kind } });
    }
    for (const pass of ['snug', 'full']) bench.mark({ do: 'tight', piece, pass });
  }
  return bench;
}
