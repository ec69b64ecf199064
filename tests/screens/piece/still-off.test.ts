/** An axle is not tight in silence while its wheel is off. */
import { expect, it } from 'vitest';
import { Bench } from '../../job/bench.ts';
import { Desk } from '../desk.ts';

const JOB = `putback: 1
job: New tyre
bolts: {A: M12x180}
pieces:
  axle: {name: Front axle, bolts: A, torque: 60 N·m}
  wheel: {name: Front wheel}
diary:
`;
const ASKS = 'Front wheel is still off: does Front axle hold it?';

function bothOff(): Bench {
  const bench = new Bench(JOB);
  bench.mark({ do: 'out', piece: 'axle' });
  bench.mark({ do: 'off', piece: 'axle' });
  bench.mark({ do: 'off', piece: 'wheel' });
  return bench;
}

it('it is asked with the axle in the hand, at each turn, and when it is tight', () => {
  const bench = bothOff();
  const desk = new Desk(bench).open('axle').press('enter');
  // What is dangerous about it is read first.
  for (let i = 0; i < 4 && desk.step !== 'on'; i += 1) desk.press('go');
  expect(desk.step).toBe('on');
  expect(desk.frame).toContain(ASKS);
  desk.press('a space');
  expect(bench.hole('1', 'axle').state).toBe('in');
  desk.press('enter');
  expect(desk.step).toBe('tight');
  expect(desk.frame).toContain(ASKS);
  desk.press('space enter space');
  expect(bench.piece('axle').where).toBe('tight');
  desk.open('axle');
  expect(desk.frame).toMatch(
    /It is tight, 60 N·m\.\n+Front wheel is still off: does Front axle hold it\?/,
  );
  desk.press('escape');
  expect(desk.frame).toMatch(/Front axle +tight +! Front wheel is off/);
});
