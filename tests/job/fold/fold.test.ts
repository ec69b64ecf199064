import { describe, expect, it } from 'vitest';
import { fold } from '../../../src/job/fold/fold.ts';
import { readJob } from '../../../src/job/read.ts';
import type { Entry, Verb } from '../../../src/model/types.ts';
import { Bench, COVER } from '../bench.ts';

describe('a piece on its way', () => {
  it('is home, off, open, on, tight', () => {
    const bench = new Bench();
    const where = () => bench.piece().where;
    expect(where()).toBe('home');
    bench.mark({ do: 'out', piece: 'lever' });
    bench.mark({ do: 'off', piece: 'lever' });
    bench.mark({ do: 'out', piece: 'cover', holes: ['2'] });
    expect(where()).toBe('off');
    bench.mark({ do: 'out', piece: 'cover' });
    expect(where()).toBe('off');
    bench.mark({ do: 'off', piece: 'cover', tray: 'cup 2' });
    expect([where(), bench.piece().tray]).toEqual(['open', 'cup 2']);
    bench.mark({ do: 'in', piece: 'cover', holes: ['1'], hand: { kind: 'S' } });
    expect([where(), bench.piece().away]).toEqual(['on', 'no']);
    bench.fillCover();
    expect(bench.states()).toBe('in in in in in');
    bench.mark({ do: 'tight', piece: 'cover' });
    expect([where(), bench.states()]).toEqual(['on', 'in in in in in']);
    bench.mark({ do: 'tight', piece: 'cover' });
    expect([where(), bench.states()]).toEqual(['tight', 'tight tight tight tight tight']);
    expect(bench.hole('3').passes).toEqual(['snug', 'full']);
  });

  it('begins round 2 when it comes off again, and round 1 stays in the diary', () => {
    const bench = new Bench().openCover().fillCover().tightenCover();
    expect(bench.piece().round).toBe(1);
    const before = bench.entries.length;
    bench.mark({ do: 'out', piece: 'cover', holes: ['1'] });
    expect([bench.piece().round, bench.states()]).toEqual([2, 'out home home home home']);
    expect(bench.entries.length).toBe(before + 1);
  });

  it('without bolts goes off and on in one mark each', () => {
    const bench = new Bench();
    bench.mark({ do: 'aside', piece: 'hose' });
    expect([bench.piece('hose').where, bench.piece('hose').away]).toEqual(['open', 'aside']);
    bench.mark({ do: 'on', piece: 'hose' });
    expect([bench.piece('hose').where, bench.piece('hose').round]).toEqual(['on', 1]);
    bench.mark({ do: 'off', piece: 'hose' });
    expect(bench.piece('hose').round).toBe(2);
  });

  it('is tested when the tests after it are done, and not before', () => {
    const text = COVER.replace(
      'diary:',
      'tasks:\n  fill: {do: Fill, after: cover on}\n  weep: {test: Idle, after: fill}\ndiary:',
    );
    const bench = new Bench(text).openCover().fillCover().tightenCover();
    expect(bench.piece().where).toBe('tight');
    bench.mark({ do: 'done', task: 'fill' });
    bench.mark({ do: 'done', task: 'weep', result: 'failed' });
    expect(bench.piece().where).toBe('tight');
    bench.mark({ do: 'done', task: 'weep', result: 'passed' });
    expect(bench.piece().where).toBe('tested');
  });
});

