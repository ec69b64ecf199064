import { describe, expect, it } from 'vitest';
import { readJob } from '../../../../src/job/read.ts';
import type { Wish } from '../../../../src/model/types.ts';
import { Bench, COVER } from '../../bench.ts';

const bolts = (piece: string, text: string): Wish => ({ do: 'write', piece, key: 'bolts', text });
const row = (b: Bench, piece: string) =>
  readJob(b.text, '')
    .upper.pieces.get(piece)
    ?.row?.map((i) => i.kind)
    .join('') ?? null;

describe('how many bolts a piece has', () => {
  it('is said of a new one, by number or by row, and none of them is out', () => {
    const b = new Bench();
    b.mark(bolts('lid', '3'));
    b.mark(bolts('tank', 's s m+clip'));
    expect([row(b, 'lid'), row(b, 'tank')]).toEqual(['???', 'SSM']);
    expect([b.states('lid'), b.states('tank')]).toEqual(['home home home', 'home home home']);
    expect(b.text).toContain('tank:\n    bolts: S S M+clip\n');
  });

  it('is put right: more, fewer, or which; in whatever spelling the file has it', () => {
    const text = COVER.replace(
      'bolts: S S M+clip L S',
      'bolts: [S, S, {kind: M, with: clip}, L, S] # mine',
    );
    const b = new Bench(text);
    b.mark(bolts('cover', '7'));
    expect(row(b, 'cover')).toBe('SSMLS??');
    b.mark(bolts('cover', '4'));
    expect(b.text).toContain('bolts: S S M+clip L # mine');
  });

  it('is not less than what something was noted of, and no find is written over', () => {
    const b = new Bench();
    b.mark({ do: 'out', piece: 'cover', holes: ['5'] });
    expect(b.refusal(bolts('cover', '4'))).toEqual({ code: 'holes-noted', holes: ['5'] });
    expect(b.refusal(bolts('cover', 's s m+clip l m'))).toMatchObject({ holes: ['5'] });
    expect(b.refusal(bolts('cover', 's m m+clip l s'))).toMatchObject({ ok: true });
    expect(b.refusal(bolts('cover', '5'))).toEqual({ ok: true, entry: null });
  });

  it.each(['0', '100', '', 's ! s', '- s', 'S+'])('is not %s', (text) => {
    expect(new Bench().refusal(bolts('cover', text))).not.toHaveProperty('ok');
  });

  it('tells of a map that draws another number', () => {
    const b = new Bench(
      `${COVER.replace('diary:\n', '')}  lid:\n    bolts: S S\n    map: "1 2"\ndiary:\n`,
    );
    expect(b.warnings(bolts('lid', '3'))).toEqual(['map-differs']);
  });

  it('is taken back as it was, not while bolts of it are marked', () => {
    const b = new Bench();
    const made = b.mark(bolts('lid', '3'));
    b.mark({ do: 'out', piece: 'lid', holes: ['1'] });
    expect(b.refusal({ do: 'undo', id: made.id })).toMatchObject({ code: 'depends' });
    b.mark({ do: 'undo' });
    const undo = b.mark({ do: 'undo', id: made.id });
    expect(row(b, 'lid')).toBeNull();
    b.mark({ do: 'undo', id: undo.id });
    expect(row(b, 'lid')).toBe('???');
  });
});
