import { describe, expect, it } from 'vitest';
import type { Wish } from '../../../src/model/types.ts';
import { Bench, COVER } from '../bench.ts';

describe('out', () => {
  it('notes what came out, as the file claims it, in one entry', () => {
    expect(new Bench().mark({ do: 'out', piece: 'cover' })).toMatchObject({
      piece: 'cover',
      verb: 'out',
      value: 'S S M+clip L S',
    });
  });

  it('names the holes when they are not all, and says one word for the same kind', () => {
    const entry = new Bench().mark({ do: 'out', piece: 'cover', holes: ['1', '2'] });
    expect([entry.hole, entry.value]).toEqual([['1', '2'], 'S']);
  });

  it('says where another bolt came out than the file claims, and asks for no reason', () => {
    const bench = new Bench();
    expect(bench.warnings({ do: 'out', piece: 'cover', row: 's l m+clip l s' })).toEqual([
      'still-over',
      'found-other',
    ]);
  });

  it('writes the row of a piece that the file says nothing about', () => {
    const bench = new Bench('putback: 1\njob: X\ndiary:\n');
    const verdict = bench.ask({ do: 'out', piece: 'lid', row: 's s m+clip' });
    expect(verdict).toMatchObject({
      ok: true,
      edits: [{ edit: 'row', piece: 'lid', row: 'S S M+clip' }],
    });
    bench.mark({ do: 'out', piece: 'lid', row: 's s m+clip' });
    expect(bench.states('lid')).toBe('out out out');
    expect(bench.text).toContain('bolts: S S M+clip');
  });

  it('gives a new kind all but the length of its neighbour', () => {
    const bench = new Bench(COVER.replace('bolts: S S M+clip L S\n', 'note: not looked at yet\n'));
    const verdict = bench.ask({ do: 'out', piece: 'cover', row: 's .30 s' });
    expect(verdict).toMatchObject({
      edits: [
        { edit: 'kind', letter: 'A', text: 'M6x30 flange, 8 mm' },
        { edit: 'row', row: 'S A S' },
      ],
    });
  });

  it('is already so the second time, and writes nothing', () => {
    const bench = new Bench();
    bench.mark({ do: 'out', piece: 'cover' });
    expect(bench.refusal({ do: 'out', piece: 'cover', holes: ['1'] })).toEqual({
      ok: true,
      entry: null,
    });
  });

  it('asks when a second, different find is noted for a hole', () => {
    const bench = new Bench();
    bench.mark({ do: 'out', piece: 'cover' });
    expect(bench.refusal({ do: 'out', piece: 'cover', holes: ['1'], row: 'L' })).toEqual({
      code: 'already-out',
      holes: ['1'],
    });
  });

  it.each<[Wish, string]>([
    [{ do: 'out', piece: 'nothere' }, 'no-such-piece'],
    [{ do: 'out', piece: 'cover', holes: ['9'] }, 'no-such-hole'],
    [{ do: 'out', piece: 'cover', row: 'S S' }, 'row-count'],
    [{ do: 'out', piece: 'cover', row: 'S S M+ L S' }, 'bad-word'],
    [{ do: 'out', piece: 'No Name', row: 'S' }, 'bad-name'],
  ])('wrong use: %j', (wish, code) => {
    const verdict = new Bench().ask(wish);
    expect(verdict).toMatchObject({ ok: false, refused: { code, overrulable: false } });
  });
});

