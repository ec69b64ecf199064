/**
 * The lines of a job file as they are found: each with its piece and its day. A broken file has lines too, so
 * they are taken as they stand; YAML is only asked where a section is written in one line.
 */
import { parseEntryLine } from '../job/diary/entry.ts';
import { type Counted, undoneOf } from '../job/diary/living.ts';
import { openYaml } from '../job/yaml/doc.ts';
import { type Spot, valueAt } from '../job/yaml/spot.ts';
import { VERBS, verbRow } from '../model/verbs/verbs.ts';

/** A line of a file, or the part of it that is about one piece. */
export interface FindLine {
  /** From 1. */
  line: number;
  /** Key of the piece that it is about. */
  piece: string | null;
  /** Of an entry of the diary: `2026-05-02`. */
  day: string | null;
  kind: LineKind;
  /** As it stands in the file, without what is around it. */
  text: string;
}

/** What a line is, best first: titles, pieces, what was noted or is to be had, everything else; remarks; taken back. */
export const LINE_KINDS = ['title', 'piece', 'told', 'other', 'remark', 'undone'] as const;
export type LineKind = (typeof LINE_KINDS)[number];

export interface FindFile {
  job: string;
  machine: string | null;
  machineId: string | null;
  like: string[];
  /** Shown names of pieces by their keys, where the file has one. */
  names: Record<string, string>;
  lines: FindLine[];
}

