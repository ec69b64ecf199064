/** The settings of a bench: `bench.yaml` in the folder of the job files or above it, never a command. */
import { lstatSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { parse } from 'yaml';
import { readLength } from '../bolt/length.ts';
import { readQuantity } from '../bolt/units.ts';
import type { Wrench } from '../bolt/wrench.ts';
import { errorCode } from '../job/save/disk.ts';
import { failOf } from '../job/save/fail.ts';
import { readPlain } from '../job/save/plain.ts';
import { moneyIn } from '../plan/trace/money.ts';

export const BENCH_FILE = 'bench.yaml';

export interface Bench {
  folder: string;
  /** When putback commits by itself: at the end of each place of a piece, or never. */
  commit: 'milestones' | 'never';
  wrenches: Wrench[];
  /** What an hour of one's own is worth, in the money of the bench; null where nobody says so. */
  hour: number | null;
  /** Why its settings could not be read, a sentence; null: they were. */
  unread: string | null;
}

/** Settings are a few lines. */
const MOST_BYTES = 1 << 20;

/** The bench that a folder belongs to; null when there is none. Looks up to the top of the repository. */
export function findBench(folder: string): Bench | null {
  for (let at = folder; ; at = dirname(at)) {
    const file = join(at, BENCH_FILE);
    if (isThere(file)) return benchOf(at, file);
    if (isThere(join(at, '.git')) || dirname(at) === at) return null;
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

/** Total: what it cannot read is as if it were not said. */
export function readBench(folder: string, text: string): Bench {
  let raw: unknown;
  try {
    raw = parse(text, { schema: 'failsafe', maxAliasCount: 0 });
  } catch {
    raw = null;
  }
  const map = isMap(raw) ? raw : {};
  const wrenches = isMap(map.wrenches) ? Object.entries(map.wrenches) : [];
  return {
    folder,
    commit: map.commit === 'milestones' ? 'milestones' : 'never',
    hour: typeof map.hour === 'string' ? moneyIn(map.hour) : null,
    wrenches: wrenches.flatMap(([name, w]) => (isMap(w) ? wrench(name, w) : [])),
    unread: null,
  };
}

/** `{range: 5..25 N·m, step: 0.5, length: 380}`; without a range it is no torque wrench. */
function wrench(name: string, raw: Record<string, unknown>): Wrench[] {
  const text = (key: string) => (typeof raw[key] === 'string' ? raw[key] : '');
  const range = readQuantity(text('range'));
  if (!range || range.to === null) return [];
  const step = readLength(text('step'));
  return [
    {
      name,
      from: range.value,
      to: range.to,
      unit: range.unit,
      step: step !== null && step > 0 ? step : null,
      length: readLength(text('length')),
    },
  ];
}

function isMap(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
