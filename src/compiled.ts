/**
 * Runs a bundle of the program with the code that V8 compiled for it in an earlier run. Node's own cache keeps
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
import { crc32 } from 'node:zlib';

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

/** Bytes of the sum in front of the code: a file that was cut or changed is not given to V8. */
const SUM = 4;

function sumOf(code: Buffer): Buffer {
  const sum = Buffer.alloc(SUM);
  sum.writeUInt32LE(crc32(code));
  return sum;
}

/** The kept code, or null where there is none that can be trusted. */
export function readKept(file: string): Buffer | null {
  let handle: number | null = null;
  try {
    // Neither a link nor a pipe is followed or waited for.
    handle = openSync(file, constants.O_RDONLY | constants.O_NOFOLLOW | constants.O_NONBLOCK);
    const stat = fstatSync(handle);
    if (!stat.isFile() || !isOurs(stat)) return null;
    const bytes = readFileSync(handle);
    const code = bytes.subarray(SUM);
    return bytes.length > SUM && sumOf(code).equals(bytes.subarray(0, SUM)) ? code : null;
  } catch {
    return null;
  } finally {
    if (handle !== null) closeSync(handle);
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

/** Keeps code for the next run, and throws away what older versions kept. What cannot be written is not kept. */
export function keep(folder: string, version: string, name: string, code: Buffer): void {
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
    writeFileSync(beside, Buffer.concat([sumOf(code), code]), { mode: 0o600, flag: 'wx' });
    renameSync(beside, join(own, name));
  } catch {
    // Slower next time, and nothing else.
  }
}

export type Load = (bundle: string) => unknown;

/**
 * What loads the bundles beside the program. `stamp` names their content, `use` what this run is for: code is
 * kept apart for each, so that a run reads only what it needs.
 */
export function loader(beside: string, stamp: string, use: string, env: Env): Load {
  const folder = cacheFolder(env);
  const version = `${stamp}-${process.version}-${process.arch}`;
  const loaded = new Map<string, unknown>();
  const load: Load = (bundle) => {
    if (loaded.has(bundle)) return loaded.get(bundle);
    const file = join(beside, `${bundle}.js`);
    const name = `${bundle}-${use}`;
    const cachedData = folder === null ? null : readKept(join(folder, version, name));
    const text = readFileSync(file, 'utf8');
    const script = new Script(`(function(exports,require,module,__filename,__load){${text}\n})`, {
      filename: file,
      ...(cachedData ? { cachedData } : {}),
    });
    if (folder !== null && (!cachedData || script.cachedDataRejected)) {
      process.once('exit', () => keep(folder, version, name, script.createCachedData()));
    }
    const module = { exports: {} as unknown };
    script.runInThisContext()(module.exports, require, module, file, load);
    loaded.set(bundle, module.exports);
    return module.exports;
  };
  return load;
}
