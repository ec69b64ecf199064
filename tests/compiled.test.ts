import {
  chmodSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { cacheFolder, keep, loader, readKept } from '../src/compiled.ts';

describe('where compiled code is kept', () => {
  it.each([
    [{ XDG_CACHE_HOME: '/x', HOME: '/home/a' }, '/x/putback'],
    [{ HOME: '/home/a' }, '/home/a/.cache/putback'],
    [{ XDG_CACHE_HOME: '', HOME: '/home/a' }, '/home/a/.cache/putback'],
    [{ LOCALAPPDATA: 'C:/Users/a/AppData/Local' }, 'C:/Users/a/AppData/Local/putback'],
    [{}, null],
  ])('%j', (env, folder) => {
    expect(cacheFolder(env)).toBe(folder);
  });
});

describe('compiled code', () => {
  const code = Buffer.from('some code of V8');
  let folder: string;
  let file: string;
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'putback-compiled-'));
    file = join(folder, 'v1', 'main-check');
    keep(folder, 'v1', 'main-check', code);
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  it('is read as it was kept', () => {
    expect(readKept(file)).toEqual(code);
  });

  it('is not taken where others could have written it', () => {
    chmodSync(file, 0o666);
    expect(readKept(file)).toBe(null);
  });

  it.each([
    ['cut', (bytes: Buffer) => bytes.subarray(0, -1)],
    ['with another byte', (bytes: Buffer) => Buffer.concat([bytes.subarray(0, -1), Buffer.of(0)])],
    ['empty', () => Buffer.alloc(0)],
  ])('is not taken %s', (_how, changed) => {
    writeFileSync(file, changed(readFileSync(file)));
    expect(readKept(file)).toBe(null);
  });

  it('is not taken through a link, nor from a folder', () => {
    const link = join(folder, 'v1', 'link');
    symlinkSync(file, link);
    mkdirSync(join(folder, 'v1', 'folder'));
    expect([readKept(link), readKept(join(folder, 'v1', 'folder'))]).toEqual([null, null]);
  });

  it('that another version kept long ago goes, what is not ours stays', () => {
    const old = join(folder, '0123456789abcdef-v24.0.0-x64');
    mkdirSync(old);
    utimesSync(old, new Date(0), new Date(0));
    writeFileSync(join(folder, 'notes.txt'), '');
    keep(folder, 'v2', 'main-check', code);
    expect(readdirSync(folder).sort()).toEqual(['notes.txt', 'v1', 'v2']);
  });

  it('is not kept where no folder can be made, and that takes no time', () => {
    keep('/proc/none/putback', 'v1', 'main-check', code);
    expect(readKept('/proc/none/putback/v1/main-check')).toBe(null);
  });

  it('is not kept in a folder that others may write', () => {
    mkdirSync(join(folder, 'shared'));
    chmodSync(join(folder, 'shared'), 0o777);
    keep(folder, 'shared', 'main-check', code);
    expect(readdirSync(join(folder, 'shared'))).toEqual([]);
  });

  it('a bundle runs the same with it, without it, and where nothing can be kept; once a process', () => {
    writeFileSync(join(folder, 'count.js'), 'exports.n = (exports.n ?? 0) + 1;');
    for (const env of [
      { XDG_CACHE_HOME: folder },
      {},
      { XDG_CACHE_HOME: join(folder, 'count.js') },
    ]) {
      const load = loader(folder, 'stamp', 'check', env);
      expect(load('count')).toEqual({ n: 1 });
      expect(load('count')).toBe(load('count'));
    }
  });
});
