import { mkdirSync, mkdtempSync, readdirSync, statSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { keepHalf, readHalf } from '../../../src/job/save/half.ts';
import type { Half } from '../../../src/model/types.ts';

const JOB = '/bench/cover.yaml';
const HALF: Half = {
  drafts: { 'row cover': 'S S M+', 'note cover ': 'the “left” one\nweeps' },
  wish: { do: 'in', piece: 'cover', holes: ['4'], hand: { kind: 'M', with: ['clip'] } },
};
const NOTHING: Half = { drafts: {}, wish: null };

const newState = () => mkdtempSync(join(tmpdir(), 'putback-half-'));
const inside = (state: string) => readdirSync(join(state, 'putback'));

describe('what was half done', () => {
  it('is read as it was kept, by the job that it was for', () => {
    const state = newState();
    expect(readHalf(JOB, state)).toEqual(NOTHING);
    expect(keepHalf(JOB, HALF, state)).toBe(true);
    expect(readHalf(JOB, state)).toEqual(HALF);
    expect(readHalf('/bench/other.yaml', state)).toEqual(NOTHING);
    expect(keepHalf(JOB, { ...HALF, wish: null }, state)).toBe(true);
    expect(readHalf(JOB, state)).toEqual({ ...HALF, wish: null });
  });

  it('goes when nothing is half done any more', () => {
    const state = newState();
    keepHalf(JOB, HALF, state);
    expect(keepHalf(JOB, NOTHING, state)).toBe(true);
    expect(inside(state)).toEqual([]);
  });

  it('is nobody else’s to read', () => {
    const state = newState();
    keepHalf(JOB, HALF, state);
    const [name = ''] = inside(state);
    expect(statSync(join(state, 'putback', name)).mode & 0o777).toBe(0o600);
  });

  it('says that it could not be kept where there is no folder for it', () => {
    const state = newState();
    writeFileSync(join(state, 'putback'), 'a file');
    expect(keepHalf(JOB, HALF, state)).toBe(false);
    expect(readHalf(JOB, state)).toEqual(NOTHING);
  });

  it.each(['', '{', '[]', 'null', '{"drafts":{"a":1},"wish":{"do":2}}', '{"wish":null}'])(
    'counts as nothing where it says %j',
    (text) => {
      const state = newState();
      keepHalf(JOB, HALF, state);
      const [name = ''] = inside(state);
      writeFileSync(join(state, 'putback', name), text);
      expect(readHalf(JOB, state)).toEqual(NOTHING);
    },
  );

  it('is not read through a link', () => {
    const state = newState();
    keepHalf(JOB, HALF, state);
    const [name = ''] = inside(state);
    const elsewhere = newState();
    mkdirSync(join(elsewhere, 'putback'), { mode: 0o700 });
    symlinkSync(join(state, 'putback', name), join(elsewhere, 'putback', name));
    expect(readHalf(JOB, elsewhere)).toEqual(NOTHING);
  });
});
