/** A hose or a cable has no bolts at which anything could be read: how it runs is shown before it is said to be back. */
import { describe, expect, it } from 'vitest';
import { gateOf } from '../../../src/plan/gates/gate.ts';
import { Bench } from '../../job/bench.ts';
import { Desk } from '../desk.ts';

const JOB = `putback: 1
job: Idle
bolts: {S: M6x25}
pieces:
  throttle-cable: {marks: two threads showing, routes: over the frame tube}
  lead: {along: cover, routes: clear of the rotor, marks: red sleeve}
  cover: {bolts: S S}
  lid: {bolts: S, joint: new gasket}
  wire: {along: lid, routes: through the grommet}
diary:
`;

describe('what has no bolts', () => {
  it('is back on only after its marks and its way were read', () => {
    const bench = new Bench(JOB);
    bench.mark({ do: 'off', piece: 'throttle-cable' });
    const desk = new Desk(bench).open('throttle-cable');
    expect(desk.frame).not.toContain('Nothing is noted of its bolts');
    desk.press('enter');
    expect(desk.frame).toContain('before it goes back on');
    expect(desk.frame).toContain('two threads showing');
    expect(desk.frame).toContain('over the frame tube');
    expect(bench.piece('throttle-cable').where).toBe('open');
    desk.press('space').press('enter');
    expect(bench.piece('throttle-cable').fitted).toBe(true);
  });

  it('and comes with another piece is read of before that one goes on', () => {
    const bench = new Bench(JOB);
    bench.mark({ do: 'out', piece: 'cover' });
    bench.mark({ do: 'off', piece: 'cover' });
    const desk = new Desk(bench).open('cover').press('enter');
    expect(desk.frame).toMatch(/Lead +red sleeve/);
    expect(desk.frame).toContain('clear of the rotor');
  });

  it('stands at the gate of a joint, on the way off and on', () => {
    const bench = new Bench(JOB);
    const items = (moment: 'prying' | 'sealing') => {
      const gate = gateOf(bench.job, moment, 'lid', '2026-04-11T18:25:00+02:00');
      return gate.filter((i) => i.key.startsWith('with-')).map((i) => i.say);
    };
    expect(items('prying')).toEqual(['Wire, runs: through the grommet.']);
    bench.mark({ do: 'out', piece: 'lid' });
    bench.mark({ do: 'off', piece: 'lid' });
    expect(items('sealing')).toEqual(['Wire, runs as it did: through the grommet.']);
  });
});
