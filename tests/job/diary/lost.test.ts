import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lostEntries } from '../../../src/job/diary/lost.ts';
import type { Entry } from '../../../src/model/types.ts';

const entry = (id: string, more: Partial<Entry> = {}): Entry => ({
  at: '2026-04-11T18:25:40+02:00',
  id,
  piece: 'cover',
  verb: 'out',
  value: 'S',
  ...more,
});
const ids = (entries: readonly Entry[]) => entries.map((e) => e.id).join(' ');
const list = (text: string) => text.split(' ').map((id) => entry(id));

describe('what was shown and is gone', () => {
  it('is what an editor wrote over, in the order of happening', () => {
    expect(ids(lostEntries(list('a b c d'), list('a b')))).toBe('c d');
  });

  it('is nothing where lines were only added, moved or corrected', () => {
    const corrected = [entry('b', { value: 'M' }), entry('a'), entry('new')];
    expect(lostEntries(list('a b'), corrected)).toEqual([]);
  });

  it('is not what an undo there names: behind it, it would count again', () => {
    const now = [entry('a'), entry('u', { verb: 'undo', value: 'b' })];
    expect(ids(lostEntries(list('a b c'), now))).toBe('c');
  });

  it('is written once, though it was shown twice', () => {
    expect(ids(lostEntries(list('a b b'), list('a')))).toBe('b');
  });

  it('added again, leaves nothing missing, whatever was dropped', () => {
    const diary = fc.uniqueArray(fc.constantFrom(...'abcdefghij'), { maxLength: 10 });
    fc.assert(
      fc.property(diary, diary, (shown, now) => {
        const lost = lostEntries(
          shown.map((id) => entry(id)),
          now.map((id) => entry(id)),
        );
        const all = [...now, ...ids(lost).split(' ')];
        expect(shown.every((id) => all.includes(id))).toBe(true);
        expect(lost.filter((e) => now.includes(e.id))).toEqual([]);
        expect(ids(lost)).toBe(shown.filter((id) => !now.includes(id)).join(' '));
      }),
    );
  });
});
