/**
 * Access lists and extended attributes, which belong to the file and not to its bytes: a new file in its place
 * has them only if they are copied. Node cannot do that, the system's own `cp` can.
 */
import { spawnSync } from 'node:child_process';

/** By its whole path: nothing that lies on somebody's PATH is run for each mark. */
const CP = '/bin/cp';
/** ms. It copies no bytes. */
const LIMIT = 5000;

/**
 * Gives the file `to` mode, access list and attributes of `from`. False where it cannot be told that nothing was
 * left behind: no such `cp`, another system, an attribute that this user may not set.
 */
export function copyAttributes(from: string, to: string): boolean {
  if (process.platform !== 'linux') return false;
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
