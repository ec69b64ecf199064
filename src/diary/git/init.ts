/** A folder becomes a bench in git: a repository, and job files that merge by meaning. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { patiently } from './patience.ts';
import { placeOf } from './place.ts';
import { firstLine, type GitOptions, git } from './run.ts';
import { reason } from './why-not.ts';

const ATTRIBUTES = '.gitattributes';
/** Job files unite; the settings of the bench are no diary and merge like all text. */
const LINES = ['*.yaml merge=union', 'bench.yaml !merge'];
const COMMENT =
  '# Job files unite their diaries. After `putback bench` they merge by meaning, else line by line.';

/**
 * Git's merge driver of the name `union`, in the settings of this repository: a clone that has not got it falls
 * back to git's own driver of that name. Git would keep only our side of a file when the program is missing or
 * dies, and call that a conflict: so without its markers in the file the lines are united by git's own means.
 */
export function driverOf(program: string): string {
  return [
    `${program} merge %O %A %B && exit 0`,
    'grep -q "^<<<<<<< " %A && exit 1',
    'git merge-file --union %A %O %B',
  ].join('; ');
}

export interface Made {
  /** True when git keeps this folder now. */
  ok: boolean;
  /** What was done, and what is missing, one sentence each; empty when all was so already. */
  lines: string[];
}

/**
 * Makes the folder a repository unless it is in one, and sets how job files merge. Never throws; without git
 * the folder is as good as before and `lines` says so. `program`: how git calls putback, a shell's word.
 */
export async function initBench(
  folder: string,
  options: { program?: string; env?: GitOptions['env'] } = {},
): Promise<Made> {
  const env = { env: options.env };
  const lines: string[] = [];
  let place = await placeOf(folder, env);
  if ('no' in place && place.no === 'no-repo') {
    const made = await git(folder, ['init', '-q'], env);
    if (made.code !== 0)
      return { ok: false, lines: [`No git repository: ${firstLine(made.err)}.`] };
    lines.push('A git repository is made here.');
    place = await placeOf(folder, env);
  }
  if ('no' in place)
    return { ok: false, lines: [`No git repository: ${reason(place.no, place.err)}.`] };
  lines.push(...(await attributes(folder, env)), ...(await driver(folder, env, options.program)));
  const name = await git(folder, ['-c', 'user.useConfigOnly=true', 'var', 'GIT_COMMITTER_IDENT'], {
    ...env,
    read: true,
  });
  if (name.code !== 0) lines.push(`No commits yet: ${reason('no-name', '')}.`);
  return { ok: true, lines };
}

/** Adds to the folder's attributes what is missing; what is there stays. */
async function attributes(folder: string, env: GitOptions): Promise<string[]> {
  const names = ['job.yaml', 'bench.yaml'];
  const now = await git(folder, ['check-attr', '-z', 'merge', '--', ...names], {
    ...env,
    read: true,
  });
  const [job, bench] = now.out.split('\0').filter((_, i) => i % 3 === 2);
  if (job === 'union' && bench !== 'union') return [];
  const path = join(folder, ATTRIBUTES);
  try {
    const old = existsSync(path) ? readFileSync(path, 'utf8') : '';
    const ending = old.includes('\r\n') ? '\r\n' : '\n';
    const gap = old === '' || old.endsWith('\n') ? '' : ending;
    writeFileSync(path, `${old}${gap}${[COMMENT, ...LINES].map((l) => l + ending).join('')}`);
  } catch (error) {
    return [
      `${ATTRIBUTES} could not be written: ${error instanceof Error ? error.message : error}.`,
    ];
  }
  return [`${ATTRIBUTES} lets diaries unite.`];
}

async function driver(folder: string, env: GitOptions, program = 'putback'): Promise<string[]> {
  const command = driverOf(program);
  const read = { ...env, read: true };
  const now = await git(folder, ['config', '--local', 'merge.union.driver'], read);
  if (now.out.trimEnd() === command) return [];
  const pairs = [
    ['merge.union.name', 'putback: job files by meaning'],
    ['merge.union.driver', command],
  ];
  for (const [key, value] of pairs) {
    const set = await patiently(() =>
      git(folder, ['config', '--local', key ?? '', value ?? ''], env),
    );
    if (set.code !== 0) return [`Job files merge line by line: ${firstLine(set.err)}.`];
  }
  return ['Job files merge by meaning.'];
}
