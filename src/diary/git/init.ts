/** A folder becomes a bench in git: a repository, and job files that merge by meaning. */
import { dirname, join, resolve } from 'node:path';
import { disk, makeFolder } from '../../job/save/disk.ts';
import { lookAt } from '../../job/save/plain.ts';
import { addTo } from '../ours.ts';
import { patiently } from './patience.ts';
import { gitPlaceOf } from './place.ts';
import { firstLine, type GitOptions, git } from './run.ts';
import { reason } from './why-not.ts';

export const ATTRIBUTES = '.gitattributes';
/** Job files unite; the settings of the bench are no diary and merge like all text. */
const JOBS = '*.yaml merge=union';
const SETTINGS = 'bench.yaml !merge';
const COMMENT =
  '# Job files unite their diaries. After `putback bench` they merge by meaning, else line by line.';

/** Git's merge driver, in the settings of this repository. A name of its own: other files may unite otherwise. */
const DRIVER = 'putback';

/**
 * What git runs to merge a file. What is no job goes git's own way. Git would keep only our side of a job when the
 * program is missing or dies, and call that a conflict: so without markers in the file its lines are united.
 */
export function driverOf(program: string): string {
  const labels = '-L ours -L base -L theirs';
  return [
    `grep -q "^[^a-z]*putback[^a-z]*:" %A || { git merge-file ${labels} %A %O %B; exit; }`,
    `${program} merge %O %A %B && exit 0`,
    'grep -q "^<<<<<<< " %A && exit 1',
    'git merge-file --union %A %O %B',
  ].join('; ');
}

interface Made {
  /** True when git keeps this folder now. */
  ok: boolean;
  /** What was done, and what is missing, one sentence each; empty when all was so already. */
  lines: string[];
  /** What lies in the way of something of ours, and was left alone. */
  left: string[];
  /** The file in the folder that was made or got lines; null: none. */
  wrote: string | null;
}

export interface InitOptions {
  /** How git calls putback, a shell's word. */
  program?: string;
  /** YAML in the folder that is no job. */
  others?: readonly string[];
  env?: GitOptions['env'];
}

/**
 * Makes the folder a repository unless it is in one, and sets how job files merge. Never throws; without git
 * the folder is as good as before and `lines` says so.
 */
export async function initBench(folder: string, options: InitOptions = {}): Promise<Made> {
  const env = { env: options.env };
  const lines: string[] = [];
  const no = (say: string): Made => ({
    ok: false,
    lines: [`No git repository: ${say}.`],
    left: [],
    wrote: null,
  });
  let place = await gitPlaceOf(folder, env);
  if ('no' in place && place.no === 'no-repo') {
    // Git would follow it, wherever it leads.
    if (lookAt(disk, join(folder, '.git'))) return no('there is a .git here, and it is none');
    const made = await git(folder, 'init', [], env);
    if (made.code !== 0) return no(firstLine(made.err));
    lines.push('A git repository is made here.');
    place = await gitPlaceOf(folder, env);
  }
  if ('no' in place) return no(reason(place.no, place.err));
  const did = [
    await attributes(folder, env, options.others ?? []),
    await driver(folder, env, options.program),
  ];
  for (const { line } of did) if (line !== undefined) lines.push(line);
  const name = await git(folder, 'who', ['GIT_COMMITTER_IDENT'], env);
  if (name.code !== 0) lines.push(`No commits yet: ${reason('no-name', '')}.`);
  const wrote = did[0]?.line === undefined || did[0].failed ? null : ATTRIBUTES;
  return { ok: true, lines, left: did.flatMap(({ left }) => left ?? []), wrote };
}

interface Did {
  line?: string;
  left?: string;
  failed?: true;
}

