import { describe, expect, it } from 'vitest';
import { Bench } from '../../job/bench.ts';
import { Desk } from '../desk.ts';

const JOB = `putback: 1
job: Head off
bolts:
  T: M10x60 10.9 once, 14 mm
pieces:
  head: {bolts: T T T, torque: 40 N·m, joint: head gasket and its faces}
diary:
`;

/** At the gate before the joint is made, all that only is looked at ticked. */
function before(): Desk {
  const bench = new Bench(JOB);
  bench.mark({ do: 'out', piece: 'head' });
  bench.mark({ do: 'off', piece: 'head', tray: 'cup 1' });
  const desk = new Desk(bench).open('head');
  for (let i = 0; i < 4 && !desk.frame.includes('before the joint is made'); i++) desk.press('go');
  return desk;
}
const words = (desk: Desk) => desk.frame.replace(/[\s|]+/g, ' ');

describe('bolts that are used once, before the joint', () => {
  it('stop the gate, and new ones are noted as here by one key', () => {
    const desk = before();
    expect(words(desk)).toContain(
      'M10x60 10.9 once, 14 mm is never used twice, and no new one is noted as here.',
    );
    expect(desk.done).toContain('ring');
    expect(desk.frame).toContain('t new ones are here');
    // Enter alone is no answer to that.
    const noted = desk.bench.entries.length;
    desk.press('enter');
    expect(desk.bench.entries).toHaveLength(noted);
    for (let i = 0; i < 20 && !desk.frame.includes('t new ones are here'); i++) desk.press('up');
    desk.press('t');
    expect(desk.bench.entries.at(-1)).toMatchObject({ verb: 'done', buy: 'head-t', value: 'here' });
    expect(words(desk)).not.toContain('never used twice');
    desk.press('a a a').press('t go');
    expect(desk.bench.entries.at(-1)).toMatchObject({ verb: 'in' });
  });

  it('can be passed with a reason, which answers for the bolts as well', () => {
    const desk = before().press('w').type('measured').press('enter');
    expect(desk.bench.entries.at(-1)).toMatchObject({ verb: 'seen', because: 'measured' });
    expect(desk.screen).toBe('on');
    desk.press('t go');
    expect(desk.bench.entries.at(-1)).toMatchObject({ verb: 'in', value: 'T' });
    expect(desk.bench.warnings({ do: 'in', piece: 'head', hand: { kind: 'T' } })).toContain(
      'used-once',
    );
  });
});
