import { describe, expect, it } from 'vitest';
import { readJob } from '../../../../src/job/read.ts';
import type { Wish } from '../../../../src/model/types.ts';
import { Bench, COVER } from '../../bench.ts';

const rename = (kind: string, to: string): Wish => ({ do: 'rename', kind, to });
const found = (b: Bench) =>
  b
    .piece()
    .holes.map((h) => h.found?.kind ?? '-')
    .join(' ');
const claims = (b: Bench) =>
  b
    .piece()
    .holes.map((h) => h.claim?.kind ?? '-')
    .join(' ');

describe('another letter for a kind', () => {
  it('is everywhere at once, in one line of the diary', () => {
    const b = new Bench();
    b.mark({ do: 'out', piece: 'cover', row: 'S S M+clip L S' });
    b.mark({ do: 'off', piece: 'cover' });
    const entry = b.mark(rename('s', 'L20'));
    expect(entry).toMatchObject({ verb: 'renamed', value: 'L20', was: 'S' });
    expect(b.text).toBe(
      COVER.replace('  S: M6', '  L20: M6')
        .replace('{bolts: S}', '{bolts: L20}')
        .replace('bolts: S S M+clip L S', 'bolts: L20 L20 M+clip L L20'),
    );
    expect(found(b)).toBe('L20 L20 M L L20');
    expect(b.piece().holes.some((h) => h.unsettled || h.conflict)).toBe(false);
    b.mark({ do: 'in', piece: 'cover', holes: ['1'], hand: { kind: 'L20' } });
    expect(b.states()).toBe('in out out out out');
  });

  it('can be used again by another kind, and what was said before still means the old one', () => {
    const b = new Bench();
    b.mark({ do: 'out', piece: 'cover', row: 'S S M+clip L S' });
    b.mark(rename('M', 'B'));
    b.mark(rename('S', 'M'));
    expect([found(b), claims(b)]).toEqual(['M M B L M', 'M M B L M']);
  });

  it.each([
    ['Q', 'X', 'no-such-kind'],
    ['?', 'X', 'no-such-kind'],
    ['S', 'M', 'letter-taken'],
    ['S', 'm', 'letter-taken'],
    ['S', 'M+clip', 'bad-letter'],
    ['S', '!', 'bad-letter'],
    ['S', '7', 'bad-letter'],
  ])('%s is not called %s', (kind, to, code) => {
    expect(new Bench().refusal(rename(kind, to))).toMatchObject({ code });
  });

  it('is taken back and stands again, as long as nothing names it so', () => {
    const b = new Bench();
    const made = b.mark(rename('S', 'L20'));
    const out = b.mark({ do: 'out', piece: 'cover', holes: ['1'] });
    expect(b.refusal({ do: 'undo', id: made.id })).toEqual({ code: 'depends', ids: [out.id] });
    b.mark({ do: 'undo' });
    const back = b.mark({ do: 'undo', id: made.id });
    expect(b.text).toBe(COVER);
    b.mark({ do: 'undo', id: back.id });
    expect(claims(b)).toBe('L20 L20 M L L20');
  });
});

describe('a letter that only one mark brought', () => {
  const EMPTY = 'putback: 1\njob: Weeps\npieces: {lid: {bolts: "? ? ?"}}\ndiary:\n';
  const kinds = (b: Bench) => [...readJob(b.text, '').upper.kinds.keys()].join('');

  it('goes with it, and the row says again what it said before', () => {
    const b = new Bench(EMPTY);
    b.mark({ do: 'out', piece: 'lid', holes: ['1'], row: '.25' });
    const wrong = b.mark({ do: 'out', piece: 'lid', holes: ['2'], row: '.35' });
    expect([kinds(b), b.text]).toEqual(['SM', expect.stringContaining('bolts: "S M ?"')]);
    const undo = b.mark({ do: 'undo', id: wrong.id });
    expect([kinds(b), b.text]).toEqual(['S', expect.stringContaining('bolts: "S ? ?"')]);
    b.mark({ do: 'undo', id: undo.id });
    expect([kinds(b), b.text]).toEqual(['SM', expect.stringContaining('bolts: "S M ?"')]);
  });

  it('stays where another bolt of it came out, or somebody has said more of it', () => {
    const b = new Bench(EMPTY);
    b.mark({ do: 'out', piece: 'lid', holes: ['1'], row: '.25' });
    const first = b.mark({ do: 'out', piece: 'lid', holes: ['2'], row: '.35' });
    b.mark({ do: 'out', piece: 'lid', holes: ['3'], row: 'm' });
    b.mark({ do: 'undo', id: first.id });
    expect(kinds(b)).toBe('SM');
    b.text = b.text.replace(/M: .*/, 'M: M6x35 flange, 8 mm');
    b.mark({ do: 'undo' });
    expect(kinds(b)).toBe('SM');
  });
});

describe('a mark that others rest on', () => {
  it('says which, in words, the last first', () => {
    const b = new Bench().openCover().fillCover();
    const first = b.entries.find((e) => e.verb === 'in');
    b.mark({ do: 'tight', piece: 'cover' });
    const verdict = b.ask({ do: 'undo', id: first?.id ?? '' });
    expect(verdict.ok ? '' : verdict.refused.say).toMatch(
      /^On it rests: Cover: all snug \(id\w+\)\. Take that back first\.$/,
    );
  });

  it('is none that a reader of YAML takes for a switch or for nothing', () => {
    const b = new Bench();
    const before = b.text;
    for (const to of ['null', 'Null', 'NULL', 'true', 'False', 'no', 'on', 'nan']) {
      expect(b.refusal(rename('S', to)), to).toMatchObject({ code: 'bad-letter' });
    }
    expect(b.text).toBe(before);
  });
});
