/** The end of a piece, twice: what is left to go round, when the start is asked, and what Backspace takes. */
import { describe, expect, it } from 'vitest';
import { jointRecords } from '../../../src/paper/joint-record.ts';
import { roundLeft } from '../../../src/plan/piece/round-left.ts';
import { Bench } from '../../job/bench.ts';
import { Desk, SAME_DAY } from '../desk.ts';

const LID = `putback: 1
job: Lid weeps
pieces:
  lid: {name: Lid, bolts: S S S S S S, torque: 10 N·m}
bolts: {S: M6x25}
tasks:
  weeps: {test: "weeps when hot?", after: lid on}
diary:
`;

function back(passes: readonly string[], bench = new Bench(LID)): Bench {
  bench.mark({ do: 'out', piece: 'lid' });
  bench.mark({ do: 'off', piece: 'lid' });
  bench.mark({ do: 'in', piece: 'lid', hand: { kind: 'S' } });
  for (const pass of passes) bench.mark({ do: 'tight', piece: 'lid', pass });
  return bench;
}
const go = (n: number) => Array.from({ length: n }, () => 'go').join(' ');

describe('the list before the first start', () => {
  it('comes when the last pass was gone through, not before it', () => {
    const desk = new Desk(back(['snug'])).open('lid');
    desk.press(go(6));
    expect(desk.frame).not.toContain('before the first start');
    desk.press('go');
    expect(desk.frame).toContain('final');
    desk.press(go(6));
    expect(desk.frame).toContain('before the first start');
    expect(desk.frame).not.toContain('not gone once round');
  });

  it('comes again in the next round', () => {
    const desk = new Desk(back(['snug', 'full'])).open('lid').press(go(6));
    expect(desk.frame).toContain('before the first start');
    desk.press('a escape');
    back(['snug', 'full'], desk.bench);
    const again = new Desk(desk.bench);
    again.state = { ...again.state, read: desk.state.read };
    again.open('lid').press(go(6));
    expect(again.frame).toContain('before the first start');
  });
});

describe('a test that was passed after the last bolt', () => {
  it('is what Backspace at the piece takes back first', () => {
    const desk = new Desk(back(['snug', 'full'])).open('lid').press(go(6));
    desk.press('escape').bench.mark({ do: 'done', task: 'weeps', result: 'passed' });
    const passed = desk.bench.entries.at(-1)?.id ?? '';
    desk.state = {
      ...desk.state,
      open: { file: 'cover.yaml', job: desk.bench.job },
      mine: [...desk.state.mine, passed],
    };
    desk.open('lid').press('backspace');
    expect(desk.bench.entries.at(-1)).toMatchObject({ verb: 'undo', value: passed });
    expect(desk.bench.piece('lid').where).toBe('tight');
  });
});

describe('a round that was begun, and a test that was passed', () => {
  it('is left all the same, and its record is not complete', () => {
    const bench = back(['snug', 'full']);
    for (const hole of ['1', '2', '3']) {
      bench.mark({ do: 'tight', piece: 'lid', holes: [hole], pass: 'final' });
    }
    bench.mark({ do: 'done', task: 'weeps', result: 'passed' });
    expect(bench.piece('lid').where).toBe('tested');
    expect(roundLeft(bench.job, bench.piece('lid'))).toEqual(['4', '5', '6']);
    const [record] = jointRecords(bench.job, SAME_DAY, null);
    expect(record?.complete).toBe(false);
    expect(record?.fields['Assembly procedure and tightening method'].join(' ')).toContain(
      'NOT COMPLETE: final not gone through',
    );
  });

  it('is recorded in one line a pass, with the order in which the bolts were marked', () => {
    const bench = back(['snug']);
    for (const hole of ['3', '1', '5', '2', '6', '4']) {
      bench.mark({ do: 'tight', piece: 'lid', holes: [hole], pass: 'full' });
    }
    const [record] = jointRecords(bench.job, SAME_DAY, null);
    expect(record?.fields['Target and what was set']).toEqual([
      'printed: 10 N·m',
      'snug: by hand',
      'full: 10 N·m',
    ]);
    expect(record?.fields['Assembly procedure and tightening method'].join('; ')).toContain(
      'full marked in this order: 3 1 5 2 6 4',
    );
  });
});

describe('bolts that are turned by angle', () => {
  const CAP = LID.replace('S S S S S S, torque: 10 N·m', 'S S S, torque: "20 N·m + 90°"').replace(
    'M6x25',
    'M10x40',
  );
  const said = (desk: Desk) => desk.frame.replace(/\s+/g, ' ');

  it('are asked about with the first that comes out and with those that go in', () => {
    const desk = new Desk(new Bench(CAP)).open('lid');
    if (desk.step !== 'off') desk.press('go');
    desk.press('go');
    expect(said(desk)).toContain('does the manual ask for new ones?');
  });

  it('stop beside a pulled thread, which is mended with the piece off', () => {
    const desk = new Desk(back(['snug'], new Bench(CAP))).open('lid');
    desk.press('go !');
    expect(said(desk)).toContain('It has to come off for the mend');
    desk.press('go go');
    expect(desk.frame).not.toContain('turned 90°');
    desk.press('go go');
    expect(desk.bench.entries.some((e) => e.value === 'angle')).toBe(false);
  });
});
