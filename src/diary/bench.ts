/** The settings of a bench: `bench.yaml` in the folder of the job files or above it, never a command. */
import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { parse } from 'yaml';
import { readLength } from '../bolt/length.ts';
import { readQuantity } from '../bolt/units.ts';
import type { Wrench } from '../bolt/wrench.ts';
import { readBounded } from '../job/save/bounded.ts';

export const BENCH_FILE = 'bench.yaml';

export interface Bench {
  folder: string;
  /** When putback commits by itself: at the end of each place of a piece, or never. */
  commit: 'milestones' | 'never';
  wrenches: Wrench[];
}

/** The bench that a folder belongs to; null when there is none. Looks up to the top of the repository. */
export function findBench(folder: string): Bench | null {
  for (let at = folder; ; at = dirname(at)) {
    const file = join(at, BENCH_FILE);
    if (existsSync(file)) return readBench(at, textOrNothing(file));
    if (existsSync(join(at, '.git')) || dirname(at) === at) return null;
  }
}

/** Settings that cannot be read (a folder of that name, no permission) are as if they were not there. */
function textOrNothing(file: string): string {
  try {
    return readBounded(file).toString('utf8');
  } catch {
    return '';
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
    wrenches: wrenches.flatMap(([name, w]) => (isMap(w) ? wrench(name, w) : [])),
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
