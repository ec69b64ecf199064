/** A gasket that was bought for a piece is asked for before that piece goes on, whatever the file says of its joint. */
import { describe, expect, it } from 'vitest';
import { gateOf } from '../../../src/plan/gates/gate.ts';
import { Bench } from '../../job/bench.ts';
import { Desk } from '../desk.ts';

const JOB = `putback: 1
job: Right cover weeps
bolts: {S: M6x25}
pieces: {cover: {bolts: S S, torque: 10 N·m}}
buy: {gasket: {what: cover gasket, once: true, for: cover}}
diary:
`;

function off(bench: Bench): Desk {
  bench.mark({ do: 'out', piece: 'cover' });
  bench.mark({ do: 'off', piece: 'cover' });
  return new Desk(bench).open('cover').press('enter');
}

describe('a gasket on the list', () => {
  it('makes a joint of it: what is inside, clean faces and the gasket are seen to before its bolts', () => {
    const bench = new Bench(JOB);
    bench.mark({ do: 'buy', buy: 'gasket', state: 'here' });
    const desk = off(bench);
    expect(desk.frame).toContain('before it closes');
    desk.press('a');
    expect(desk.frame).toContain('before the joint is made');
    expect(desk.frame).toContain('cover gasket');
    expect(desk.frame).toContain('Both faces clean and dry');
  });

  it('what was seen in the open machine is looked at again when it was left alone meanwhile', () => {
    const bench = new Bench(JOB);
    bench.mark({ do: 'buy', buy: 'gasket', state: 'here' });
    off(bench).press('a');
    const left = (now: string) =>
      gateOf(bench.job, 'closing', 'cover', now).filter((item) => !item.done).length;
    const last = bench.entries.at(-1)?.at ?? '';
    expect(left(last)).toBe(0);
    expect(left(last.replace(/-\d\dT/, '-28T'))).toBeGreaterThan(1);
  });

  it('and in the second round a new one is asked for before the first bolt goes in', () => {
    const bench = new Bench(JOB);
    bench.mark({ do: 'buy', buy: 'gasket', state: 'here' });
    off(bench);
    bench.mark({ do: 'buy', buy: 'gasket', state: 'fitted' });
    bench.mark({ do: 'in', piece: 'cover', hand: { kind: 'S' } });
    for (const pass of ['snug', 'full']) bench.mark({ do: 'tight', piece: 'cover', pass });
    const desk = off(bench);
    expect(bench.piece('cover').round).toBe(2);
    expect(desk.frame).toContain('before it closes');
    desk.press('a');
    expect(desk.frame).toMatch(/STOP[\s\S]*cover gasket is never used twice/);
  });
});
