/** What can stand at a place of a command line: for the completions of a shell. */
import { type Dirent, readdirSync, statSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { findBench } from '../../diary/bench.ts';
import { shipped } from '../../diary/shipped.ts';
import { jobOf, readJob } from '../../job/read.ts';
import { readNamed } from '../../job/save/plain.ts';
import { TEMPLATES, templatesIn } from '../../memory/bench/earlier.ts';
import { safeLine } from '../../model/safe.ts';
import {
  ADDABLE,
  BUY_STATES,
  CORRECTABLE,
  HOLE_STATES,
  type Job,
  LOOKED,
  MOMENTS,
  WRITABLE,
} from '../../model/types.ts';
import { PAPERS } from '../../paper/ask.ts';
import { passesOf } from '../../piece/passes.ts';
import type { World } from '../../world.ts';
import type { Command } from '../base/command.ts';
import { COMMON, SCREEN_LOOKS } from '../base/common.ts';
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
  /** Options that stand in front, with their texts. */
  said: Readonly<Record<string, string>>;
}

const bare = (words: readonly string[], say = ''): Candidate[] =>
  words.map((word) => ({ word, say }));
const nothing = () => [];
const pieces = ({ job }: At) =>
  [...(job?.pieces.values() ?? [])].map((p) => ({ word: p.spec.key, say: p.spec.name }));
const holes = ({ job, words, said }: At) =>
  (job?.pieces.get(said.piece ?? words[1] ?? '')?.holes ?? [])
    .filter((h) => !words.slice(2).includes(h.name))
    .map((h) => ({ word: h.name, say: h.belongs?.kind ?? '' }));
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
const UNITS = ['N·m', 'lbf·ft', 'lbf·in', 'kgf·m', 'kgf·cm'];
const TORQUES = ['convert', 'wrench', 'thread', 'sane', 'strip'];

const passes = ({ job, words }: At) => {
  const piece = job?.pieces.get(words[1] ?? '');
  return bare(job && piece ? passesOf(piece.spec, job.upper.kinds).map((p) => p.name) : []);
};
const trays = ({ job }: At) =>
  bare([...new Set([...(job?.pieces.values() ?? [])].flatMap(({ tray }) => tray ?? []))]);
/** Templates of the program and of the bench in which the new file will lie, and earlier jobs. */
const starts = (at: At) => {
  const file = resolve(at.world.folder, at.words[0] ?? '.');
  const own = findBench(dirname(file))?.folder ?? dirname(file);
  return [...bare([...new Set([...templatesIn(own), ...templatesShipped()])]), ...files(at)];
};
const machines = ({ world, words }: At) => {
  const folder = resolve(world.folder, words[0] ?? '');
  const jobs = namesIn(folder).filter((name) => /\.ya?ml$/.test(name));
  const of = jobs.slice(0, MOST_JOBS).map((name) => readQuietly(`${folder}/${name}`, world));
  return bare([...new Set(of.flatMap((job) => job?.upper.machine ?? []))]);
};
/** How many files are read for one press of Tab. */
const MOST_JOBS = 200;

function namesIn(folder: string): string[] {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
}

function templatesShipped(): string[] {
  try {
    return namesIn(shipped(TEMPLATES)).map((name) => basename(name, '.yaml'));
  } catch {
    return [];
  }
}

/** Options whose value goes by a name that means something else elsewhere. */
const OPTION_AT: Readonly<Record<string, (at: At) => Candidate[]>> = {
  'add as': () => bare(ADDABLE),
  'new from': starts,
  'paper size': () => bare(['a4', 'letter']),
  'template as': nothing,
  'tight pass': passes,
  'torque to': () => bare(UNITS),
  'trace old': () => bare(['back', 'out']),
};

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
  MACHINE: machines,
  PLACE: trays,
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
  const front = last.slice(0, last.lastIndexOf('/') + 1);
  const home = /^~(?=\/)/;
  const hidden = last.slice(front.length).startsWith('.');
  // A word that begins with a hyphen would be taken for an option.
  const asWord = (name: string) =>
    front === '' && name.startsWith('-') ? `./${name}` : front + name;
  try {
    const folder = resolve(
      world.folder,
      front.replace(home, () => world.env.HOME ?? '~'),
    );
    return readdirSync(folder, { withFileTypes: true })
      .filter((f) => (hidden || !f.name.startsWith('.')) && safeLine(f.name) === f.name)
      .filter((f) => isFolder(folder, f) || names?.test(f.name) === true)
      .map((f) => ({ word: asWord(f.name) + (isFolder(folder, f) ? '/' : ''), say: '' }));
  } catch {
    return [];
  }
}

