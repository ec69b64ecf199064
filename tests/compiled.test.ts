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
import { brotliCompressSync } from 'node:zlib';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { cacheFolder, keep, loader, readKept } from '../src/compiled.ts';
import type { Pack } from '../src/parts.ts';

describe('where compiled code is kept', () => {
  it.each([
    [{ XDG_CACHE_HOME: '/x', HOME: '/home/a' }, '/x/putback'],
    [{ HOME: '/home/a' }, '/home/a/.cache/putback'],
    [{ XDG_CACHE_HOME: '', HOME: '/home/a' }, '/home/a/.cache/putback'],
    [{ XDG_CACHE_HOME: 'x', HOME: '/home/a' }, '/home/a/.cache/putback'],
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
});

describe('the parts of a program', () => {
  const PARTS = [
    'function(__out){__out.n=(globalThis.counted=(globalThis.counted??0)+1);__out.sum=(k)=>__load(1).add(k,1)\n}',
    'function(__out){__out.add=(a,b)=>a+b\n}',
    'function(__out){__out.never=1\n}',
  ];
  type First = { n: number; sum: (k: number) => number };
  let folder: string;
  let pack: Pack;
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'putback-parts-'));
    const file = join(folder, 'main.js.br');
    writeFileSync(file, brotliCompressSync(PARTS.join('')));
    pack = { file, sizes: PARTS.map((p) => p.length), stamp: 'stamp' };
  });
  afterEach(() => {
    rmSync(folder, { recursive: true, force: true });
  });

  /** One run of the program, to its end. */
  function run(use: string | null, env: Record<string, string>): number {
    const before = process.listeners('exit');
    const load = loader(pack, use, env);
    const first = load(0) as First;
    expect(load(0)).toBe(first);
    const sum = first.sum(41);
    const added = process.listeners('exit').filter((one) => !before.includes(one));
    for (const one of added) {
      one.call(process, 0);
      process.removeListener('exit', one);
    }
    return sum;
  }
  const keptFile = (name = 'check') => {
    const [version = ''] = readdirSync(join(folder, 'putback'));
    return join(folder, 'putback', version, name);
  };

  it('run the same the first time, from a list of parts, and with the code that was kept', () => {
    const env = { XDG_CACHE_HOME: folder };
    const kept = [1, 2, 3, 4].map(() => {
      expect(run('check', env)).toBe(42);
      return readFileSync(keptFile());
    });
    // First which parts, then with what was compiled; after that nothing is written.
    expect(kept[1]?.length).toBeGreaterThan((kept[0]?.length ?? 0) + 100);
    expect(kept.slice(2)).toEqual([kept[1], kept[1]]);
  });

  it.each([
    ['cut', (bytes: Buffer) => bytes.subarray(0, 9)],
    ['of another place', (bytes: Buffer) => Buffer.concat([bytes.subarray(8), bytes])],
    ['empty', () => Buffer.alloc(0)],
  ])('run the same where what is kept is %s, and it is put right', (_how, changed) => {
    const env = { XDG_CACHE_HOME: folder };
    run('check', env);
    run('check', env);
    writeFileSync(keptFile(), changed(readFileSync(keptFile())));
    expect([run('check', env), run('check', env)]).toEqual([42, 42]);
    // Whole again: no run finds anything to add to it. How long V8's code is differs by some bytes each time.
    const right = readFileSync(keptFile());
    expect(right.length).toBeGreaterThan(200);
    expect(run('check', env)).toBe(42);
    expect(readFileSync(keptFile())).toEqual(right);
  });

  it.each([
    ['cut', (bytes: Buffer) => bytes.subarray(0, -1)],
    ['never written to its end', (bytes: Buffer) => Buffer.alloc(bytes.length)],
    ['longer', (bytes: Buffer) => Buffer.concat([bytes, bytes])],
    ['without a block in its middle', (bytes: Buffer) => Buffer.from(bytes).fill(0, 20, 60)],
  ])('run the same where what was unpacked is %s, and it is put right', (_how, changed) => {
    const env = { XDG_CACHE_HOME: folder };
    run('check', env);
    const unpacked = readFileSync(keptFile('main.js'));
    expect(unpacked.toString()).toBe(PARTS.join(''));
    writeFileSync(keptFile('main.js'), changed(unpacked));
    expect(run('check', env)).toBe(42);
    expect(readFileSync(keptFile('main.js'))).toEqual(unpacked);
  });

  it('are unpacked once, and not taken from where others could have written them', () => {
    const env = { XDG_CACHE_HOME: folder };
    run('check', env);
    // A part that says another sum, as long as the right one.
    const other = PARTS.join('').replace('a+b', 'a-b');
    writeFileSync(keptFile('main.js'), other);
    rmSync(keptFile());
    expect(run('check', env)).toBe(40);
    chmodSync(keptFile('main.js'), 0o666);
    rmSync(keptFile());
    expect(run('check', env)).toBe(42);
  });

  it.each([
    ['does not hold them all', () => brotliCompressSync(PARTS.slice(0, 2).join('')), 'is damaged'],
    ['is cut', () => readFileSync(pack.file).subarray(0, 20), 'is damaged'],
    ['holds something else', () => Buffer.from('x'), 'is damaged'],
    ['is not there', () => null, 'is missing'],
  ])('are told not to be whole where the packed file %s', (_how, made, how) => {
    const bytes = made();
    if (bytes === null) rmSync(pack.file);
    else writeFileSync(pack.file, bytes);
    expect(() => run(null, {})).toThrow(
      `putback is not whole: ${pack.file} ${how}. Install it again.`,
    );
  });

  it('run the same where nothing can be kept, and where nothing shall be', () => {
    expect(run('check', {})).toBe(42);
    expect(run('check', { XDG_CACHE_HOME: join(folder, 'main.js.br') })).toBe(42);
    expect(run(null, { XDG_CACHE_HOME: folder })).toBe(42);
    expect(readdirSync(folder)).toEqual(['main.js.br']);
  });
});
