/** A folder becomes a bench; what is there already stays as it is. */
import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { BENCH_FILE } from './bench.ts';
import { initBench } from './git/init.ts';
import { SCHEMA_FILE, writeSchema } from './schema-file.ts';

const SETTINGS = `# Settings of this bench. They never name a command.

# At the end of each place of a piece (off, on, tight) its job file is committed, and nothing else: milestones.
# Write never to do it yourself.
commit: milestones

# Your torque wrenches: range and unit, the step of the scale, and mm from the square to the middle of the grip.
# wrenches:
#   small: {range: 5..25 N·m, step: 0.5, length: 240}
#   large: {range: 40..200 N·m, step: 5, length: 470}
`;

export type Made = { ok: true; lines: string[] } | { ok: false; code: string; say: string };

/** `program`: how git calls putback to merge job files, a shell's words. */
export async function makeBench(folder: string, program: string): Promise<Made> {
  const lines: string[] = [];
  try {
    if (!existsSync(folder)) {
      mkdirSync(folder, { recursive: true });
      lines.push(`${folder} is new.`);
    }
    if (!existsSync(join(folder, BENCH_FILE))) {
      writeFileSync(join(folder, BENCH_FILE), SETTINGS, { flag: 'wx' });
      lines.push(`${BENCH_FILE} holds the settings: commit: milestones.`);
    }
    if (writeSchema(folder)) lines.push(`${SCHEMA_FILE} lets editors check job files.`);
  } catch (error) {
    const say = `${folder} could not be made a bench: ${error instanceof Error ? error.message : error}.`;
    return { ok: false, code: 'unsaved', say };
  }
  const git = await initBench(folder, { program });
  return { ok: true, lines: [...lines, ...git.lines] };
}
