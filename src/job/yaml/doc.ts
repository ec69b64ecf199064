/**
 * A job file's YAML as data with places. Every scalar is a text (failsafe schema): `1.10` and `007` stay what
 * they are. Whatever comes in, this answers: what cannot be read is a fault, never an exception.
 */
import { Composer, type Document, Lexer, Parser, type YAMLError, YAMLParseError } from 'yaml';
import { collector, type Found, type Report } from '../faults/faults.ts';
import { explain, placeOfError } from './errors.ts';
import type { Spot } from './spot.ts';
import { DEEPEST, walk } from './walk.ts';

/** So many are read as YAML: more would take its library gigabytes. A person's part is never as long. */
export const MOST_CHARACTERS = 4_000_000;
/** A file whose diary is as the program writes it, of which the library reads nothing: 100,000 lines are ten millions. */
export const MOST_WITH_DIARY = 20_000_000;

export interface YamlDoc {
  /** Null when the file is empty, or holds comments only. */
  root: Spot | null;
  found: Found[];
  /** The text is not YAML, or no text: what `root` holds then is a guess. */
  broken: boolean;
}

/** `odd`: where the diary begins not to be as the program writes it. */
export function openYaml(text: string, odd = 0): YamlDoc {
  const { found, report } = collector();
  if (text.length > MOST_CHARACTERS) {
    const most = { most: MOST_CHARACTERS, whole: MOST_WITH_DIARY };
    report('too-big', odd, { count: text.length, ...most });
    return { root: null, found, broken: true };
  }
  const nul = text.indexOf('\0');
  if (nul >= 0) {
    report('not-text', nul);
    return { root: null, found, broken: true };
  }
  lostCharacters(text, report);
  if (reportConflicts(text, report)) return { root: null, found, broken: true };
  return parse(text, found, report);
}

function parse(text: string, found: Found[], report: Report): YamlDoc {
  const doc = parseFirst(text);
  if (typeof doc === 'number') {
    report('too-deep', doc);
    return { root: null, found, broken: true };
  }
  const broken = reportErrors(doc.errors, text, report);
  return { root: walk(doc.contents, text, report), found, broken };
}

/**
 * Goes from text to document as the library does, and counts levels as the tokens come: the library itself would first
 * build a tree of millions of levels and then refuse it. Where there are too many, answers the offset of the first.
 */
function parseFirst(text: string): Document.Parsed | number {
  const parser = new Parser();
  const composer = new Composer({
    schema: 'failsafe',
    version: '1.2',
    merge: false,
    uniqueKeys: false,
    logLevel: 'error',
  });
  let deep = -1;
  function* tokens() {
    const depth = new Depth();
    for (const lexeme of new Lexer().lex(text)) {
      if (depth.isTooDeep(lexeme)) {
        deep = depth.at;
        return;
      }
      yield* parser.next(lexeme);
    }
    yield* parser.end();
  }
  let first: Document.Parsed | null = null;
  for (const doc of composer.compose(tokens(), true, text.length)) {
    if (first === null) first = doc;
    else {
      const at = doc.range[0];
      first.errors.push(new YAMLParseError([at, at + 1], 'MULTIPLE_DOCS', ''));
      break;
    }
  }
  return first === null || deep >= 0 ? Math.max(deep, 0) : first;
}

/** The lexer's own signs, which stand for no character of the text: a document, a scalar, a flow error. */
const SIGNS = new Set(['\x02', '\x18', '\x1f']);

/** Levels that stand in one line or in brackets; those by indentation cost as many characters as they are deep. */
class Depth {
  #brackets = 0;
  #inLine = 0;
  #next = 0;
  /** Where the lexeme starts. */
  at = 0;

  isTooDeep(lexeme: string): boolean {
    this.at = this.#next;
    if (!SIGNS.has(lexeme)) this.#next += lexeme.length;
    if (lexeme === '[' || lexeme === '{') this.#brackets += 1;
    else if (lexeme === ']' || lexeme === '}') this.#brackets -= 1;
    else if (lexeme === '\n' || lexeme === '\r\n') this.#inLine = 0;
    else if (this.#brackets <= 0 && BEGINS.includes(lexeme)) this.#inLine += 1;
    return this.#brackets > DEEPEST || this.#inLine > DEEPEST;
  }
}

function lostCharacters(text: string, report: Report): void {
  let line = -1;
  for (let at = text.indexOf('\uFFFD'); at >= 0; at = text.indexOf('\uFFFD', line)) {
    report('not-utf8', at);
    line = text.indexOf('\n', at);
    if (line < 0) return;
  }
}

const MARK = /^(?:<{7}|={7}|>{7})(?= |\r?$)/gm;
const SIDES = ['<<<<<<<', '=======', '>>>>>>>'];

/** What begins an item, a key or a value. */
const BEGINS = ['-', '?', ':'];

/** Git's marks of a merge that was not settled; true when there are any. */
function reportConflicts(text: string, report: Report): boolean {
  let any = false;
  let ours = -1;
  let theirs = -1;
  const marked = SIDES.some((side) => text.includes(side));
  for (const { 0: mark, index } of marked ? text.matchAll(MARK) : []) {
    if (mark.startsWith('<')) {
      ours = index;
      theirs = -1;
    } else if (mark.startsWith('=')) {
      if (ours >= 0 && theirs < 0) theirs = index;
    } else if (ours >= 0 && theirs >= 0) {
      report('conflict', ours, {}, { theirs, end: index });
      any = true;
      ours = -1;
    }
  }
  return any;
}

/** What the library says, once a line: the rest of a line follows from its first fault. */
function reportErrors(errors: readonly YAMLError[], text: string, report: Report): boolean {
  let broken = false;
  let lineEnd = -1;
  for (const error of [...errors].sort((a, b) => placeOfError(a, text) - placeOfError(b, text))) {
    const at = placeOfError(error, text);
    if (error.code !== 'MULTIPLE_DOCS') broken = true;
    if (at <= lineEnd) continue;
    lineEnd = text.indexOf('\n', at);
    if (lineEnd < 0) lineEnd = text.length;
    const { code, data } = explain(error, text);
    report(code, at, data);
  }
  return broken;
}
