/** What holds a wheel, or goes on after it, is never tight in silence while the wheel is off. Names: common practice. */
import { describe, expect, it } from 'vitest';
import { wheelOffSaid } from '../../../src/plan/care/still-off.ts';
import { Bench } from '../../job/bench.ts';

/** The wheel is off; `more` beside each piece. */
function off(piece: string, wheel: string, more = ''): string | null {
  const bench = new Bench(
    `putback: 1\njob: Wheel\npieces:\n  ${wheel}: {}\n  ${piece}: {bolts: 1${more}}\ndiary:\n`,
  );
  bench.mark({ do: 'off', piece: wheel });
  return wheelOffSaid(bench.job, bench.piece(piece));
}

describe('a wheel that is still off is asked about', () => {
  it.each([
    ['front-axle', 'front-wheel', 'Front wheel is still off: does Front axle hold it?'],
    ['front-axel', 'front-wheel', 'Front wheel is still off: does Front axel hold it?'],
    ['axle', 'front-wheel', 'Front wheel is still off: does Axle hold it?'],
    ['rear-spindle', 'rear-wheel', 'Rear wheel is still off: does Rear spindle hold it?'],
    ['wheel-nuts', 'left-front-wheel', 'Left front wheel is still off: do Wheel nuts hold it?'],
    ['axle-nut', 'back-wheel', 'Back wheel is still off: does Axle nut hold it?'],
    ['lug-nuts', 'wheel', 'Wheel is still off: do Lug nuts hold it?'],
    [
      'front-caliper',
      'front-wheel',
      'Front wheel is still off: does it go on before Front caliper?',
    ],
    ['left-calliper', 'wheel', 'Wheel is still off: does it go on before Left calliper?'],
  ])('%s, with %s off', (piece, wheel, say) => {
    expect(off(piece, wheel)).toBe(say);
  });

  it.each([
    ['front-axle', 'rear-wheel'],
    ['left-caliper', 'right-wheel'],
    ['gear-spindle', 'front-wheel'],
    ['swingarm-axle', 'rear-wheel'],
    ['lathe-spindle', 'hand-wheel'],
    ['front-mudguard', 'front-wheel'],
    ['axle', 'flywheel'],
    ['caliper', 'wheel-cylinder'],
  ])('%s has nothing to do with %s', (piece, wheel) => {
    expect(off(piece, wheel)).toBeNull();
  });

  it('not where the file says the order, or that nothing is to be guessed', () => {
    expect(off('axle', 'wheel', ', under: [wheel]')).toBeNull();
    expect(off('axle', 'wheel', ', care: none')).toBeNull();
  });

  it('not once the wheel is back, nor while nobody took it off', () => {
    const bench = new Bench('putback: 1\njob: W\npieces: {wheel: {}, axle: {bolts: 1}}\ndiary:\n');
    expect(wheelOffSaid(bench.job, bench.piece('axle'))).toBeNull();
    bench.mark({ do: 'off', piece: 'wheel' });
    bench.mark({ do: 'on', piece: 'wheel' });
    expect(wheelOffSaid(bench.job, bench.piece('axle'))).toBeNull();
  });
});
