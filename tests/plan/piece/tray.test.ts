import { describe, expect, it } from 'vitest';
import { lacking, trayNow } from '../../../src/plan/piece/tray.ts';
import { sayCounts } from '../../../src/screens/kit/words.ts';
import { Bench } from '../../job/bench.ts';

const lies = (bench: Bench) => sayCounts(trayNow(bench.piece()));
const lacks = (bench: Bench) => sayCounts(lacking(bench.piece()));

describe('what lies in the tray', () => {
  it('is what came out, less what went back in', () => {
    const bench = new Bench().openCover();
    expect([lies(bench), lacks(bench)]).toEqual(['3 S, 1 M, 1 L; under the heads 1 clip', '']);
    bench.mark({ do: 'in', piece: 'cover', holes: ['3'], hand: { kind: 'M' } });
    bench.mark({ do: 'in', piece: 'cover', holes: ['1'], hand: { kind: 'S' } });
    expect([lies(bench), lacks(bench)]).toEqual(['2 S, 1 L', '']);
    bench.mark({ do: 'in', piece: 'cover', hand: { kind: 'S' } });
    bench.mark({ do: 'in', piece: 'cover', hand: { kind: 'L' } });
    expect([lies(bench), lacks(bench)]).toEqual(['', '']);
  });

  it('is still the bolt that came out where the file was found right, and the right one lacks', () => {
    const bench = new Bench();
    bench.mark({ do: 'out', piece: 'cover', row: 's m m+clip l s' });
    bench.mark({ do: 'off', piece: 'cover' });
    bench.mark({ do: 'settle', piece: 'cover', hole: '2', kind: 'S' });
    expect([lies(bench), lacks(bench)]).toEqual(['2 S, 2 M, 1 L; under the heads 1 clip', '1 S']);
    bench.mark({ do: 'in', piece: 'cover', hand: { kind: 'S' }, because: 'a new one' });
    expect([lies(bench), lacks(bench)]).toEqual(['2 M, 1 L; under the heads 1 clip', '']);
  });

  it('has nothing from a hole found empty, nor from one whose bolt sheared', () => {
    const bench = new Bench();
    bench.mark({ do: 'state', piece: 'cover', hole: '1', state: 'sheared' });
    bench.mark({ do: 'out', piece: 'cover', holes: ['2', '3', '4', '5'], row: '- M+clip L S' });
    expect([lies(bench), lacks(bench)]).toEqual(['1 M, 1 L, 1 S; under the heads 1 clip', '1 S']);
  });

  it('counts bolts of a kind that nobody knows', () => {
    const bench = new Bench('putback: 1\njob: X\ndiary:\n');
    bench.mark({ do: 'out', piece: 'cover', row: '? ? ?' });
    expect(lies(bench)).toBe('3 bolts that nobody has named');
  });
});
