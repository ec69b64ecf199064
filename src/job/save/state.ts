/**
 * The user's own folder for what must not lie in a bench: what is written in place, until it is whole, and locks
 * that two names of one file share. A repository cannot bring such a folder along, and nobody else can write it.
 */
import { constants } from 'node:fs';
import { homedir, tmpdir } from 'node:os';
import { dirname, isAbsolute, join } from 'node:path';
import { type Disk, errorCode, makeFolder } from './disk.ts';

const myself = (): number | undefined => process.getuid?.();

/** Where it may be, best first. Without a home of one's own the folder for temporary files serves. */
function places(): string[] {
  // biome-ignore lint/style/noProcessEnv: where a user's state belongs is told there and nowhere else
  const { XDG_STATE_HOME = '', LOCALAPPDATA = '' } = process.env;
  const home = homedir();
  return [
    ...(isAbsolute(XDG_STATE_HOME) ? [join(XDG_STATE_HOME, 'putback')] : []),
    ...(isAbsolute(LOCALAPPDATA) ? [join(LOCALAPPDATA, 'putback', 'state')] : []),
    ...(isAbsolute(home) ? [join(home, '.local', 'state', 'putback')] : []),
    join(tmpdir(), `putback-${myself() ?? 'user'}`),
  ];
}

/** A real folder that is this user's and that nobody else may write. */
function isPrivate(d: Disk, folder: string): boolean {
  const stat = d.lstatSync(folder, { throwIfNoEntry: false });
  if (!stat?.isDirectory()) return false;
  const me = myself();
  return me === undefined || (stat.uid === me && (stat.mode & 0o022) === 0);
}

/** Where these are on the way: the nearest folder that is there must be the user's own, or one for all. */
function mayMake(d: Disk, folder: string): boolean {
  for (let at = dirname(folder); ; at = dirname(at)) {
    const stat = d.statSync(at, { throwIfNoEntry: false });
    if (stat) return stat.uid === myself() || myself() === undefined || at === tmpdir();
    if (dirname(at) === at) return false;
  }
}

/** Those that are there and ours; `given` stands for all of them. With a `name`: that have something of this name. */
export function stateFolders(d: Disk, given?: string, name?: string): string[] {
  const all = given === undefined ? places() : [join(given, 'putback')];
  return all.filter((folder) => {
    try {
      // First what is rarely there.
      const has = name === undefined || d.lstatSync(join(folder, name), { throwIfNoEntry: false });
      return has && isPrivate(d, folder);
    } catch {
      return false;
    }
  });
}

/** The folder, made where it is missing. Throws the system's error where there can be none. */
export function makeStateFolder(d: Disk, given?: string): string {
  let last: unknown = null;
  for (const folder of given === undefined ? places() : [join(given, 'putback')]) {
    try {
      if (!isPrivate(d, folder)) {
        if (given === undefined && !mayMake(d, folder)) continue;
        makeFolder(d, folder, 0o700);
      }
      if (!isPrivate(d, folder)) continue;
      d.accessSync(folder, constants.W_OK);
      return folder;
    } catch (error) {
      if (errorCode(error) === null) throw error;
      last = error;
    }
  }
  throw last ?? Object.assign(new Error('no folder of this user'), { code: 'EACCES' });
}
