/** A gasket that was bought for a piece is asked for before that piece goes on, whatever the file says of its joint. */
import { describe, expect, it } from 'vitest';
import { gateOf } from '../../../src/plan/gates/gate.ts';
import { nextStep } from '../../../src/plan/next/next.ts';
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
    expect(desk.frame).toContain('before the joint is made');
    expect(desk.frame).toMatch(/STOP[\s\S]*cover gasket is never used twice/);
  });

  it('that is only ordered stops before anything is looked into or cleaned, and may be here now', () => {
    const bench = new Bench(JOB.replace('once: true, ', ''));
    bench.mark({ do: 'buy', buy: 'gasket', state: 'ordered', promised: '2026-12-21' });
    bench.mark({ do: 'out', piece: 'cover' });
    bench.mark({ do: 'off', piece: 'cover' });
    const desk = new Desk(bench).open('cover').press('p');
    const words = () => desk.frame.replace(/[\s|]+/g, ' ');
    expect(words()).toContain('STOP');
    expect(words()).toContain('cover gasket: noted as ordered, not as here.');
    desk.press('a a a');
    expect(desk.screen).toBe('gate');
    expect(words()).toContain('t new ones are here');
    desk.press('t');
    expect(bench.entries.at(-1)).toMatchObject({ buy: 'gasket', value: 'here' });
    expect(desk.frame).not.toContain('STOP');
    // Now in their usual order.
    expect(desk.frame).toContain('before it closes');
  });

  it('that is ordered goes on without only for a reason', () => {
    const bench = new Bench(JOB.replace('once: true, ', ''));
    bench.mark({ do: 'buy', buy: 'gasket', state: 'ordered' });
    bench.mark({ do: 'out', piece: 'cover' });
    bench.mark({ do: 'off', piece: 'cover' });
    const desk = new Desk(bench).open('cover').press('p w').type('old one is whole').press('enter');
    expect(bench.entries.at(-1)).toMatchObject({ because: 'old one is whole' });
    expect(desk.frame).toContain('before it closes');
  });
});

describe('before the first start', () => {
  const on = (bench: Bench) => {
    bench.mark({ do: 'buy', buy: 'gasket', state: 'here' });
    bench.mark({ do: 'out', piece: 'cover' });
    bench.mark({ do: 'off', piece: 'cover' });
    bench.mark({ do: 'in', piece: 'cover', hand: { kind: 'S' } });
    for (const pass of ['snug', 'full']) bench.mark({ do: 'tight', piece: 'cover', pass });
    return bench;
  };
  const asked = (bench: Bench) =>
    gateOf(bench.job, 'start', null, bench.entries.at(-1)?.at ?? '').find(
      (i) => i.key === 'fitted-gasket',
    );

  it('a gasket that is here and that nobody noted as fitted is asked about', () => {
    const bench = on(new Bench(JOB));
    expect(asked(bench)).toMatchObject({
      say: 'cover gasket is here, its piece is back, not noted as fitted: is it in?',
      done: false,
    });
    bench.mark({ do: 'buy', buy: 'gasket', state: 'fitted' });
    expect(asked(bench)).toBeUndefined();
  });

  it('and Enter on it notes that it is in', () => {
    const bench = on(new Bench(JOB));
    const desk = new Desk(bench).press('s');
    for (let i = 0; i < 20 && !/> +cover gasket is here/.test(desk.frame); i += 1)
      desk.press('down');
    desk.press('enter');
    expect(bench.entries.at(-1)).toMatchObject({ buy: 'gasket', value: 'fitted' });
  });

  it('in the second round one that may do again is asked about before its bolts', () => {
    const bench = on(new Bench(JOB.replace('once: true, ', '')));
    bench.mark({ do: 'out', piece: 'cover' });
    bench.mark({ do: 'off', piece: 'cover' });
    const say = () => nextStep(bench.job)?.say;
    const question = 'cover gasket was in there already: a new one, or does the old one do?';
    expect(say()).toBe(`Cover: ${question} Then 1 takes S, M6x25, by fingers.`);
    bench.mark({ do: 'buy', buy: 'gasket', state: 'here' });
    expect(say()).toBe('Cover: 1 takes S, M6x25, by fingers.');
  });
});