describe('a hole', () => {
  it('keeps what was found beside what the file claims', () => {
    const bench = new Bench();
    bench.mark({ do: 'out', piece: 'cover', row: 's s m l s' });
    expect(bench.hole('3')).toMatchObject({
      claim: { kind: 'M', with: ['clip'] },
      found: { kind: 'M', with: [] },
      unsettled: true,
    });
    expect(bench.hole('1').unsettled).toBe(false);
  });

  it('stays in, whatever the row says, where the row has an exclamation mark', () => {
    const bench = new Bench();
    bench.mark({ do: 'out', piece: 'cover', row: 'S S M+clip L !' });
    expect(bench.states()).toBe('out out out out home');
  });

  it('that was found empty is out and says so', () => {
    const bench = new Bench();
    bench.mark({ do: 'out', piece: 'cover', row: 'S - M+clip L S' });
    expect([bench.hole('2').state, bench.hole('2').trouble]).toEqual(['out', 'empty']);
    bench.mark({ do: 'off', piece: 'cover' });
    bench.mark({ do: 'in', piece: 'cover', holes: ['2'], hand: { kind: 'S' } });
    expect(bench.hole('2').trouble).toBeNull();
  });

  it('whose thread pulls is not tight any more, until it is mended and tightened again', () => {
    const bench = new Bench().openCover().fillCover().tightenCover();
    bench.mark({ do: 'state', piece: 'cover', hole: '4', state: 'pulled' });
    expect([bench.hole('4').state, bench.piece().where]).toEqual(['in', 'on']);
    expect(bench.refusal({ do: 'tight', piece: 'cover', holes: ['4'] })).toEqual({
      code: 'trouble',
      holes: ['4'],
    });
    const mended = { do: 'state', piece: 'cover', hole: '4', state: 'mended' } as const;
    expect(bench.refusal(mended)).toEqual({ code: 'bolt-in', hole: '4' });
    bench.mark({ do: 'out', piece: 'cover', holes: ['4'] });
    expect([bench.piece().round, bench.refusal({ ...mended, says: 'stud' })]).toMatchObject([
      1,
      { ok: true },
    ]);
    expect(bench.warnings(mended)).toEqual(['how']);
    bench.mark({ ...mended, says: 'wire insert M6 x 9' });
    bench.mark({ do: 'in', piece: 'cover', holes: ['4'], hand: { kind: 'L' } });
    expect(bench.hole('4')).toMatchObject({ state: 'in', passes: [] });
    // It held nothing while the others were tightened: all are gone round again.
    expect(bench.states()).toBe('in in in in in');
    for (const pass of ['snug', 'full']) bench.mark({ do: 'tight', piece: 'cover', pass });
    expect(bench.piece().where).toBe('tight');
  });

  it.each(['sheared', 'stud'] as const)('with its bolt %s holds nothing any more', (state) => {
    const bench = new Bench();
    bench.mark({ do: 'state', piece: 'cover', hole: '5', state });
    expect([bench.hole('5').state, bench.hole('5').trouble]).toEqual(['out', state]);
  });

  it('that is stuck is free again once its bolt is out', () => {
    const bench = new Bench();
    bench.mark({ do: 'state', piece: 'cover', hole: '5', state: 'stuck' });
    expect([bench.hole('5').state, bench.hole('5').trouble]).toEqual(['home', 'stuck']);
    bench.mark({ do: 'out', piece: 'cover', holes: ['5'] });
    expect(bench.hole('5').trouble).toBeNull();
  });
});

describe('a torque that is written when some bolts were tightened by feel', () => {
  const LID = `putback: 1
job: Lid
bolts: {S: M6x25}
pieces: {lid: {bolts: S S S}}
tasks: {weep: {test: no drop, after: lid on}}
diary:
`;
  const on = () => {
    const bench = new Bench(LID);
    for (const what of ['out', 'off'] as const) bench.mark({ do: what, piece: 'lid' });
    bench.mark({ do: 'in', piece: 'lid', hand: { kind: 'S' } });
    bench.mark({ do: 'tight', piece: 'lid' });
    return bench;
  };
  const passes = (bench: Bench) => bench.piece('lid').holes.map((h) => h.passes.join(' '));
  const torque = { do: 'write', piece: 'lid', key: 'torque', text: '90 lbf·in' } as const;

  it('asks for those again, and for none that the wrench was set for', () => {
    const bench = on();
    bench.mark({ do: 'tight', piece: 'lid', holes: ['1'] });
    bench.mark({ do: 'tight', piece: 'lid', holes: ['2'], set: '10 N·m' });
    bench.mark(torque);
    expect(passes(bench)).toEqual(['snug', 'snug full', 'snug']);
    bench.mark({ do: 'tight', piece: 'lid' });
    expect(bench.piece('lid').where).toBe('tight');
  });

  it('makes a piece that was all tight by feel tight no more, but one that was tested since', () => {
    const bench = on();
    bench.mark({ do: 'tight', piece: 'lid' });
    expect(bench.piece('lid').where).toBe('tight');
    const tested = on();
    tested.mark({ do: 'tight', piece: 'lid' });
    tested.mark({ do: 'done', task: 'weep', result: 'passed' });
    bench.mark(torque);
    tested.mark(torque);
    expect([bench.piece('lid').where, tested.piece('lid').where]).toEqual(['on', 'tested']);
  });
});