describe('in', () => {
  it('stops the wrong bolt and says where it belongs', () => {
    const bench = new Bench().openCover();
    expect(bench.refusal({ do: 'in', piece: 'cover', holes: ['1'], hand: { kind: 'M' } })).toEqual({
      code: 'wrong-bolt',
      hole: '1',
      takes: 'S',
      inHand: 'M',
      belongs: ['3'],
    });
  });

  it('lets it in with a reason, which stands in the entry', () => {
    const bench = new Bench().openCover();
    const entry = bench.mark({
      do: 'in',
      piece: 'cover',
      holes: ['1'],
      hand: { kind: 'M' },
      because: 'S is lost',
    });
    expect(entry).toMatchObject({ value: 'M', because: 'S is lost' });
    expect(bench.hole('1').holds?.kind).toBe('M');
  });

  it('reminds of what lies under the head, and notes it', () => {
    const bench = new Bench().openCover();
    const wish: Wish = { do: 'in', piece: 'cover', holes: ['3'], hand: { kind: 'm' } };
    expect(bench.warnings(wish)).toEqual(['under-head']);
    expect(bench.mark(wish).value).toBe('M+clip');
  });

  it('stops another thing under the head', () => {
    const bench = new Bench().openCover();
    expect(
      bench.refusal({ do: 'in', piece: 'cover', holes: ['3'], hand: { kind: 'M+washer' } }),
    ).toMatchObject({
      code: 'wrong-bolt',
      takes: 'M+clip',
      inHand: 'M+washer',
    });
  });

  it('puts in all that take the kind', () => {
    const bench = new Bench().openCover();
    const entry = bench.mark({ do: 'in', piece: 'cover', hand: { kind: 'S' } });
    expect([entry.hole, entry.value]).toEqual([['1', '2', '5'], 'S']);
    expect(bench.refusal({ do: 'in', piece: 'cover', hand: { kind: 'S' } })).toEqual({
      ok: true,
      entry: null,
    });
  });

  it('knows a bolt by its length', () => {
    const bench = new Bench().openCover();
    expect(bench.mark({ do: 'in', piece: 'cover', holes: ['4'], hand: { length: 55 } }).value).toBe(
      'L',
    );
    expect(
      bench.refusal({ do: 'in', piece: 'cover', holes: ['1'], hand: { length: 40 } }),
    ).toMatchObject({
      code: 'wrong-bolt',
      inHand: { length: 40 },
      belongs: [],
    });
  });

  it('asks which when two kinds are of that length', () => {
    const text = COVER.replace('  L:', '  T: M6x25 countersunk\n  L:').replace('L S\n', 'L T\n');
    const bench = new Bench(text).openCover();
    const wish: Wish = { do: 'in', piece: 'cover', holes: ['1'], hand: { length: 25 } };
    expect(bench.refusal(wish)).toEqual({ code: 'which', kinds: ['S', 'T'] });
    expect(bench.mark({ ...wish, because: 'it was in bag 1' }).value).toBe('S');
  });

  it('does not go where the bolt never came out, where one is in, or before file and find are settled', () => {
    const bench = new Bench();
    bench.mark({ do: 'out', piece: 'lever' });
    bench.mark({ do: 'out', piece: 'cover', row: '! L M+clip L S' });
    const put = (hole: string, kind: string): Wish => ({
      do: 'in',
      piece: 'cover',
      holes: [hole],
      hand: { kind },
    });
    expect(bench.refusal(put('1', 'S'))).toEqual({ code: 'not-out', holes: ['1'] });
    expect(bench.refusal(put('2', 'S'))).toEqual({ code: 'unsettled', holes: ['2'] });
    bench.mark(put('5', 'S'));
    expect(bench.refusal(put('5', 'L'))).toEqual({ code: 'full', holes: ['5'] });
    expect(bench.refusal(put('5', 'S'))).toEqual({ ok: true, entry: null });
  });

  it('waits for what lies under it', () => {
    const bench = new Bench().openCover();
    const wish: Wish = { do: 'in', piece: 'lever', holes: ['1'], hand: { kind: 'S' } };
    expect(bench.refusal(wish)).toEqual({ code: 'blocked', by: ['cover'] });
    bench.fillCover();
    expect(bench.refusal(wish)).toEqual({ code: 'blocked', by: ['cover'] });
    bench.tightenCover();
    expect(bench.mark(wish).verb).toBe('in');
  });

  it.each<[Wish, string]>([
    [{ do: 'in', piece: 'cover', holes: ['1'] }, 'no-hand'],
    [{ do: 'in', piece: 'cover', holes: ['1'], hand: { kind: 'X' } }, 'no-such-kind'],
    [{ do: 'in', piece: 'nothere', hand: { kind: 'S' } }, 'no-such-piece'],
  ])('wrong use: %j', (wish, code) => {
    expect(new Bench().ask({ ...wish, because: 'no reason helps' } as Wish)).toMatchObject({
      ok: false,
      refused: { code, overrulable: false },
    });
  });
});

