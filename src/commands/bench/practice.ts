/** A practice bench in a new folder: the jobs of this program, a first commit, and the screens. */
import {
  existsSync,
  lstatSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { agedTo } from '../../diary/age.ts';
import { BENCH_FILE } from '../../diary/bench.ts';
import { makeBench } from '../../diary/make-bench.ts';
import { shipped } from '../../diary/shipped.ts';
import { disk, errorCode, makeFolder } from '../../job/save/disk.ts';
import { failOf } from '../../job/save/fail.ts';
import { keepOwn, readOwn } from '../../job/save/own.ts';
import { quoted } from '../../model/safe.ts';
import { readOutAsked } from '../../screens/terminal/guard.ts';
import type { World } from '../../world.ts';
import { type Answer, answer, type Call, misuse, unsaved } from '../base/command.ts';

/** So long nobody has touched the practice jobs: coming back after weeks is part of the practice. */
const LEFT_ALONE = 21;

export async function run(call: Call): Promise<Answer> {
  const { world, words, options } = call;
  const named = words[0] === undefined ? null : resolve(world.folder, words[0]);
  const before = options.new ? null : named === null ? practiceBefore() : isPractice(named);
  if (named !== null && before === null && !isFree(named)) {
    return misuse('exists', `${named} is there already and not empty: name a new folder.`, {
      folder: named,
    });
  }
  if (before !== null)
    return opened(
      call,
      { folder: before, changed: false },
      `The practice bench of before: ${before}`,
    );
  let folder: string;
  try {
    folder = named ?? mkdtempSync(join(tmpdir(), 'putback-practice-'));
    copyJobs(folder, world);
  } catch (error) {
    const { say, fix } = failOf(error, named ?? tmpdir(), 'made');
    return unsaved({ code: 'unsaved', say: `There is no practice bench. ${say} ${fix}` });
  }
  const bench = await makeBench(folder, world.program, world.folder);
  if (!bench.ok) return unsaved({ code: bench.code, say: bench.say });
  const { firstCommit } = await import('../../diary/git/bench.ts');
  const quiet = await firstCommit(folder, 'Practice bench');
  if (named === null) keepOwn(PRACTICE, 'practice', folder);
  const lines = [`Practice bench: ${folder}`, ...(quiet ? [quiet] : [])];
  return opened(call, { folder, changed: true, git: quiet }, lines.join('\n'));
}

/** Under this name the user's own folder says where the practice bench is. */
const PRACTICE = 'practice';

/** The one that was made before, if it is still there. */
function practiceBefore(): string | null {
  const folder = readOwn(PRACTICE, 'practice')?.text ?? null;
  return folder === null ? null : isPractice(folder);
}

/** The folder, if it is a bench with all jobs of the practice. */
function isPractice(folder: string): string | null {
  const all = [BENCH_FILE, ...practiceJobs()];
  return all.every((name) => existsSync(join(folder, name))) ? folder : null;
}

function practiceJobs(): string[] {
  return readdirSync(shipped('jobs')).filter((n) => n.endsWith('.yaml'));
}

function opened(
  { world, options }: Call,
  { folder, changed, git = null }: { folder: string; changed: boolean; git?: string | null },
  text: string,
): Answer {
  const done = answer({ changed, folder, git }, text);
  const terminal = world.stdin.isTTY && world.stdout.isTTY;
  const can = terminal || options.lines === true || readOutAsked(world.env);
  if (options.json || options['no-open'] || !can) {
    return { ...done, text: `${done.text}\nOpen it with: putback ${quoted(folder)}` };
  }
  return { ...done, open: folder };
}

/** Nothing there yet, or an empty folder. */
function isFree(path: string): boolean {
  try {
    return readdirSync(path).length === 0;
  } catch (error) {
    // What lies in the way above it is told when the folder is made.
    if (errorCode(error) === 'ENOTDIR' && !existsSync(path)) return true;
    return lstatSync(path, { throwIfNoEntry: false }) === undefined;
  }
}

function copyJobs(folder: string, world: World): void {
  makeFolder(disk, folder);
  const jobs = shipped('jobs');
  for (const name of practiceJobs()) {
    const text = readFileSync(join(jobs, name), 'utf8');
    writeFileSync(join(folder, name), agedTo(text, world.now(), LEFT_ALONE), { flag: 'wx' });
  }
}
