import { describe, expect, it } from 'vitest';
import { judge } from '../../../src/job/judge/judge.ts';
import type { Entry, Wish } from '../../../src/model/types.ts';
import { Bench, COVER } from '../bench.ts';

describe('an id', () => {
  it('that an entry has already is refused, since the second would not count', () => {
    const bench = new Bench();
    const { id } = bench.mark({ do: 'out', piece: 'cover', holes: ['1'] });
    const stamp = { at: '2026-04-11T18:25:40+02:00', id };
    for (const because of [undefined, 'no reason helps']) {
      const wish: Wish = {
        do: 'out',
        piece: 'cover',
        holes: ['2'],
        ...(because ? { because } : {}),
      };
      expect(judge(bench.job, wish, stamp)).toMatchObject({
        ok: false,
        refused: { code: 'id-taken', overrulable: false },
      });
    }
  });
});

describe('a reason overrules', () => {
  const put = (hole: string, kind: string): Wish => ({
    do: 'in',
    piece: 'cover',
    holes: [hole],
    hand: { kind },
  });
  const twins = COVER.replace('  L:', '  T: M6x25 countersunk\n  L:').replace('L S\n', 'L T\n');
  const listed = COVER.replace('    torque:', '    sequence: 1 3 5 2 4\n    torque:');
  const parts = COVER.replace('diary:', 'buy:\n  gasket: {what: gasket, for: cover on}\ndiary:');
  const odd = (b: Bench) => {
    b.mark({ do: 'out', piece: 'cover', row: 's l m+clip l s' });
    return b;
  };

  /** [code, the bench before it, the wish, what the hole or piece is then]. */
  const cases: [string, () => Bench, Wish, (b: Bench) => unknown, unknown][] = [
    [
      'wrong-bolt',
      () => new Bench().openCover(),
      put('1', 'M'),
      (b) => b.hole('1').holds?.kind,
      'M',
    ],
    ['not-out', () => new Bench(), put('1', 'M'), (b) => b.hole('1').holds?.kind, 'M'],
    [
      'full',
      () => new Bench().openCover().fillCover(),
      put('1', 'L'),
      (b) => b.hole('1').holds?.kind,
      'L',
    ],
    ['unsettled', () => odd(new Bench()), put('2', 'L'), (b) => b.hole('2').state, 'in'],
    [
      'blocked',
      () => new Bench().openCover(),
      { do: 'in', piece: 'lever', hand: { kind: 'S' } },
      (b) => b.states('lever'),
      'in',
    ],
    [
      'which',
      () => new Bench(twins).openCover(),
      { do: 'in', piece: 'cover', holes: ['1'], hand: { length: 25 } },
      (b) => b.hole('1').holds?.kind,
      'S',
    ],
    [
      'inside',
      () => {
        const b = new Bench().openCover();
        b.mark({ do: 'inside', piece: 'cover', what: 'rag' });
        return b;
      },
      { do: 'on', piece: 'cover' },
      (b) => b.piece().away,
      'no',
    ],
    [
      'blocked',
      () => {
        const b = new Bench(parts).openCover();
        b.mark({ do: 'buy', buy: 'gasket', state: 'wrong' });
        return b;
      },
      { do: 'on', piece: 'cover' },
      (b) => b.piece().away,
      'no',
    ],
    [
      'not-in',
      () => new Bench().openCover(),
      { do: 'tight', piece: 'cover', holes: ['1'], pass: 'full' },
      (b) => b.hole('1').state,
      'tight',
    ],
    [
      'trouble',
      () => {
        const b = new Bench().openCover().fillCover();
        b.mark({ do: 'state', piece: 'cover', hole: '1', state: 'pulled' });
        return b;
      },
      { do: 'tight', piece: 'cover', holes: ['1'] },
      (b) => [b.hole('1').passes, b.hole('1').trouble],
      [['snug'], 'pulled'],
    ],
    [
      'out-of-order',
      () => new Bench(listed).openCover().fillCover(),
      { do: 'tight', piece: 'cover', holes: ['4'] },
      (b) => b.hole('4').passes,
      ['snug'],
    ],
    [
      'still-in',
      () => new Bench(),
      { do: 'off', piece: 'cover' },
      (b) => b.piece().away,
      'removed',
    ],
    [
      'already-out',
      () => new Bench().openCover(),
      { do: 'out', piece: 'cover', holes: ['1'], row: 'L' },
      (b) => b.hole('1').found?.kind,
      'L',
    ],
  ];

  it.each(cases)('%s: %#', (code, make, wish, look, is) => {
    const bench = make();
    const before = bench.text;
    expect(bench.refusal(wish)).toMatchObject({ code });
    expect(bench.text, 'a refusal writes nothing').toBe(before);
    const entry = bench.mark({ ...wish, because: 'so it is' });
    expect(entry.because).toBe('so it is');
    expect([look(bench), bench.job.conflicts]).toEqual([is, []]);
  });

  it('depends: what rested on it is looked at again', () => {
    const bench = new Bench();
    const first = bench.mark({ do: 'out', piece: 'cover', holes: ['1'] });
    bench.mark({ do: 'in', piece: 'cover', holes: ['1'], hand: { kind: 'S' } });
    expect(bench.refusal({ do: 'undo', id: first.id })).toMatchObject({ code: 'depends' });
    expect(bench.mark({ do: 'undo', id: first.id, because: 'wrong cover' }).because).toBe(
      'wrong cover',
    );
    expect(bench.hole('1').state).toBe('in');
  });

  it('two bolts in one hole: it says which is in it', () => {
    const bench = new Bench().openCover();
    bench.mark(put('1', 'S'));
    bench.entries.push({ ...(bench.entries.at(-1) as Entry), id: 'fromther', value: 'M' });
    expect(bench.hole('1').state).toBe('conflict');
    bench.mark({ ...put('1', 'S'), because: 'looked' } as Wish);
    expect([bench.hole('1').state, bench.hole('1').holds?.kind]).toEqual(['in', 'S']);
  });
});
