/** The settings of a bench: `bench.yaml` in the folder of the job files or above it, never a command. */
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { parse } from 'yaml';
import { readQuantity } from '../bolt/units.ts';

export const BENCH_FILE = 'bench.yaml';

export interface Wrench {
  name: string;
  from: number | null;
  to: number | null;
  unit: string;
  step: number | null;
}

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
    if (existsSync(file)) return readBench(at, readFileSync(file, 'utf8'));
    if (existsSync(join(at, '.git')) || dirname(at) === at) return null;
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
    wrenches: wrenches.flatMap(([name, w]) => (isMap(w) ? [wrench(name, w)] : [])),
  };
}

function wrench(name: string, raw: Record<string, unknown>): Wrench {
  const range = typeof raw.range === 'string' ? readQuantity(raw.range) : null;
  const step = typeof raw.step === 'string' ? Number(raw.step) : Number.NaN;
  return {
    name,
    from: range?.value ?? null,
    to: range?.to ?? null,
    unit: range?.unit ?? 'N·m',
    step: Number.isFinite(step) && step > 0 ? step : null,
  };
}

function isMap(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
