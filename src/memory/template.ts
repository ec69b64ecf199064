/** What was learnt as the text of a job file to start from: to be read and edited, without a diary. */

import { withoutReading } from '../bolt/read/counter.ts';
import { checkJob } from '../job/check.ts';
import { pairLines } from '../job/edit/pairs.ts';
import { oneLine } from '../model/safe.ts';
import type { Said } from '../model/types.ts';
import {
  AS_IS,
  type AsIs,
  CHECK_PIECES,
  CHECK_SUSPECTS,
  type Own,
  SUSPECT_PIECE,
} from './carried.ts';
import type { Learnt, LearntKeys } from './learnt.ts';

export interface Template {
  text: string;
  /** What would have been a fault in the new file, and was left out: paths. */
  leftOut: string[];
}

export interface Wanted {
  job: string;
  machine: string | null;
  /** Only this piece, and what is for it. */
  piece?: string;
  /** Lines of remarks at its head. */
  head: readonly string[];
}

/** The file; what `check` would find wrong in it is left out and told. */
export function templateOf(learnt: Learnt, wanted: Wanted): Template {
  let now = wanted.piece === undefined ? learnt : onlyOf(learnt, wanted.piece);
  const leftOut: string[] = [];
  for (;;) {
    const lines = linesOf(now, wanted);
    const text = `${lines.map((l) => l.text).join('\n')}\n`;
    const faults = checkJob(text, 'new.yaml');
    const paths = faults.flatMap((f) => lines[f.line - 1]?.path ?? []);
    const [path] = paths;
    if (path === undefined) return { text, leftOut };
    leftOut.push(path);
    now = without(now, path.split('.'));
  }
}

/** `Hollin 400 Twin, 1998`, without what it has run. */
export function modelOf(machine: string | null): string | null {
  if (machine === null) return null;
  const parts = withoutReading(machine).split(',');
  return (
    parts
      .map((p) => p.trim())
      .filter((p) => p !== '')
      .join(', ') || machine
  );
}

function mapAt(said: Said | undefined): LearntKeys {
  return typeof said === 'object' && !Array.isArray(said) ? said : {};
}

const texts = (said: Said | undefined): string[] =>
  typeof said === 'string' ? [said] : Array.isArray(said) ? said.flatMap(texts) : [];

/** One piece with its kinds, and the tasks and things to buy that are for no other. */
function onlyOf(learnt: Learnt, piece: string): Learnt {
  const keys = { ...learnt.pieces[piece] };
  for (const key of ['under', 'along', 'bridges']) delete keys[key];
  const letters = new Set(JSON.stringify(keys.bolts ?? '').match(/[A-Za-z][A-Za-z0-9]*/g));
  const others = Object.keys({ ...learnt.pieces, ...learnt.tasks }).filter((k) => k !== piece);
  const about = (said: Said, keys: readonly string[]) => {
    const steps = keys.flatMap((key) => texts(mapAt(said)[key])).map((s) => s.split(' ')[0] ?? '');
    return steps.includes(piece) && !steps.some((s) => others.includes(s));
  };
  const some = (all: LearntKeys, keep: (key: string, said: Said) => boolean): LearntKeys =>
    Object.fromEntries(Object.entries(all).filter(([key, said]) => keep(key, said)));
  return {
    ...learnt,
    pieces: { [piece]: keys },
    kinds: some(learnt.kinds, (key) => letters.has(key)),
    tasks: some(learnt.tasks, (_, said) => about(said, ['before', 'after', 'while'])),
    buys: some(learnt.buys, (_, said) => about(said, ['for'])),
    more: tracedAt(learnt, piece),
  };
}