describe('tight', () => {
  it('takes the next pass of the hole, with the torque as printed', () => {
    const bench = new Bench().openCover().fillCover();
    expect(bench.mark({ do: 'tight', piece: 'cover', holes: ['1'] }).value).toBe('snug');
    expect(bench.mark({ do: 'tight', piece: 'cover', holes: ['1'] })).toMatchObject({
      value: 'full',
      set: '10 N·m',
    });
    expect(bench.mark({ do: 'tight', piece: 'cover', holes: ['1'] })).toMatchObject({
      value: 'final',
      set: '10 N·m',
    });
    expect(bench.refusal({ do: 'tight', piece: 'cover', holes: ['1'] })).toEqual({
      ok: true,
      entry: null,
    });
  });

  it('is refused without a bolt', () => {
    const bench = new Bench().openCover();
    expect(bench.refusal({ do: 'tight', piece: 'cover', holes: ['1'] })).toEqual({
      code: 'not-in',
      holes: ['1'],
    });
  });

  it("keeps to the maker's list, unless a reason is given", () => {
    const bench = new Bench(COVER.replace('    torque:', '    sequence: 1 3 5 2 4\n    torque:'))
      .openCover()
      .fillCover();
    expect(bench.refusal({ do: 'tight', piece: 'cover', holes: ['2'] })).toEqual({
      code: 'out-of-order',
      next: '1',
    });
    bench.mark({ do: 'tight', piece: 'cover', holes: ['1'] });
    expect(bench.refusal({ do: 'tight', piece: 'cover', holes: ['4'] })).toEqual({
      code: 'out-of-order',
      next: '3',
    });
    bench.mark({ do: 'tight', piece: 'cover', holes: ['4'], because: 'locating bolt' });
    expect(bench.mark({ do: 'tight', piece: 'cover', holes: ['3'] }).value).toBe('snug');
  });

  it('lets any other order through with a word', () => {
    const bench = new Bench().openCover().fillCover();
    bench.mark({ do: 'tight', piece: 'cover', holes: ['1'] });
    expect(bench.warnings({ do: 'tight', piece: 'cover', holes: ['2'] })).toEqual(['other-order']);
  });

  it('knows its passes', () => {
    const bench = new Bench().openCover().fillCover();
    expect(bench.refusal({ do: 'tight', piece: 'cover', pass: 'fulll' })).toMatchObject({
      code: 'no-such-pass',
    });
  });
});

describe('off, aside, on', () => {
  it('does not pry while a bolt is in', () => {
    const bench = new Bench();
    bench.mark({ do: 'out', piece: 'cover', holes: ['1', '2', '4', '5'] });
    for (const how of ['off', 'aside'] as const) {
      expect(bench.refusal({ do: how, piece: 'cover' })).toEqual({
        code: 'still-in',
        holes: ['3'],
      });
    }
    expect(bench.mark({ do: 'off', piece: 'cover', because: 'sawn through' })).toMatchObject({
      verb: 'removed',
      value: 'all',
    });
  });

  it('writes a piece that the file does not know', () => {
    const bench = new Bench('putback: 1\njob: X\ndiary:\n');
    bench.mark({ do: 'off', piece: 'fuel-hose' });
    expect([bench.piece('fuel-hose').where, bench.piece('fuel-hose').spec.name]).toEqual([
      'open',
      'Fuel hose',
    ]);
    expect(bench.text).toContain('fuel-hose:');
  });

  it('is already so at home, and twice', () => {
    const bench = new Bench();
    expect(bench.refusal({ do: 'on', piece: 'hose' })).toEqual({ ok: true, entry: null });
    bench.mark({ do: 'off', piece: 'hose' });
    expect(bench.refusal({ do: 'off', piece: 'hose' })).toEqual({ ok: true, entry: null });
  });

  it('goes on only over what is back', () => {
    const bench = new Bench().openCover();
    expect(bench.refusal({ do: 'on', piece: 'lever' })).toEqual({ code: 'blocked', by: ['cover'] });
  });

  it('says when something noted as over it is still on', () => {
    const bench = new Bench();
    bench.mark({ do: 'out', piece: 'cover' });
    expect(bench.warnings({ do: 'off', piece: 'cover' })).toEqual(['still-over']);
  });
});

