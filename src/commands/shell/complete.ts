/** What can stand at a place of a command line: for the completions of a shell. */
import { readdirSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { jobOf, readJob } from '../../job/read.ts';
import { readNamed } from '../../job/save/plain.ts';
import {
  BUY_STATES,
  CORRECTABLE,
  HOLE_STATES,
  type Job,
  LOOKED,
  MOMENTS,
  WRITABLE,
} from '../../model/types.ts';
import { PAPERS } from '../../paper/ask.ts';
import type { World } from '../../world.ts';
import type { Command } from '../base/command.ts';
import { COMMON } from '../base/common.ts';
import { SHELLS } from './shells.ts';

/** A word that can stand there, and what it means. */
interface Candidate {
  word: string;
  say: string;
}

interface At {
  commands: readonly Command[];
  /** Which of the command's names was used. */
  name: string;
  /** Words in front, without options. */
  words: readonly string[];
  last: string;
  world: World;
  /** Null where no job file stands in front, or none that can be read. */
  job: Job | null;
}

const bare = (words: readonly string[], say = ''): Candidate[] =>
  words.map((word) => ({ word, say }));
const nothing = () => [];
const pieces = ({ job }: At) =>
  [...(job?.pieces.values() ?? [])].map((p) => ({ word: p.spec.key, say: p.spec.name }));
const holes = ({ job, words }: At) =>
  (job?.pieces.get(words[1] ?? '')?.holes ?? []).map((h) => ({
    word: h.name,
    say: h.belongs?.kind ?? '',
  }));
const tasks = ({ job }: At) =>
  [...(job?.tasks.values() ?? [])].map((t) => ({ word: t.spec.key, say: t.spec.say.text }));
const traced = ({ job }: At) => [
  ...[...(job?.upper.checks.values() ?? [])].map((c) => ({ word: c.key, say: c.check })),
  ...[...(job?.upper.suspects.values() ?? [])].map((s) => ({ word: s.key, say: s.what })),
];
const kinds = ({ job }: At) =>
  [...(job?.upper.kinds.values() ?? [])].map((k) => ({ word: k.letter, say: k.text }));
const files = (at: At) => pathsAt(at, /\.ya?ml$/);
const folders = (at: At) => pathsAt(at, null);
const PICTURES = /\.(?:jpe?g|png|webp|hei[cf]|avif|tiff?)$/i;
const TORQUES = ['convert', 'wrench', 'thread', 'sane', 'strip'];

/** By the names that stand in the usage of the commands. A test holds that none is missing. */
export const WORDS_AT: Readonly<Record<string, (at: At) => Candidate[]>> = {
  FILE: files,
  FOLDER: folders,
  BASE: files,
  OURS: files,
  THEIRS: files,
  JOB: nothing,
  TEXT: nothing,
  FIGURE: nothing,
  THINGS: nothing,
  WORDS: nothing,
  PIECE: pieces,
  HOLE: holes,
  TASK: tasks,
  KIND: kinds,
  MACHINE: nothing,
  LETTER: nothing,
  CHECK: traced,
  HOW: ({ name }) =>
    bare(name === 'trace' ? [...LOOKED, 'found'] : ['look', 'renew', 'leave', 'ask']),
  NAME: (at) => [...pieces(at), ...tasks(at)],
  THING: ({ job }) =>
    [...(job?.upper.buys.values() ?? [])].map((b) => ({ word: b.key, say: b.what })),
  ID: ({ job }) =>
    (job?.entries ?? [])
      .slice(-20)
      .reverse()
      .map((e) => ({ word: e.id, say: `${e.at} ${e.verb}` })),
  STATE: ({ name }) => bare(name === 'buy' ? BUY_STATES : HOLE_STATES),
  KEY: () => bare(WRITABLE),
  WHAT: ({ name }) => bare(name === 'torque' ? TORQUES : name === 'paper' ? PAPERS : CORRECTABLE),
  PICTURE: (at) => pathsAt(at, PICTURES),
  MOMENT: () => bare(MOMENTS),
  COMMAND: named,
  SHELL: () => bare(SHELLS),
};

function named({ commands }: Pick<At, 'commands'>): Candidate[] {
  return commands.flatMap((c) => c.names.map((word) => ({ word, say: c.say })));
}

/** The names in a usage, in their order; the last one again for all that follow where it may be repeated. */
export function placesOf(usage: string): { names: string[]; repeats: boolean } {
  return {
    names: [...usage.matchAll(/[A-Z]+/g)].map(([name]) => name),
    repeats: usage.includes('…'),
  };
}

/** Folders, and files of such a name, under what was typed so far. */
function pathsAt({ last, world }: At, names: RegExp | null): Candidate[] {
  const front = last.endsWith('/') ? last : dirname(last) === '.' ? '' : `${dirname(last)}/`;
  try {
    return readdirSync(resolve(world.folder, front), { withFileTypes: true })
      .filter((f) => !f.name.startsWith('.'))
      .filter((f) => f.isDirectory() || names?.test(f.name) === true)
      .map((f) => ({ word: join(front, f.name) + (f.isDirectory() ? '/' : ''), say: '' }));
  } catch {
    return [];
  }
}

function readQuietly(file: string | undefined, world: World): Job | null {
  if (file === undefined) return null;
  try {
    const read = readJob(readNamed(resolve(world.folder, file)).bytes.toString('utf8'), file);
    return read.unreadable ? null : jobOf(read);
  } catch {
    return null;
  }
}

/** `typed`: all words behind the program's name, the last one as far as it is typed. */
export function candidates(
  typed: readonly string[],
  commands: readonly Command[],
  world: World,
): Candidate[] {
  const last = typed.at(-1) ?? '';
  const [name = '', ...rest] = typed.slice(0, -1);
  const fits = (all: Candidate[]) => all.filter(({ word }) => word.startsWith(last));
  if (typed.length < 2) {
    const at = { commands, name, words: [], last, world, job: null };
    return fits([...named(at), ...files(at)]);
  }
  const command = commands.find((c) => c.names.includes(name));
  if (!command) return [];
  const options = { ...command.options, ...COMMON };
  const wants = (word: string | undefined) =>
    word?.startsWith('--') ? (options[word.slice(2)]?.value ?? null) : null;
  const words = rest.filter((w, i) => !w.startsWith('--') && wants(rest[i - 1]) === null);
  const at: At = { commands, name, words, last, world, job: readQuietly(words[0], world) };
  const wanted = wants(rest.at(-1));
  if (wanted !== null) return fits(WORDS_AT[wanted]?.(at) ?? []);
  if (last.startsWith('-')) {
    return fits(Object.entries(options).map(([o, { say }]) => ({ word: `--${o}`, say })));
  }
  const { names, repeats } = placesOf(command.usage);
  const place = names[words.length] ?? (repeats ? names.at(-1) : undefined);
  return place === undefined ? [] : fits(WORDS_AT[place]?.(at) ?? []);
}
