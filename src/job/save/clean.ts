/** What a killed process left behind, cleared away at the start. */
import { realpathSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { type Disk, disk } from './disk.ts';
import { hold } from './hold.ts';
import { readJournal, recover } from './inplace.ts';
import { INDEX_FILE, SIDE } from './plain.ts';
import { cleanTemps } from './replace.ts';
import { openSide } from './side.ts';
import { stateFolders } from './state.ts';

const LEFT = /^(.+?)(?:\.lock|\.break|\.[0-9a-f]{16}\.tmp)$/;

/**
 * Clears a folder of job files of dead processes' locks and half-written files, and finishes what they had begun
 * to write in place. Never waits and never fails: what somebody may still hold is left for the next save. Answers
 * the names of what lies among putback's own files and is none of them; it is left alone.
 */
export async function cleanFolder(
  folder: string,
  options: { disk?: Disk; state?: string } = {},
): Promise<string[]> {
  const d = options.disk ?? disk;
  const strange: string[] = [];
  try {
    const real = realpathSync(folder);
    const begun = new Set(journalled(d, real, options.state));
    for (const name of namesIn(d, join(real, SIDE))) {
      if (INDEX_FILE.test(name)) continue;
      const file = LEFT.exec(name)?.[1];
      const plain = d.lstatSync(join(real, SIDE, name), { throwIfNoEntry: false })?.isFile();
      if (plain === false || (file === undefined && name !== '.gitignore')) strange.push(name);
      else if (file !== undefined) begun.add(file);
    }
    for (const name of begun) await cleanFile(d, join(real, name), options.state);
  } catch {
    // No such folder, or not ours to clean.
  }
  return strange;
}

function namesIn(d: Disk, folder: string): string[] {
  return d.lstatSync(folder, { throwIfNoEntry: false })?.isDirectory() ? d.readdirSync(folder) : [];
}

/** Names in the folder that this user's journals are about. */
function journalled(d: Disk, folder: string, state: string | undefined): string[] {
  return stateFolders(d, state).flatMap((at) =>
    d.readdirSync(at).flatMap((name) => {
      const journal = name.endsWith('.journal') ? readJournal(d, join(at, name)) : null;
      return journal !== null && dirname(journal.path) === folder ? [basename(journal.path)] : [];
    }),
  );
}

async function cleanFile(d: Disk, path: string, state: string | undefined): Promise<void> {
  const now = { wait: 0, still: Number.POSITIVE_INFINITY };
  try {
    const side = openSide(d, path, state);
    const held = await hold(d, path, side, now, state);
    if (held === 'again' || 'ok' in held) return;
    try {
      cleanTemps(d, side);
      recover(d, path, state);
    } finally {
      held.release();
    }
  } catch {
    // Not ours to clean; what is wrong there is told by the next save.
  }
}