describe('settle', () => {
  it('where the file was right, changes nothing above the diary', () => {
    const bench = new Bench();
    bench.mark({ do: 'out', piece: 'cover', row: 's l m+clip l s' });
    const before = bench.text;
    bench.mark({ do: 'settle', piece: 'cover', hole: '2', kind: 'S' });
    expect([
      bench.text === before,
      bench.hole('2').unsettled,
      bench.hole('2').belongs?.kind,
    ]).toEqual([true, false, 'S']);
  });

  it('where the find was right, changes the row in place', () => {
    const bench = new Bench();
    bench.mark({ do: 'out', piece: 'cover', row: 's l m+clip l s' });
    bench.mark({ do: 'settle', piece: 'cover', hole: '2', kind: 'L' });
    expect(bench.text).toContain('bolts: S L M+clip L S');
    expect([bench.hole('2').unsettled, bench.hole('2').belongs?.kind]).toEqual([false, 'L']);
  });

  it('takes the letter alone for the one of both that has it', () => {
    const bench = new Bench();
    bench.mark({ do: 'out', piece: 'cover', row: 's m+bracket m+clip l s' });
    expect(bench.mark({ do: 'settle', piece: 'cover', hole: '2', kind: 'm' }).value).toBe(
      'M+bracket',
    );
  });

  it('is already so where nothing differs', () => {
    const bench = new Bench();
    expect(bench.refusal({ do: 'settle', piece: 'cover', hole: '3', kind: 'M+clip' })).toEqual({
      ok: true,
      entry: null,
    });
  });
});

describe('undo', () => {
  it('takes back the latest mark, step by step', () => {
    const bench = new Bench();
    bench.mark({ do: 'out', piece: 'cover', holes: ['1'] });
    bench.mark({ do: 'out', piece: 'cover', holes: ['2'] });
    bench.mark({ do: 'undo' });
    expect(bench.states()).toBe('out home home home home');
    bench.mark({ do: 'undo' });
    expect(bench.states()).toBe('home home home home home');
    expect(bench.refusal({ do: 'undo' })).toEqual({ code: 'nothing' });
  });

  it('of an undo is redo', () => {
    const bench = new Bench();
    bench.mark({ do: 'out', piece: 'cover', holes: ['1'] });
    const back = bench.mark({ do: 'undo' });
    bench.mark({ do: 'undo', id: back.id });
    expect(bench.hole('1').state).toBe('out');
  });

  it('is refused while later entries rest on it', () => {
    const bench = new Bench();
    const first = bench.mark({ do: 'out', piece: 'cover', holes: ['1'] });
    bench.mark({ do: 'out', piece: 'lever' });
    const rests = bench.mark({ do: 'in', piece: 'cover', holes: ['1'], hand: { kind: 'S' } });
    expect(bench.refusal({ do: 'undo', id: first.id })).toEqual({
      code: 'depends',
      ids: [rests.id],
    });
    bench.mark({ do: 'note', text: 'nothing rests on a note' });
    expect(bench.refusal({ do: 'undo', id: rests.id })).toMatchObject({ ok: true });
  });

  it('does not bring back what something later rests on', () => {
    const bench = new Bench();
    bench.mark({ do: 'out', piece: 'cover', holes: ['1'] });
    const undone = bench.mark({ do: 'undo' });
    const again = bench.mark({ do: 'out', piece: 'cover', holes: ['1'], row: 'L' });
    expect(bench.refusal({ do: 'undo', id: undone.id })).toEqual({
      code: 'depends',
      ids: [again.id],
    });
  });

  it('names an entry that is there', () => {
    expect(new Bench().refusal({ do: 'undo', id: 'nosuchid' })).toEqual({
      code: 'no-such-entry',
      id: 'nosuchid',
    });
  });
});