function isFolder(folder: string, file: Dirent): boolean {
  if (!file.isSymbolicLink()) return file.isDirectory();
  return statSync(join(folder, file.name), { throwIfNoEntry: false })?.isDirectory() ?? false;
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

/** Options of the screens. */
const ON_SCREENS: readonly Candidate[] = Object.entries(SCREEN_LOOKS).map(([name, { say }]) => ({
  word: `--${name}`,
  say,
}));
const ALONE: readonly Candidate[] = [
  { word: '--help', say: 'what there is' },
  { word: '--version', say: 'which putback this is' },
];

/** `typed`: all words behind the program's name, the last one as far as it is typed. */
export function candidates(
  typed: readonly string[],
  commands: readonly Command[],
  world: World,
): Candidate[] {
  const last = typed.at(-1) ?? '';
  const first = typed.slice(0, -1).filter((word) => !ON_SCREENS.some((o) => o.word === word));
  const fits = (all: Candidate[]) => all.filter(({ word }) => word.startsWith(last));
  const [name = '', ...rest] = first;
  if (name === '') {
    const at = { commands, name, words: [], last, world, job: null, said: {} };
    const onScreens = first.length < typed.length - 1;
    if (last.startsWith('-')) return fits([...ON_SCREENS, ...(onScreens ? [] : ALONE)]);
    return fits([...(onScreens ? [] : named(at)), ...files(at)]);
  }
  const command = commands.find((c) => c.names.includes(name));
  if (!command) return last.startsWith('-') ? fits([...ON_SCREENS]) : [];
  const options = { ...command.options, ...COMMON };
  const long = (word: string) =>
    Object.entries(options).find(([o, { letter }]) => word === `--${o}` || word === `-${letter}`);
  /** The option that takes the next word. */
  const wants = (word: string | undefined): string | null => {
    const [option, { value = null } = {}] = long(word ?? '') ?? [];
    return option === undefined || value === null ? null : option;
  };
  const end = rest.indexOf('--');
  const isOption = (word: string, i: number) =>
    (end < 0 || i < end) && (long(word) !== undefined || word.startsWith('--'));
  const words = rest.filter((w, i) => i !== end && !isOption(w, i) && wants(rest[i - 1]) === null);
  const said = Object.fromEntries(
    rest.flatMap((w, i) => (wants(w) === null ? [] : [[wants(w), rest[i + 1] ?? '']])),
  );
  const at: At = { commands, name, words, last, world, job: readQuietly(words[0], world), said };
  const valuesOf = (option: string, within: At) => {
    const place = WORDS_AT[options[option]?.value ?? ''] ?? nothing;
    return (OPTION_AT[`${name} ${option}`] ?? place)(within);
  };
  const wanted = end < 0 ? wants(rest.at(-1)) : null;
  if (wanted !== null) return fits(valuesOf(wanted, at));
  if (end < 0 && last.startsWith('-')) {
    const [, option = '', value = ''] = /^--([\w-]+)=(.*)$/s.exec(last) ?? [];
    if (wants(`--${option}`) === null)
      return fits(Object.entries(options).map(([o, { say }]) => ({ word: `--${o}`, say })));
    return fits(
      valuesOf(option, { ...at, last: value }).map(({ word, say }) => ({
        word: `--${option}=${word}`,
        say,
      })),
    );
  }
  const { names, repeats } = placesOf(command.usage);
  const place = names[words.length] ?? (repeats ? names.at(-1) : undefined);
  return place === undefined ? [] : fits(WORDS_AT[place]?.(at) ?? []);
}

/** Any file, for where an output goes to. */
export function anyFile(last: string, commands: readonly Command[], world: World): Candidate[] {
  const at: At = { commands, name: '', words: [], last, world, job: null, said: {} };
  return pathsAt(at, /./).filter(({ word }) => word.startsWith(last));
}
