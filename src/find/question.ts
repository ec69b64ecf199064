/** What is asked for, held against lines: which answer it, and which of them best. */
import type { FindFile, FindLine } from './lines.ts';
import { LINE_KINDS } from './lines.ts';
import { type Asked, askedOf, heldBy, tokensOf } from './words.ts';

/** A line that answers. */
interface Found {
  /** As the question's folder names it. */
  file: string;
  /** From 1. */
  line: number;
  job: string;
  machine: string | null;
  piece: string | null;
  day: string | null;
  text: string;
}

/** With what it is sorted by. */
export interface Held extends Found {
  score: number;
  /** Day of the line, or else the last day of its file. */
  when: string;
  undone: boolean;
  /** An entry of a diary as one says it; left out where nobody asked for it, or could say it. */
  said?: string;
}

/** What stands in an entry for the program alone: its time and ids. */
const OURS = /\b(?:at: "?\d{4}-\d\d-\d\dT[^\s,}"]+|(?:id|undo): "?[\w-]{8}(?![\w-]))"?,? ?/g;

/** What of a line is searched. */
export function searched({ text, day }: Pick<FindLine, 'text' | 'day'>): string[] {
  return tokensOf(day === null ? text : text.replace(OURS, ''));
}

/** A line as it is shown: an entry of the diary without its brackets, time and id. */
export function saidOf({ text, day }: Pick<FindLine, 'text' | 'day'>): string {
  if (day === null) return text;
  return text
    .replace(OURS, '')
    .replace(/^- /, '')
    .replace(/^\{(.*)\}$/, '$1');
}

/** What a line stands under: its words help to find it beside others of its own. */
function around({ job, machine, names }: Titles, piece: string | null) {
  const name = piece === null ? null : (names[piece] ?? null);
  return [job, machine, piece, name].filter((t) => t !== null).flatMap(tokensOf);
}

const WORTH: Record<FindLine['kind'], number> = {
  title: 5,
  piece: 3,
  told: 3,
  other: 2,
  remark: 1,
  undone: -20,
};

export interface Question {
  asked: readonly Asked[];
  /** How well a line answers, null: not. Each word is in it or in what it stands under; one at least is in it. */
  scoreOf(line: Omit<FindLine, 'line' | 'piece'>, under: () => readonly string[]): number | null;
}

/** Null where there is no word that can be searched (`notAsked`). */
export function question(words: readonly string[]): Question | null {
  const asked = askedOf(words);
  if (asked.length === 0) return null;
  return {
    asked,
    scoreOf(line, under) {
      const own = searched(line);
      let score = WORTH[line.kind];
      let any = false;
      for (const word of asked) {
        const how = heldBy(word, own);
        const dated = word.day !== null && line.day?.startsWith(word.day) === true;
        if (how > 0 || dated) {
          any = true;
          score += 4 + how;
        } else if (heldBy(word, under()) === 0) return null;
      }
      return any ? score : null;
    },
  };
}

/** Titles of a file, and its last day. */
export type Titles = Omit<FindFile, 'lines'> & { last: string };

export function titlesOf({ lines, ...titles }: FindFile): Titles {
  return { ...titles, last: lastDay(lines) };
}

/** The line, if it answers. */
export function heldOf(file: string, titles: Titles, found: FindLine, ask: Question): Held | null {
  const { line, piece, day, kind, text } = found;
  const score = ask.scoreOf(found, () => around(titles, piece));
  if (score === null) return null;
  const { job, machine, last } = titles;
  const undone = kind === 'undone';
  return { file, line, job, machine, piece, day, text, score, when: day ?? last, undone };
}

function lastDay(lines: readonly FindLine[]): string {
  return lines.reduce((day, l) => (l.day !== null && l.day > day ? l.day : day), '');
}

/** All lines of a file that answer. */
export function answersIn(file: string, read: FindFile, ask: Question): Held[] {
  const titles = titlesOf(read);
  return read.lines.flatMap((line) => heldOf(file, titles, line, ask) ?? []);
}

/** Best first; of equals what is newest, then by file and line. */
export function bestFirst(a: Held, b: Held): number {
  return (
    b.score - a.score ||
    compare(b.when, a.when) ||
    compare(a.file, b.file) ||
    a.line - b.line ||
    compare(a.piece ?? '', b.piece ?? '')
  );
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

export const kindNumber = (kind: FindLine['kind']): number => LINE_KINDS.indexOf(kind);