describe('done, note, hole', () => {
  it('notes a task once, with what was and what is set', () => {
    const bench = new Bench(
      COVER.replace('diary:', 'tasks:\n  slack: {adjust: Slack, after: cover on}\ndiary:'),
    );
    expect(bench.warnings({ do: 'done', task: 'slack' })).toEqual(['early']);
    const entry = bench.mark({
      do: 'done',
      task: 'slack',
      was: '40 mm',
      set: '25 mm',
    });
    expect(entry).toMatchObject({ task: 'slack', value: 'done', was: '40 mm', set: '25 mm' });
    expect(bench.refusal({ do: 'done', task: 'slack' })).toEqual({ ok: true, entry: null });
    expect(bench.refusal({ do: 'done', task: 'slak' })).toMatchObject({ code: 'no-such-task' });
  });

  it('keeps a note on the job, a piece or a hole', () => {
    const bench = new Bench();
    expect(bench.mark({ do: 'note', text: 'smells of petrol' })).toMatchObject({
      verb: 'note',
      value: 'smells of petrol',
    });
    expect(bench.mark({ do: 'note', piece: 'cover', hole: '3', text: 'rust' }).hole).toEqual(['3']);
    expect(bench.refusal({ do: 'note', text: ' ' })).toMatchObject({ code: 'empty-note' });
  });

  it('notes a trouble once', () => {
    const bench = new Bench();
    bench.mark({ do: 'state', piece: 'cover', hole: '3', state: 'stuck', says: 'soaking' });
    expect(bench.refusal({ do: 'state', piece: 'cover', hole: '3', state: 'stuck' })).toEqual({
      ok: true,
      entry: null,
    });
    expect(bench.refusal({ do: 'state', piece: 'cover', hole: '1', state: 'mended' })).toEqual({
      ok: true,
      entry: null,
    });
  });
});

describe('undo of settle', () => {
  it('puts the row back as it was, and a redo forward again', () => {
    const bench = new Bench();
    bench.mark({ do: 'out', piece: 'cover', row: 's l m+clip l s' });
    const before = bench.text;
    bench.mark({ do: 'settle', piece: 'cover', hole: '2', kind: 'L' });
    const settled = bench.text;
    const back = bench.mark({ do: 'undo' });
    expect([bench.text === before, bench.hole('2').unsettled]).toEqual([true, true]);
    bench.mark({ do: 'undo', id: back.id });
    expect([bench.text === settled, bench.hole('2').belongs?.kind]).toEqual([true, 'L']);
  });
});

describe('why a bolt is wrong', () => {
  const say = (text: string, kind: string) => {
    const bench = new Bench(text).openCover();
    const verdict = bench.ask({ do: 'in', piece: 'cover', holes: ['1'], hand: { kind } });
    return verdict.ok ? 'let in' : verdict.refused.say;
  };

  it('says the difference where nothing was measured', () => {
    expect(say(COVER, 'M')).toBe(
      '1 takes S, 25 mm. In your hand: M, 35 mm. 10 mm longer than the right one: assume that it bottoms until the hole is probed. It belongs in 3.',
    );
  });

  it('says by how much it bottoms where the hole was probed', () => {
    const text = COVER.replace(
      '    torque:',
      '    holes: {1: {thick: 10, thread: 0..17}}\n    torque:',
    );
    expect(say(text, 'M')).toContain('It would bottom 8 mm before the head clamps.');
  });

  it('lets the same bolt in under another letter', () => {
    const text = COVER.replace('  L:', '  T: M6x25 flange, 8 mm\n  L:').replace('L S\n', 'L T\n');
    const bench = new Bench(text).openCover();
    const wish: Wish = { do: 'in', piece: 'cover', holes: ['1'], hand: { kind: 'T' } };
    expect(bench.warnings(wish)).toEqual(['other-kind']);
  });
});

