/**
 * Runs the program in parts, with the code that V8 compiled for them in an earlier run. Node's own cache keeps
 * functions uncompiled; here all that a run needed is kept, one file a command.
 */
import {
  closeSync,
  constants,
  fstatSync,
  lstatSync,
  mkdirSync,
  openSync,
  readdirSync,
  readSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { Script } from 'node:vm';
import { type Pack, type Texts, textsOf } from './parts.ts';

type Env = Readonly<Record<string, string | undefined>>;

/** Where a user's caches belong; null where the user has no such place, and then nothing is kept. */
export function cacheFolder(env: Env): string | null {
  const { XDG_CACHE_HOME, HOME, LOCALAPPDATA } = env;
  // A relative path in the variable counts as not set (XDG base directory specification).
  const set = XDG_CACHE_HOME?.startsWith('/') ? XDG_CACHE_HOME : null;
  const base = set ?? (HOME ? `${HOME}/.cache` : LOCALAPPDATA);
  return base ? `${base}/putback` : null;
}

/** Whose it is and who may write it: code is run only from what this user alone could have written. */
function isOurs({ uid, mode }: { uid: number; mode: number }): boolean {
  const own = process.getuid?.();
  return own === undefined || (uid === own && (mode & 0o022) === 0);
}

/** A file that this user alone could have written, open to be read, and its size; null where there is none. */
function openOurs(file: string): { handle: number; size: number } | null {
  let handle: number | null = null;
  try {
    // Neither a link nor a pipe is followed or waited for.
    handle = openSync(file, constants.O_RDONLY | constants.O_NOFOLLOW | constants.O_NONBLOCK);
    const stat = fstatSync(handle);
    if (stat.isFile() && isOurs(stat)) return { handle, size: stat.size };
  } catch {
    // There is none.
  }
  if (handle !== null) closeSync(handle);
  return null;
}

/** Bytes that are read to be compared: few, so that they stay near the processor. */
const COMPARED = 65_536;

/**
 * What is kept, or null where there is none that can be trusted. It is there twice: what was cut or changed is not
 * given to V8, and to compare takes no time, which a sum would before V8 has made anything fast.
 */
export function readKept(file: string): Buffer | null {
  const found = openOurs(file);
  if (found === null) return null;
  const { handle } = found;
  const size = found.size / 2;
  try {
    if (size === 0 || !Number.isInteger(size)) return null;
    const kept = Buffer.allocUnsafeSlow(size);
    if (readSync(handle, kept, 0, size, 0) !== size) return null;
    const again = Buffer.allocUnsafeSlow(Math.min(size, COMPARED));
    for (let at = 0; at < size; at += COMPARED) {
      const count = Math.min(COMPARED, size - at);
      const read = readSync(handle, again, 0, count, size + at);
      if (kept.compare(again, 0, read, at, at + count) !== 0) return null;
    }
    return kept;
  } catch {
    return null;
  } finally {
    closeSync(handle);
  }
}

/** ms. What another version kept so long ago is not asked for any more. */
const LONG_UNUSED = 30 * 24 * 3_600_000;

function makeFolder(path: string): void {
  try {
    mkdirSync(path, { mode: 0o700 });
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
  }
}

/**
 * Keeps code for the next run, as often as it is compared, and throws away what older versions kept. What cannot be written
 * is not kept.
 */
export function keep(
  folder: string,
  version: string,
  name: string,
  code: Buffer,
  copies: 1 | 2 = 2,
): void {
  try {
    const own = join(folder, version);
    // One by one: made all at once below /proc, Node would never end.
    for (const made of [dirname(folder), folder, own]) makeFolder(made);
    const stat = lstatSync(own);
    if (!stat.isDirectory() || !isOurs(stat)) return;
    for (const other of readdirSync(folder)) {
      const path = join(folder, other);
      const old =
        /^[0-9a-f]{16}-/.test(other) && Date.now() - lstatSync(path).mtimeMs > LONG_UNUSED;
      if (other !== version && old) rmSync(path, { recursive: true, force: true });
    }
    const beside = join(own, `.${name}.${process.pid}`);
    writeFileSync(beside, copies === 2 ? Buffer.concat([code, code]) : code, {
      mode: 0o600,
      flag: 'wx',
    });
    renameSync(beside, join(own, name));
  } catch {
    // Slower next time, and nothing else.
  }
}

/** What a run needed, kept for the next that is for the same. */
interface Kept {
  /** The parts that it loaded. */
  parts: number[];
  /** Their text as one and what V8 compiled of it; null until a run began with all of them. */
  whole: { text: string; code: Buffer } | null;
}

/** V8 takes the code from where it is, if it begins at a multiple of this. */
const ALIGNED = 8;
const aligned = (size: number): number => Math.ceil(size / ALIGNED) * ALIGNED;

/** How long the text is, how many parts there are, and which. */
const headSize = (parts: number): number => aligned(4 + 2 + 2 * parts);

function packed({ parts, whole }: Kept): Buffer {
  const head = headSize(parts.length);
  const { text, code } = whole ?? { text: '', code: Buffer.alloc(0) };
  const bytes = Buffer.alloc(aligned(head + text.length) + code.length);
  bytes.writeUInt32LE(text.length, 0);
  [parts.length, ...parts].forEach((n, at) => void bytes.writeUInt16LE(n, 4 + 2 * at));
  bytes.write(text, head, 'latin1');
  code.copy(bytes, aligned(head + text.length));
  return bytes;
}

function unpacked(bytes: Buffer | null, most: number): Kept | null {
  if (bytes === null || bytes.length < headSize(0)) return null;
  const size = bytes.readUInt32LE(0);
  const count = bytes.readUInt16LE(4);
  const head = headSize(count);
  const codeAt = aligned(head + size);
  if (bytes.length < codeAt) return null;
  const parts = Array.from({ length: count }, (_, i) => bytes.readUInt16LE(6 + 2 * i));
  if (parts.some((part) => part >= most)) return null;
  if (bytes.length === codeAt) return { parts, whole: null };
  const text = bytes.toString('latin1', head, head + size);
  return { parts, whole: { text, code: bytes.subarray(codeAt) } };
}

/** Names what is kept for this program on this Node. */
export function versionOf(stamp: string): string {
  return `${stamp}-${process.version}-${process.arch}`;
}

/** The texts of the parts, unpacked once; no command is called so. */
const UNPACKED = 'main.js';

/** Runs a part if it has not run yet, and gives what came out of it. */
export type Load = (part: number) => unknown;
type Part = (out: object) => unknown;

/** What each part of the program is given. */
const HEAD = '(function(__load,require,__filename,__here){"use strict";return{';

/**
 * What loads the parts of the program. `use` is what this run is for: what it needs is kept apart for each, so that
 * a run reads only that; null: nothing is kept. The first run of a use notes its parts, the second begins with all
 * of them as one text and keeps what V8 compiled of that, functions included.
 */
export function loader(pack: Pack, use: string | null, env: Env): Load {
  const { file, sizes, stamp } = pack;
  const cache = cacheFolder(env);
  const folder = use === null ? null : cache;
  const version = versionOf(stamp);
  const kept =
    folder === null ? null : unpacked(readKept(`${folder}/${version}/${use}`), sizes.length);
  const program = file.slice(0, -'.br'.length);
  let texts: Texts | null = null;

  /** The text of some parts as one. */
  const textOf = (parts: readonly number[]): string => {
    texts ??= textsOf(pack, cache === null ? null : openOurs(`${cache}/${version}/${UNPACKED}`));
    const size = (part: number) => sizes[part] ?? 0;
    const text = Buffer.allocUnsafe(parts.reduce((sum, p) => sum + size(p) + 8, HEAD.length + 8));
    let at = text.write(HEAD, 0, 'latin1');
    for (const part of parts) {
      at += text.write(`${part}:`, at, 'latin1');
      texts.copy(part, text, at);
      at += size(part);
      at += text.write(',', at, 'latin1');
    }
    at += text.write('}})', at, 'latin1');
    return text.toString('latin1', 0, at);
  };
  /** What answers their functions. */
  const compile = (text: string, cachedData?: Buffer) =>
    new Script(text, { filename: program, ...(cachedData ? { cachedData } : {}) });
  /** Some parts, compiled. Where a disk lost some of what was unpacked, that is unpacked anew. */
  const compileParts = (parts: readonly number[]): { text: string; script: Script } => {
    const text = textOf(parts);
    try {
      return { text, script: compile(text) };
    } catch (error) {
      if (!texts?.distrusted()) throw error;
      return compileParts(parts);
    }
  };
  const here = {
    get url() {
      return require('node:url').pathToFileURL(program).href;
    },
  };
  const made = new Map<number, Part>();
  const run = (script: Script) => {
    const parts: Record<number, Part> = script.runInThisContext()(load, require, program, here);
    for (const [part, make] of Object.entries(parts)) made.set(Number(part), make);
  };

  const outs = new Map<number, unknown>();
  const load: Load = (part) => {
    if (outs.has(part)) return outs.get(part);
    if (!made.has(part)) run(compileParts([part]).script);
    const out = {};
    const answer = made.get(part)?.(out) ?? out;
    outs.set(part, answer);
    return answer;
  };

  const begun =
    kept === null
      ? null
      : kept.whole === null
        ? compileParts(kept.parts)
        : { text: kept.whole.text, script: compile(kept.whole.text, kept.whole.code) };
  if (begun !== null) run(begun.script);
  if (folder !== null) {
    process.once('exit', () => {
      const unpacked = texts?.unpacked() ?? null;
      if (unpacked !== null) keep(folder, version, UNPACKED, unpacked, 1);
      const parts = [...made.keys()].sort((a, b) => a - b);
      const more = parts.length > (kept?.parts.length ?? 0);
      if (!more && kept?.whole && !begun?.script.cachedDataRejected) return;
      const whole =
        more || begun === null ? null : { text: begun.text, code: begun.script.createCachedData() };
      keep(folder, version, `${use}`, packed({ parts, whole }));
    });
  }
  return load;
}