/** Adds lines to a file of attributes, in its own line endings. */
function addLines(
  folder: string,
  path: string,
  missing: (old: string) => readonly string[],
  say: string,
): Did {
  try {
    makeFolder(disk, dirname(path));
    // The folder itself may have been named by a link; what lies in it may not be one.
    if (lookAt(disk, dirname(path))?.odd === 'a link' && dirname(path) !== folder) {
      return { left: `${dirname(path)} is a link: nothing is written there.` };
    }
    const wrote = addTo(path, (old) => {
      const lines = missing(old);
      if (lines.length === 0) return '';
      const ending = old.includes('\r\n') ? '\r\n' : '\n';
      const gap = old === '' || old.endsWith('\n') ? '' : ending;
      return `${gap}${lines.map((l) => l + ending).join('')}`;
    });
    if (wrote === 'same') return {};
    return wrote === 'written' ? { line: say } : { left: wrote.left };
  } catch (error) {
    const why = error instanceof Error ? error.message : error;
    return { line: `${path} could not be written: ${why}.`, failed: true };
  }
}

/** Adds to the folder's attributes what is missing; what is there stays. */
async function attributes(
  folder: string,
  env: GitOptions,
  others: readonly string[],
): Promise<Did> {
  const now = await git(folder, 'attributes', ['job.yaml', 'bench.yaml'], env);
  const [job, bench] = now.out.split('\0').filter((_, i) => i % 3 === 2);
  const united = job === 'union' || job === DRIVER;
  if (united && bench !== job) return {};
  const apart = others.map((name) => `${pattern(literally(name))} !merge`);
  return addLines(
    folder,
    join(folder, ATTRIBUTES),
    (old) => (old.split(/\r?\n/).includes(JOBS) ? [] : [COMMENT, JOBS, SETTINGS, ...apart]),
    `${ATTRIBUTES} lets diaries unite.`,
  );
}

/** A path as the part of a pattern that matches it alone. */
const literally = (path: string): string => path.replace(/[\\*?[]/g, '\\$&');

/** A pattern as attributes take it: quoted where it has blanks and the like. */
function pattern(text: string): string {
  if (/^[\w./\\*?[\]-]+$/.test(text)) return text;
  const quoted = Array.from(text, (c) =>
    c < ' ' ? `\\${c.charCodeAt(0).toString(8).padStart(3, '0')}` : c.replace(/["\\]/, '\\$&'),
  );
  return `"${quoted.join('')}"`;
}

/** The program of this machine, in the settings and attributes of this clone alone: others have the plain ones. */
async function driver(folder: string, env: GitOptions, program = 'putback'): Promise<Did> {
  const where = await git(folder, 'inGit', ['config', 'info/attributes'], env);
  const [prefix = '', config = '', info = ''] = where.out.split('\n');
  if (where.code !== 0) return { line: `${BY_LINE}: ${firstLine(where.err)}.` };
  const odd = lookAt(disk, resolve(folder, config))?.odd;
  if (odd) return { left: `The settings of git are ${odd}: they are left alone.` };
  const set = await setDriver(folder, env, driverOf(program));
  if (set !== null && set !== BY_MEANING) return { line: set };
  const path = resolve(folder, info);
  const here = `/${literally(prefix)}`;
  const lines = [
    `${pattern(`${here}**/*.yaml`)} merge=${DRIVER}`,
    `${pattern(`${here}bench.yaml`)} !merge`,
  ];
  const added = addLines(
    folder,
    path,
    (old) => lines.filter((line) => !old.split(/\r?\n/).includes(line)),
    BY_MEANING,
  );
  return set !== null && added.left === undefined ? { line: set } : added;
}

const BY_MEANING = 'Job files merge by meaning.';
const BY_LINE = 'Job files merge line by line';

/** Null: it was set already. Else one sentence: that it is set, or why not. */
async function setDriver(folder: string, env: GitOptions, command: string): Promise<string | null> {
  const key = `merge.${DRIVER}.driver`;
  const now = await git(folder, 'setting', [key], env);
  if (now.out.trimEnd() === command) return null;
  const pairs = [
    [`merge.${DRIVER}.name`, 'job files by meaning'],
    [key, command],
  ];
  for (const pair of pairs) {
    const set = await patiently(() => git(folder, 'set', pair, env));
    if (set.code !== 0) return `${BY_LINE}: ${firstLine(set.err)}.`;
  }
  return BY_MEANING;
}