describe('what went in must come out', () => {
  it('a piece does not go on over what is still inside, by either way', () => {
    const bench = new Bench().openCover();
    bench.mark({ do: 'inside', piece: 'cover', what: '2 rags' });
    bench.mark({ do: 'cleared', piece: 'cover', what: '1 rag' });
    const stopped = { code: 'inside', things: [{ what: 'rag', count: 1 }] };
    expect(bench.refusal({ do: 'on', piece: 'cover' })).toEqual(stopped);
    expect(bench.refusal({ do: 'in', piece: 'cover', holes: ['1'], hand: { kind: 'S' } })).toEqual(
      stopped,
    );
    expect(bench.refusal({ do: 'cleared', piece: 'cover', what: '2 rags' })).toMatchObject({
      code: 'not-inside',
    });
    bench.mark({ do: 'cleared', what: 'all' });
    expect(bench.mark({ do: 'on', piece: 'cover' }).verb).toBe('fitted');
  });
});

describe('a second round', () => {
  it('asks for the tests of the piece anew', () => {
    const text = COVER.replace(
      'diary:',
      'tasks:\n  fill: {do: Fill, after: cover on}\n  weep: {test: Idle, after: fill}\ndiary:',
    );
    const bench = new Bench(text).openCover().fillCover().tightenCover();
    bench.mark({ do: 'done', task: 'fill' });
    bench.mark({ do: 'done', task: 'weep', result: 'passed' });
    expect(bench.piece().where).toBe('tested');
    bench.mark({ do: 'out', piece: 'cover' });
    expect([...bench.job.tasks.values()].map((t) => t.done)).toEqual([null, null]);
    bench.mark({ do: 'off', piece: 'cover' });
    bench.fillCover().tightenCover();
    expect(bench.piece().where).toBe('tight');
    expect(bench.mark({ do: 'done', task: 'fill' }).value).toBe('done');
  });
});

describe('what follows from the work and is not in the file yet', () => {
  it('is written there with its first mark', () => {
    const bench = new Bench().openCover().fillCover().tightenCover();
    const add = { verb: 'test', say: 'Cover weeps when hot?', after: 'cover on' } as const;
    bench.mark({ do: 'done', task: 'cover-weeps', result: 'passed', add });
    expect(bench.text).toContain(
      'tasks:\n  cover-weeps: {test: "Cover weeps when hot?", after: cover on}\n',
    );
    expect(bench.job.tasks.get('cover-weeps')?.done).toBe('passed');
    bench.mark({
      do: 'buy',
      buy: 'cover-gasket',
      state: 'ordered',
      add: { what: 'cover gasket, new', for: 'cover on' },
    });
    expect(bench.text).toContain(
      'buy:\n  cover-gasket: {what: "cover gasket, new", for: cover on}\n',
    );
    expect(bench.refusal({ do: 'buy', buy: 'nothere', state: 'here' })).toMatchObject({
      code: 'no-such-buy',
    });
  });
});

describe('a thing used once', () => {
  it('can be noted as here again in the next round', () => {
    const text = COVER.replace(
      'diary:',
      'buy:\n  gasket: {what: gasket, once: true, for: cover on}\ndiary:',
    );
    const bench = new Bench(text).openCover();
    bench.mark({ do: 'buy', buy: 'gasket', state: 'here' });
    expect(bench.refusal({ do: 'buy', buy: 'gasket', state: 'here' })).toEqual({
      ok: true,
      entry: null,
    });
    bench.fillCover().tightenCover();
    bench.mark({ do: 'out', piece: 'cover' });
    bench.mark({ do: 'off', piece: 'cover' });
    expect(bench.mark({ do: 'buy', buy: 'gasket', state: 'here' }).value).toBe('here');
  });
});
