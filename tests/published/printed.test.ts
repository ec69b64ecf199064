/** Torques as manuals print them, and what they mean. */
import { describe, expect, it } from 'vitest';
import { readStages } from '../../src/bolt/torque/stages.ts';
import { said } from '../bolt/torque/say-stages.ts';

const FORM = 'form of service manuals, common practice';
const ROWS: readonly [text: string, stages: string, source: string][] = [
  ['20 N·m + 90°', '20 N·m | +90°', FORM],
  ['40 N·m, then 90°, then 90°', '40 N·m | +90° | +90°', FORM],
  [
    '1st 20 N·m, 2nd 40 N·m, 3rd + 60°, 4th + 80°',
    '20 N·m | 40 N·m | +60° | +80°',
    "four stages as printed for one light car's head bolts, 2011; one source",
  ],
  ['20 N·m, 40 N·m, then 90° and 90°', '20 N·m | 40 N·m | +90° | +90°', FORM],
  ['12 N·m (1.2 kgf·m, 9 lbf·ft)', '12 N·m', 'three units of one value, common practice'],
  ['10-12 Nm', '10..12 N·m', 'range, common practice'],
  ['88 in-lb', '88 lbf·in', 'common spelling in print'],
  ['7 1/2 ft-lb', '7.5 lbf·ft', 'common spelling in print'],
  ['max 10 Nm', 'max 10 N·m', 'common practice'],
  ['25 N·m, back off 1/2 turn, then 15 N·m', '25 N·m | loosen 180° | 15 N·m', FORM],
  [
    'tight by hand, then 3/4 turn',
    'snug | +270°',
    'filters and plugs with a new washer, common practice',
  ],
];

describe('printed torques', () => {
  it.each(ROWS)('%s means %s (%s)', (text, stages) => {
    const read = readStages(text);
    expect(said(read.stages)).toBe(stages);
    expect([read.rest, read.differ]).toEqual([[], []]);
  });

  it('10 N·m, oiled threads: said of the thread (common practice, no source)', () => {
    expect(readStages('10 N·m, oiled threads')).toMatchObject({
      thread: 'oiled threads',
      rest: [],
    });
  });

  it('a second unit that says something else is told (made for this list)', () => {
    const read = readStages('12 N·m (1.2 kgf·m, 19 lbf·ft)');
    expect(said(read.stages)).toBe('12 N·m');
    expect(read.differ).toEqual([{ text: '19 lbf·ft', at: 19 }]);
  });

  it('see 4-12 is no figure: it is shown as it stands (common practice, no source)', () => {
    expect(readStages('see 4-12')).toMatchObject({ stages: [], where: 'see 4-12' });
  });
});
