/** The settings that a command goes by; what of them could not be read is told beside its answer. */
import { dirname } from 'node:path';
import { type Bench, findBench, oddIn } from '../../diary/bench.ts';
import type { World } from '../../world.ts';
import { noteSettings } from './unread.ts';

/** The bench that a folder belongs to; null when there is none. */
export function benchIn(world: World, folder: string): Bench | null {
  const bench = findBench(folder);
  if (bench !== null) noteSettings(world, oddIn(bench, world.folder));
  return bench;
}

/** The bench of a job file. */
export function benchOf(world: World, file: string): Bench | null {
  return benchIn(world, dirname(file));
}
