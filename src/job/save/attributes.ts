/**
 * Access lists and extended attributes, which belong to the file and not to its bytes: a new file in its place
 * has them only if they are copied. Node cannot do that, the system's own `cp` can.
 */
import { spawnSync } from 'node:child_process';
import { type BigIntStats, lstatSync } from 'node:fs';
import { dirname } from 'node:path';

/** By its whole path: nothing that lies on somebody's PATH is run for each mark. */
const CP = '/bin/cp';
/** ms. It copies no bytes. */
const LIMIT = 5000;

/**
 * Files that were saved in this run. One that was seen to have nothing but its mode has its `keyOf` then: while that is the
 * same it is not looked at again. Null: it was not seen so.
 */
const met = new Map<string, string | null>();

/** A change of an access list or attribute changes it. */
const keyOf = ({ dev, ino, ctimeNs }: BigIntStats): string => `${dev} ${ino} ${ctimeNs}`;

/** An archive in tar's pax format names access lists and attributes in a header before each file or folder. */
const TAR = '/bin/tar';
const SOME = /SCHILY\.(?:xattr|acl)\./;

/** The file has nothing but its mode, and the folder gives what is made in it nothing more. False where that cannot be told. */
function isBare(file: string, folder: string): boolean {
  const flags = ['--xattrs', '--xattrs-include=*', '--acls', '--no-recursion', '-P', '-cf', '-'];
  const done = spawnSync(TAR, [...flags, '--', folder, file], {
    stdio: ['ignore', 'pipe', 'pipe'],
    env: { LC_ALL: 'C' },
    timeout: LIMIT,
    encoding: 'latin1',
    maxBuffer: 64e6,
  });
  return done.status === 0 && done.stderr === '' && !SOME.test(done.stdout);
}

/** To be called once a new file has taken the place of `file`. If that is ours (`isIt`), it is as bare as the old one was. */
export function stands(file: string, isIt: (stat: BigIntStats) => boolean): void {
  const before = met.get(file);
  if (before === undefined || before === null) return;
  try {
    const stat = lstatSync(file, { bigint: true });
    // In this instant somebody else may have put a file there, with attributes of its own.
    met.set(file, isIt(stat) ? keyOf(stat) : null);
  } catch {
    met.set(file, null);
  }
}

/**
 * Gives the file `to` mode, access list and attributes of `from`. False where it cannot be told that nothing was
 * left behind: no such `cp`, another system, an attribute that this user may not set.
 */
export function copyAttributes(from: string, to: string): boolean {
  if (process.platform !== 'linux') return false;
  const now = keyOf(lstatSync(from, { bigint: true }));
  const before = met.get(from);
  if (before === now) return true;
  // To look costs more than one copy, and many runs make a single mark: only from the second on it pays.
  const bare = before !== undefined && isBare(from, dirname(to));
  met.set(from, bare ? now : null);
  if (bare) return true;
  const args = ['--attributes-only', '--no-dereference', '--preserve=mode,xattr', '--', from, to];
  const done = spawnSync(CP, args, {
    stdio: ['ignore', 'ignore', 'pipe'],
    env: { LC_ALL: 'C' },
    timeout: LIMIT,
    encoding: 'utf8',
  });
  if (done.status === 0) return true;
  // A disk that knows no attributes has none to lose.
  const said = (done.stderr ?? '').split('\n').filter((line) => line !== '');
  return done.status === 1 && said.length > 0 && said.every((line) => NONE.test(line));
}

const NONE = /: (?:Operation not supported|Not supported)$/;