const TOP = /^["']?([a-z]+(?:-[a-z]+)*)["']?[ \t]*:[ \t]*(.*)$/;
const TITLES = ['job', 'machine', 'machine-id', 'like', 'complaint', 'found', 'done'];
const EDITOR = /^#\s*yaml-language-server:/;
/** Rows of a picture: numbers of holes and dots. */
const PICTURE = /^[\d\s.]*$/;
const CHILD = /^( +)["']?([a-z0-9][a-z0-9-]*)["']?[ \t]*:/;
const NAMED = /\bname:[ \t]*("(?:[^"\\]|\\.)*"|'(?:[^']|'')*'|[^,}#\n]+)/;

/** Never throws, whatever the text is. */
export function linesOf(text: string): FindFile {
  const raw = text.replace(/^\uFEFF/, '').split(/\r?\n/);
  const file: FindFile = {
    job: '',
    machine: null,
    machineId: null,
    like: [],
    names: {},
    lines: [],
  };
  const diaryAt = raw.findLastIndex((l) => TOP.exec(l)?.[1] === 'diary');
  const end = diaryAt < 0 ? raw.length : diaryAt;
  const upper = readSections(raw.slice(0, end), file);
  if (upper.odd) byYaml(text.replace(/^\uFEFF/, ''), end, file);
  if (diaryAt >= 0) diaryLines(raw, diaryAt, file);
  return file;
}

function readSections(raw: readonly string[], file: FindFile): { odd: boolean } {
  let section = '';
  let indent = -1;
  let piece: string | null = null;
  let odd = false;
  raw.forEach((whole, i) => {
    const top = TOP.exec(whole);
    if (top) {
      section = top[1] ?? '';
      indent = -1;
      piece = null;
      const value = (top[2] ?? '').replace(/(?:^|\s)#.*$/, '').trim();
      if (section === 'pieces' && value !== '') odd = true;
      if (SAID.includes(section)) {
        if (value === '' || /^[|>&*!{[]/.test(value)) odd = true;
        else say(file, section, unquoted(value));
      }
    } else if (section === 'pieces') {
      const child = CHILD.exec(whole);
      const depth = child?.[1]?.length ?? -1;
      if (child && (indent < 0 || depth <= indent)) {
        indent = depth;
        piece = child[2] ?? null;
      }
      const name = NAMED.exec(whole)?.[1];
      if (piece !== null && name !== undefined && !(piece in file.names))
        file.names[piece] = unquoted(name.trim());
    }
    const key = section === 'pieces' && CHILD.exec(whole)?.[1]?.length === indent;
    const kind = TITLES.includes(top?.[1] ?? '') ? 'title' : key ? 'piece' : kindIn(section);
    put(file, { line: i + 1, piece, day: null, kind, text: whole });
  });
  return { odd };
}

/** Titles that are read; `found` and the like are only lines. */
const SAID = ['job', 'machine', 'machine-id', 'like'];

function say(file: FindFile, key: string, text: string): void {
  if (key === 'job') file.job = text;
  else if (key === 'machine') file.machine = text;
  else if (key === 'machine-id') file.machineId = text;
  else file.like = [text];
}

function kindIn(section: string): LineKind {
  return section === 'buy' || section === 'tasks' ? 'told' : 'other';
}

function put(file: FindFile, line: FindLine): void {
  const text = line.text.trim();
  if (text === '' || EDITOR.test(text) || PICTURE.test(text)) return;
  file.lines.push({ ...line, kind: text.startsWith('#') ? 'remark' : line.kind, text });
}

/** A YAML scalar on one line. */
function unquoted(value: string): string {
  if (/^".*"$/.test(value)) {
    try {
      return JSON.parse(value) as string;
    } catch {
      return value.slice(1, -1);
    }
  }
  return /^'.*'$/.test(value) ? value.slice(1, -1).replaceAll("''", "'") : value;
}

// ---------------------------------------------------------------- sections in one line

/** Titles of several lines, and pieces in braces. */
function byYaml(text: string, end: number, file: FindFile): void {
  const { root } = openYaml(text);
  const said = (key: string) => {
    const spot = valueAt(root, key);
    return spot?.is === 'text' ? spot.text.trim() : null;
  };
  for (const key of SAID) {
    const text = said(key);
    if (text !== null) say(file, key, text);
  }
  const like = valueAt(root, 'like');
  if (like?.is === 'list')
    file.like = like.items.flatMap((item) => (item.is === 'text' ? [item.text.trim()] : []));
  const pieces = valueAt(root, 'pieces');
  if (pieces?.is !== 'map' || !pieces.flow) return;
  const starts = lineStarts(text);
  const from = lineAt(starts, pieces.at);
  const to = Math.min(lineAt(starts, endOf(root, pieces.at, text)), end + 1);
  file.lines = file.lines.filter(({ line }) => line < from || line >= to);
  const pairs = [...pieces.pairs.values()];
  for (const { key, value } of pairs) {
    const name = valueAt(value, 'name');
    if (name?.is === 'text') file.names[key] = name.text;
  }
  for (let line = from; line < to; line++) {
    const start = starts[line - 1] ?? 0;
    const stop = starts[line] ?? text.length;
    const here = pairs.filter((p) => p.at >= start && p.at < stop);
    const before = pairs.findLast((p) => p.at < start)?.key ?? null;
    const cuts = [{ key: before, at: start }, ...here];
    cuts.forEach(({ key, at }, i) => {
      const part = text.slice(at, cuts[i + 1]?.at ?? stop);
      put(file, { line, piece: key, day: null, kind: i > 0 ? 'piece' : 'other', text: part });
    });
  }
  file.lines.sort((a, b) => a.line - b.line);
}

/** Where the key behind the section begins. */
function endOf(root: Spot | null, at: number, text: string): number {
  const pairs = root?.is === 'map' ? [...root.pairs.values()] : [];
  return pairs.find((p) => p.at > at)?.at ?? text.length;
}

function lineStarts(text: string): number[] {
  const starts = [0];
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) starts.push(at + 1);
  return starts;
}

/** From 1. */
function lineAt(starts: readonly number[], at: number): number {
  let line = starts.findLastIndex((start) => start <= at) + 1;
  if (line < 1) line = 1;
  return line;
}

// ---------------------------------------------------------------- the diary

/** Verbs of what one looks for. */
const SOUGHT = VERBS.filter((verb) => verbRow(verb).sought);

/** Every line of an entry has its piece and its day; one that was taken back stays readable. */
function diaryLines(raw: readonly string[], from: number, file: FindFile): void {
  const entries: (Counted & { from: number; count: number })[] = [];
  for (let i = from; i < raw.length; ) {
    let next = i + 1;
    if (/^\s*-/.test(raw[i] ?? '')) {
      while (next < raw.length && !/^\s*(?:-|#|$)/.test(raw[next] ?? '')) next++;
    }
    const whole = raw.slice(i, next);
    const about = entryAbout(whole);
    const at = file.lines.length;
    whole.forEach((text, n) => {
      const { piece, day, told } = about;
      put(file, { line: i + n + 1, piece, day, kind: told ? 'told' : 'other', text });
    });
    const { id, undo, came } = about;
    if (id !== null) entries.push({ id, undo, came, from: at, count: file.lines.length - at });
    i = next;
  }
  const undone = undoneOf(entries);
  for (const { id, from: at, count } of entries) {
    if (undone.has(id)) for (const l of file.lines.slice(at, at + count)) l.kind = 'undone';
  }
}

interface About {
  piece: string | null;
  day: string | null;
  id: string | null;
  undo: string | null;
  came: string | null;
  told: boolean;
}

function entryAbout(lines: readonly string[]): About {
  const entry = lines.length === 1 ? parseEntryLine(lines[0] ?? '') : null;
  if (entry) {
    const { piece = null, at, id, verb, value, came = null } = entry;
    const undo = verb === 'undo' ? value : null;
    return { piece, day: at.slice(0, 10), id, undo, came, told: verbRow(verb).sought };
  }
  // Written by hand: what its keys say, as far as they can be told from its texts.
  const text = lines.join('\n').replace(/"(?:[^"\\]|\\.)*"/g, (t) => (/\s/.test(t) ? '""' : t));
  const key = (name: string, value: string) =>
    new RegExp(`(?:^|[\\s{,-])["']?${name}["']?:\\s*["']?(${value})(?=["'\\s,}T]|$)`).exec(
      text,
    )?.[1] ?? null;
  return {
    piece: key('piece', '[a-z0-9][a-z0-9-]*'),
    day: key('at', '\\d{4}-\\d\\d-\\d\\d'),
    id: key('id', '[A-Za-z0-9_-]{8}'),
    undo: key('undo', '[A-Za-z0-9_-]{8}'),
    came: key('came', '[A-Za-z0-9_-]{8}'),
    told: SOUGHT.some((verb) => key(verb, '\\S') !== null),
  };
}
