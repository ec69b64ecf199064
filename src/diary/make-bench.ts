/** A folder becomes a bench; what is there already stays as it is. */
import { existsSync, readdirSync } from 'node:fs';
import { join, relative } from 'node:path';
import { disk, makeFolder } from '../job/save/disk.ts';
import { failOf } from '../job/save/fail.ts';
import { readPlain } from '../job/save/plain.ts';
import { IS_JOB } from '../job/yaml/is-job.ts';
import { quoted } from '../model/safe.ts';
import { BENCH_FILE } from './bench.ts';
import { uncommitted } from './git/bench.ts';
import { ATTRIBUTES, initBench } from './git/init.ts';
import { type Wrote, writeIfMissing } from './ours.ts';
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

/** The files that make a folder a bench. */
const OURS = [BENCH_FILE, SCHEMA_FILE, ATTRIBUTES];

/**
 * `open`: what its user does next. `left`: what lies in the way of something of ours, and was left alone. One
 * sentence each.
 */
type Made =
  | { ok: true; lines: string[]; open: string[]; left: string[] }
  | { ok: false; code: string; say: string };

/** `program`: how git calls putback to merge job files, a shell's words. `here`: the folder in which its user stands. */
export async function makeBench(folder: string, program: string, here: string): Promise<Made> {
  const lines: string[] = [];
  const left: string[] = [];
  const made: string[] = [];
  const note = (name: string, wrote: Wrote, say: string) => {
    if (wrote === 'written') {
      lines.push(say);
      made.push(name);
    } else if (wrote !== 'same') left.push(wrote.left);
  };
  try {
    if (!existsSync(folder)) {
      makeFolder(disk, folder);
      lines.push(`${folder} is new.`);
    }
    const settings = writeIfMissing(join(folder, BENCH_FILE), SETTINGS);
    note(BENCH_FILE, settings, `${BENCH_FILE} holds the settings: commit: milestones.`);
    note(SCHEMA_FILE, writeSchema(folder), `${SCHEMA_FILE} lets editors check job files.`);
  } catch (error) {
    const { say, fix } = failOf(error, folder, 'made');
    return {
      ok: false,
      code: 'unsaved',
      say: `${folder} could not be made a bench. ${say} ${fix}`,
    };
  }
  const git = await initBench(folder, { program, others: otherYaml(folder) });
  if (git.wrote) made.push(git.wrote);
  // What an earlier call made may still wait for its first commit.
  const names = made.length > 0 || !git.ok ? made : await uncommitted(folder, OURS);
  const call = folder === here ? 'git' : `git -C ${quoted(relative(here, folder) || folder)}`;
  const add = `${call} add ${names.join(' ')} && ${call} commit`;
  const open =
    git.ok && names.length > 0 ? [`Not committed yet, so that you can look first: ${add}`] : [];
  return { ok: true, lines: [...lines, ...git.lines], open, left: [...left, ...git.left] };
}

/** Names of YAML in the folder that is no job: it merges as it always did. */
function otherYaml(folder: string): string[] {
  return readdirSync(folder).filter((name) => {
    if (!name.endsWith('.yaml') || name === BENCH_FILE) return false;
    try {
      return !IS_JOB.test(readPlain(join(folder, name)).bytes.toString('utf8'));
    } catch {
      return false;
    }
  });
}
