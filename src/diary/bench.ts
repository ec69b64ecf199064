/** The settings of a bench: `bench.yaml` in the folder of the job files or above it, never a command. */
import { lstatSync } from 'node:fs';
import { dirname, join, relative, sep } from 'node:path';
import { errorCode } from '../job/save/disk.ts';
import { failOf } from '../job/save/fail.ts';
import { readPlain } from '../job/save/plain.ts';
import { ended, quoted } from '../model/safe.ts';
import type { Fault } from '../model/types.ts';
import { type BenchSettings, readBenchSettings } from '../settings/settings.ts';

export const BENCH_FILE = 'bench.yaml';

export interface Bench extends BenchSettings {
  folder: string;
  /** What in them is wrong; it counts as not said. */
  faults: Fault[];
  /** Why its settings could not be read, a sentence; null: they were. */
  unread: string | null;
}

/** Settings are a few lines. */
const MOST_BYTES = 1 << 20;

/** The bench that a folder belongs to; null when there is none. Looks up to the top of the repository. */
export function findBench(folder: string): Bench | null {
  for (let at = folder; ; at = dirname(at)) {
    // The root ends with its slash.
    const inside = at.endsWith(sep) ? at : `${at}${sep}`;
    const file = `${inside}${BENCH_FILE}`;
    if (isThere(file)) return benchOf(at, file);
    if (isThere(`${inside}.git`) || dirname(at) === at) return null;
  }
}

function isThere(path: string): boolean {
  try {
    return lstatSync(path, { throwIfNoEntry: false }) !== undefined;
  } catch {
    return false;
  }
}

/** A link is not followed: a clone could have its settings read from anywhere. */
function benchOf(folder: string, file: string): Bench {
  try {
    const { bytes, whole } = readPlain(file, MOST_BYTES);
    const bench = readBench(folder, whole ? bytes.toString('utf8') : '');
    return whole ? bench : { ...bench, unread: `${BENCH_FILE} is too large to be read.` };
  } catch (error) {
    if (errorCode(error) === null) throw error;
    return { ...readBench(folder, ''), unread: failOf(error, file, 'read').say };
  }
}

/** Total: what it cannot read is as if it were not said, and told in `faults`. */
export function readBench(folder: string, text: string): Bench {
  const { settings, faults } = readBenchSettings(text, BENCH_FILE);
  return { folder, ...settings, faults, unread: null };
}

/** What is odd in the settings, one sentence; null: nothing. `here`: the folder in which its user stands. */
export function oddIn({ folder, unread, faults }: Bench, here = folder): string | null {
  const [first] = faults;
  if (unread !== null || first === undefined) return unread;
  const file = quoted(relative(here, join(folder, BENCH_FILE)));
  const more = faults.length > 1 ? ` putback check ${file} tells all ${faults.length}.` : '';
  return `${BENCH_FILE}, line ${first.line}: ${first.say}. ${more === '' ? first.fix : ended(first.fix)}${more}`;
}
