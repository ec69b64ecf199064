/** Keys of three whole jobs, as tests/terminal plays them: texts beside, which a pen would write too. */
import { countKeys, GEARBOX, NO_START, SIDE_COVER, type Step } from '../terminal/jobs.ts';
import type { Row } from './measure.ts';

/** Most keys that a step of the bench may take. */
const FEW = 3;

function row(what: string, steps: readonly Step[], against: string, most: number): Row {
  const n = countKeys(steps);
  return { what, against, ratio: n / most, goal: 1, measured: `${n} keys` };
}

export function rows(): Row[] {
  const bolts = 13;
  const { before, after, back, run, roundTwo, wrongMark, part } = SIDE_COVER;
  const tight = back.filter((s) => ['snug', 'full', 'once more round'].includes(s.what));
  const goesIn = back.filter((s) => s.what === 'all S, then M and L');
  const typed = before.filter((s) => s.what === 'the cover is named');
  return [
    row('13 bolts named in a row: keys beside the text', typed, `${FEW} keys`, FEW),
    row('13 bolts in, three kinds', goesIn, 'a key a bolt', bolts),
    row(
      '13 bolts tight, three passes',
      tight,
      'a key a bolt and pass, and one a pass',
      3 * bolts + 2,
    ),
    row('round two: all out and off', roundTwo, `${FEW} keys`, FEW),
    row('a wrong mark put right, each digit of its hole a key', wrongMark, `${FEW} keys`, FEW),
    row('a part added, beside its text', part, `${FEW} keys`, FEW),
    row(
      'side cover, whole job',
      [...before, ...after, ...back, ...run, ...roundTwo],
      '200 keys',
      200,
    ),
    row('gearbox, three covers', GEARBOX, '80 keys', 80),
    row('it will not start', NO_START, '40 keys', 40),
  ];
}