/** What may be wrong with the piece, and the looks that need no other piece off, with all that these could show. */
function tracedAt({ more }: Learnt, piece: string): Record<AsIs, LearntKeys> {
  const named = (said: Said) => CHECK_SUSPECTS.flatMap((key) => texts(mapAt(said)[key]));
  const own = Object.entries(more.suspects).flatMap(([key, said]) =>
    texts(mapAt(said)[SUSPECT_PIECE]).includes(piece) ? [key] : [],
  );
  const isHere = (said: Said) => {
    const under = texts(mapAt(said)[CHECK_PIECES]);
    const shows = named(said);
    return under.length > 0
      ? under.every((key) => key === piece)
      : shows.length > 0 && shows.every((key) => own.includes(key));
  };
  const checks = Object.entries(more.checks).filter(([, said]) => isHere(said));
  const all = new Set([...own, ...checks.flatMap(([, said]) => named(said))]);
  const suspects = Object.entries(more.suspects).filter(([key]) => all.has(key));
  return { suspects: Object.fromEntries(suspects), checks: Object.fromEntries(checks) };
}

interface Lined {
  text: string;
  /** What the line is of: `pieces.cover.torque`. */
  path?: string;
}

function linesOf(learnt: Learnt, { job, machine, head }: Wanted): Lined[] {
  const lines: Lined[] = [
    ...head.map((line) => ({ text: `# ${oneLine(line)}` })),
    { text: '' },
    { text: 'putback: 1' },
    ...pairLines('job', job, 2).map((text) => ({ text })),
    ...(machine === null ? [] : pairLines('machine', machine, 2).map((text) => ({ text }))),
  ];
  const section = (name: string, all: LearntKeys) => {
    // A kind of bolt is one line whatever is known of it.
    const deep = name !== 'bolts';
    if (Object.keys(all).length === 0) return;
    lines.push({ text: '' }, { text: `${name}:` });
    for (const [key, said] of Object.entries(all)) {
      const path = `${name}.${key}`;
      const inner = Object.entries(mapAt(said));
      if (!deep || inner.length === 0) {
        lines.push(...remark(learnt, path, 2));
        // A piece of which nothing is known is its name alone.
        const own = deep ? [`${key}:`] : pairLines(key, said, 2);
        lines.push(...own.map((text) => ({ text: `  ${text}`, path })));
        continue;
      }
      lines.push({ text: `  ${key}:`, path });
      for (const [sub, value] of inner) {
        const at = `${path}.${sub}`;
        lines.push(...remark(learnt, at, 4));
        lines.push(...pairLines(sub, value, 2).map((text) => ({ text: `    ${text}`, path: at })));
      }
    }
  };
  for (const [name, at] of Object.entries(SECTIONS)) section(name, learnt[at]);
  for (const name of AS_IS) section(name, learnt.more[name]);
  return [...lines, { text: '' }, { text: 'diary:' }];
}

/** What is printed beside what is true, of the key and of what is in it. */
function remark({ printed }: Learnt, path: string, indent: number): Lined[] {
  return Object.entries(printed).flatMap(([at, text]) => {
    if (at !== path && !at.startsWith(`${path}.`)) return [];
    const inner = at.slice(path.length + 1).replaceAll('.', ' ');
    return [
      { text: `${' '.repeat(indent)}# printed${inner ? `, ${inner}` : ''}: ${oneLine(text)}` },
    ];
  });
}

const SECTIONS = {
  bolts: 'kinds',
  pieces: 'pieces',
  tasks: 'tasks',
  buy: 'buys',
} as const satisfies Record<Own, keyof Learnt>;

const isOwn = (section: string): section is Own => section in SECTIONS;
const isAsIs = (section: string): section is AsIs => AS_IS.some((name) => name === section);

function without(learnt: Learnt, [section = '', key = '', sub]: readonly string[]): Learnt {
  const less = (from: LearntKeys): LearntKeys => {
    const all = { ...from };
    if (sub === undefined) delete all[key];
    else {
      const inner = { ...mapAt(all[key]) };
      delete inner[sub];
      all[key] = inner;
    }
    return all;
  };
  if (isOwn(section)) return { ...learnt, [SECTIONS[section]]: less(learnt[SECTIONS[section]]) };
  if (!isAsIs(section)) return learnt;
  return { ...learnt, more: { ...learnt.more, [section]: less(learnt.more[section]) } };
}
