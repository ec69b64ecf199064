/** A job file held for one save: its own lock, and that of the file behind the name where that has several names. */
import { type Disk, errorCode } from './disk.ts';
import { lockedBy, type SaveFail } from './fail.ts';
import { acquire, isOurs, type Lock, type Patience, release } from './lock.ts';
import { inodeLocks, type Locks, type Side } from './side.ts';

export interface Hold {
  /** Whether another name of the same file is held too. */
  shared: boolean;
  /** Whether nobody has taken a lock away meanwhile. */
  isOurs(): boolean;
  release(): void;
}

/** `again` when the folder of the locks was swept away under way while the file is still there. */
export async function hold(
  d: Disk,
  file: string,
  side: Side,
  patience: Patience,
  state: string | undefined,
): Promise<Hold | SaveFail | 'again'> {
  const held: Lock[] = [];
  const letGo = () => {
    for (const lock of held.splice(0).reverse()) release(d, lock);
  };
  try {
    // A name first, then the file: so two that want the same two never wait for each other.
    const locks: Locks[] = [side];
    for (const next of locks) {
      const lock = await acquire(d, next, patience);
      if ('heldBy' in lock) {
        letGo();
        return lockedBy(lock.heldBy, file);
      }
      held.push(lock);
      if (next !== side) break;
      const stat = d.lstatSync(file, { bigint: true, throwIfNoEntry: false });
      if (stat?.isFile() && stat.nlink > 1n) locks.push(inodeLocks(d, stat, state));
    }
  } catch (error) {
    letGo();
    if (errorCode(error) !== 'ENOENT') throw error;
    d.lstatSync(file);
    return 'again';
  }
  return {
    shared: held.length > 1,
    isOurs: () => held.every((lock) => isOurs(d, lock)),
    release: letGo,
  };
}
