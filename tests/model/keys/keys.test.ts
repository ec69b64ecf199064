import { describe, expect, it } from 'vitest';
import { barePiece } from '../../../src/job/form/bare.ts';
import { helpFor, keysOf, OWNERS } from '../../../src/job/form/help.ts';
import { readJob } from '../../../src/job/read.ts';
import { HOLE_TEXTS, PIECE_TEXTS, TASK_TEXTS } from '../../../src/job/truth/figures.ts';
import { keyRows } from '../../../src/model/keys/key-row.ts';
import { HOLE_KEYS, PIECE_KEYS, TASK_KEYS } from '../../../src/model/keys/keys.ts';
import {
  asksOf,
  CORRECTABLE,
  CORRECTABLE_OF,
  isAnew,
  isSeveral,
  labelOf,
  OFFERED,
  valueNameOf,
  WRITABLE,
} from '../../../src/model/keys/known-keys.ts';

describe('what follows from the rows of the keys', () => {
  it('a name is told and corrected the same of a piece, of a hole and of a task', () => {
    const met = new Map<string, string>();
    for (const keys of [PIECE_KEYS, HOLE_KEYS, TASK_KEYS]) {
      for (const [key, { value, label }] of keyRows(keys)) {
        if (label === undefined) continue;
        expect(met.get(key) ?? `${label} ${value}`, key).toBe(`${label} ${value}`);
        met.set(key, `${label} ${value}`);
      }
    }
    expect(met.size).toBeGreaterThan(20);
  });

  it('every key that can be corrected has its place in the thing, and a name', () => {
    const whats = [PIECE_TEXTS, HOLE_TEXTS, TASK_TEXTS].map((all) => [
      ...new Set(all.map((l) => l.what)),
    ]);
    expect(whats).toEqual([CORRECTABLE_OF.piece, CORRECTABLE_OF.hole, CORRECTABLE_OF.task]);
    for (const what of CORRECTABLE) {
      expect(labelOf(what)).toMatch(/^[A-Z]/);
      expect(valueNameOf(what)).toBeTruthy();
    }
  });

  it('what is written is asked for, and offered in an order without gaps', () => {
    for (const key of WRITABLE) expect(asksOf(key)[0]).toMatch(/\?$/);
    expect(WRITABLE.filter((key) => isSeveral(key) && isAnew(key))).toEqual([]);
    const at = keyRows(PIECE_KEYS).flatMap(([, row]) => row.written?.offered?.[0] ?? []);
    expect(at.sort((a, b) => a - b)).toEqual(OFFERED.map((_, i) => i + 1));
  });

  it('a piece of which the file says nothing is a bare one', () => {
    const { upper } = readJob('putback: 1\njob: x\npieces: {gear-lever: }\n', 'a.yaml');
    expect(upper.pieces.get('gear-lever')).toEqual(barePiece('gear-lever'));
  });

  it('every key has its line of help, and the example begins with the key', () => {
    for (const owner of OWNERS) {
      for (const key of keysOf(owner)) {
        const help = helpFor(owner, key);
        expect(help?.like.startsWith(`${key}:`), `${owner} ${key}`).toBe(true);
        expect(help?.takes).toBeTruthy();
        expect(help?.is).toMatch(/\.$/);
      }
    }
    expect(helpFor('piece', 'constructor')).toBeNull();
  });
});