describe('what cannot be and yet stands in a diary', () => {
  const upper = readJob(COVER, 'job.yaml').upper;
  let count = 0;
  const entry = (
    verb: Verb,
    value: string,
    hole: string | null,
    more: Partial<Entry> = {},
  ): Entry => {
    count += 1;
    const id = `m${`${count}`.padStart(7, '0')}`;
    const place = hole === null ? {} : { hole: [hole] };
    return { at: '2026-04-11T18:25:40+02:00', id, piece: 'cover', ...place, verb, value, ...more };
  };
  const holeOf = (entries: Entry[], name: string) =>
    fold(upper, entries)
      .pieces.get('cover')
      ?.holes.find((h) => h.name === name);

  it('two different bolts in one hole: a conflict, the same way round or the other', () => {
    const out = entry('out', 'S', '1');
    const s = entry('in', 'S', '1');
    const m = entry('in', 'M', '1');
    for (const order of [
      [out, s, m],
      [out, m, s],
    ]) {
      const hole = holeOf(order, '1');
      expect(hole?.state).toBe('conflict');
      expect([...(hole?.conflict?.ids ?? [])].sort()).toEqual([s.id, m.id].sort());
    }
  });

  it('the same bolt put in twice: no conflict', () => {
    expect(
      holeOf([entry('out', 'S', '1'), entry('in', 'S', '1'), entry('in', 'S', '1')], '1')?.state,
    ).toBe('in');
  });

  it('tightened with nothing in it: a conflict, settled by what is there, not yet tight', () => {
    const odd = [entry('out', 'S', '1'), entry('tight', 'full', '1')];
    expect(holeOf(odd, '1')?.state).toBe('conflict');
    const settled = holeOf([...odd, entry('settle', 'S', '1')], '1');
    expect([settled?.state, settled?.conflict]).toEqual(['out', null]);
  });

  it('two different finds: a conflict until it is settled', () => {
    const two = [entry('out', 'S', '1'), entry('out', 'L', '1')];
    expect(holeOf(two, '1')?.state).toBe('conflict');
    expect(holeOf([...two, entry('settle', 'L', '1')], '1')).toMatchObject({
      state: 'out',
      found: { kind: 'L' },
    });
  });

  it('a bolt over another with a reason: no conflict', () => {
    const hole = holeOf(
      [
        entry('out', 'S', '1'),
        entry('in', 'S', '1'),
        entry('in', 'M', '1', { because: 'S was bent' }),
      ],
      '1',
    );
    expect([hole?.state, hole?.holds?.kind]).toEqual(['in', 'M']);
  });

  it('a piece and a hole that only the diary knows are shown all the same', () => {
    const job = fold(upper, [
      entry('out', 'S', '77'),
      { ...entry('out', 'S S', null), piece: 'gone' },
    ]);
    expect(job.pieces.get('cover')?.holes.at(-1)).toMatchObject({ name: '77', state: 'out' });
    expect(job.pieces.get('gone')?.holes.map((h) => h.state)).toEqual(['out', 'out']);
  });
});
