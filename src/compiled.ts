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
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { Script } from 'node:vm';
import { type Pack, textsOf } from './parts.ts';

type Env = Readonly<Record<string, string | undefined>>;

/** Where a user's caches belong; null where the user has no such place, and then nothing is kept. */
export function cacheFolder(env: Env): string | null {
  const { XDG_CACHE_HOME, HOME, LOCALAPPDATA } = env;
  const base = XDG_CACHE_HOME || (HOME ? `${HOME}/.cache` : LOCALAPPDATA);
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

/**
 * The kept code, or null where there is none that can be trusted. It is there twice: what was cut or changed is not
 * given to V8, and to compare takes no time, which a sum would before V8 has made anything fast.
 */
export function readKept(file: string): Buffer | null {
  const handle = openOurs(file)?.handle ?? null;
  if (handle === null) return null;
  try {
    const bytes = readFileSync(handle);
    const code = bytes.subarray(0, bytes.length / 2);
    return bytes.length > 0 && code.equals(bytes.subarray(code.length)) ? code : null;
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
  /** What V8 compiled for them as one; null until a run began with all of them. */
  code: Buffer | null;
}

/** V8 takes the code from where it is, if it begins at a multiple of this. */
const ALIGNED = 8;

const headSize = (parts: number): number => Math.ceil((2 + 2 * parts) / ALIGNED) * ALIGNED;

function packed({ parts, code }: Kept): Buffer {
  const head = Buffer.alloc(headSize(parts.length));
  [parts.length, ...parts].forEach((n, at) => void head.writeUInt16LE(n, 2 * at));
  return code === null ? head : Buffer.concat([head, code]);
}

function unpacked(bytes: Buffer | null, most: number): Kept | null {
  if (bytes === null || bytes.length < 2) return null;
  const count = bytes.readUInt16LE(0);
  const codeAt = headSize(count);
  if (bytes.length < codeAt) return null;
  const parts = Array.from({ length: count }, (_, i) => bytes.readUInt16LE(2 + 2 * i));
  if (parts.some((part) => part >= most)) return null;
  return { parts, code: bytes.length > codeAt ? bytes.subarray(codeAt) : null };
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
  const program = file.replace(/\.br$/, '');
  const texts = textsOf(pack, cache === null ? null : openOurs(`${cache}/${version}/${UNPACKED}`));

  /** The text of some parts as one, compiled: what answers their functions. */
  const compile = (parts: readonly number[], cachedData?: Buffer) => {
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
    return new Script(text.toString('latin1', 0, at), {
      filename: program,
      ...(cachedData ? { cachedData } : {}),
    });
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
    if (!made.has(part)) run(compile([part]));
    const out = {};
    const answer = made.get(part)?.(out) ?? out;
    outs.set(part, answer);
    return answer;
  };

  const whole = kept === null ? null : compile(kept.parts, kept.code ?? undefined);
  if (whole !== null) run(whole);
  if (folder !== null) {
    process.once('exit', () => {
      const unpacked = texts.unpacked();
      if (unpacked !== null) keep(folder, version, UNPACKED, unpacked, 1);
      const parts = [...made.keys()].sort((a, b) => a - b);
      const more = parts.length > (kept?.parts.length ?? 0);
      if (!more && kept?.code && !whole?.cachedDataRejected) return;
      const code = more || whole === null ? null : whole.createCachedData();
      keep(folder, version, `${use}`, packed({ parts, code }));
    });
  }
  return load;
}
