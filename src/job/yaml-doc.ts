/**
 * A job file's YAML as data with places. Every scalar is a text (failsafe schema): `1.10` and `007` stay what
 * they are. Whatever comes in, this answers: what cannot be read is a fault, never an exception.
 */
import { parseDocument, type YAMLError } from 'yaml';
import { type Code, collector, type Found, type Report } from './faults.ts';
import type { Spot } from './yaml-spot.ts';
import { walk } from './yaml-walk.ts';

/** A job file of 20,000 diary lines has two million characters; beyond twice that it is something else. */
export const MOST_CHARACTERS = 4_000_000;

export interface YamlDoc {
  /** Null when the file is empty, or holds comments only. */
  root: Spot | null;
  found: Found[];
  /** The text is not YAML, or no text: what `root` holds then is a guess. */
  broken: boolean;
}

export function openYaml(text: string): YamlDoc {
  const { found, report } = collector();
  if (text.length > MOST_CHARACTERS) {
    report('too-big', 0, { count: text.length, most: MOST_CHARACTERS });
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
  let errors: YAMLError[];
  let contents: unknown;
  try {
    const doc = parseDocument(text, {
      schema: 'failsafe',
      version: '1.2',
      merge: false,
      uniqueKeys: false,
      prettyErrors: false,
      logLevel: 'error',
    });
    errors = doc.errors;
    contents = doc.contents;
  } catch (thrown) {
    // The library's own recursion; nothing else of a text makes it throw.
    if (!(thrown instanceof RangeError)) throw thrown;
    report('too-deep', 0);
    return { root: null, found, broken: true };
  }
  const broken = reportErrors(errors, text, report);
  return { root: walk(contents, text, report), found, broken };
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

/** Git's marks of a merge that was not settled; true when there are any. */
function reportConflicts(text: string, report: Report): boolean {
  let any = false;
  let ours = -1;
  let theirs = -1;
  for (const { 0: mark, index } of text.matchAll(MARK)) {
    if (mark.startsWith('<')) {
      ours = index;
      theirs = -1;
    } else if (mark.startsWith('=')) {
      if (ours >= 0 && theirs < 0) theirs = index;
    } else if (ours >= 0 && theirs >= 0) {
      const below = (at: number) => text.indexOf('\n', at) + 1;
      report('conflict', ours, {}, { ours: below(ours), theirs: below(theirs), end: index - 1 });
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
  for (const error of [...errors].sort((a, b) => a.pos[0] - b.pos[0])) {
    const at = error.pos[0];
    if (error.code !== 'MULTIPLE_DOCS') broken = true;
    if (at <= lineEnd) continue;
    lineEnd = text.indexOf('\n', at);
    if (lineEnd < 0) lineEnd = text.length;
    const { code, data } = explain(error, text);
    report(code, at, data);
  }
  return broken;
}

interface Explained {
  code: Code;
  data: Found['data'];
}

/** The library's codes in the words of somebody who writes YAML by hand. */
function explain(error: YAMLError, text: string): Explained {
  const not = (what: string, way: string): Explained => ({ code: 'not-yaml', data: { what, way } });
  switch (error.code) {
    case 'MULTIPLE_DOCS':
      return { code: 'two-files', data: {} };
    case 'RESOURCE_EXHAUSTION':
      return { code: 'too-deep', data: {} };
    case 'TAB_AS_INDENT':
      return { code: 'tab', data: {} };
    case 'BLOCK_AS_IMPLICIT_KEY':
      return { code: 'colon', data: { like: quotedLine(text, error.pos[0]) } };
    case 'BAD_INDENT':
      return not(
        'this line stands too far left or right',
        'Keys that belong together start in the same column, with blanks before them.',
      );
    case 'MULTILINE_IMPLICIT_KEY':
    case 'MISSING_CHAR':
      return not(
        sentence(error.message),
        'Look for a missing colon, comma, quote or bracket in this line or the one above.',
      );
    case 'BAD_SCALAR_START':
      return not('a text cannot start with this sign', 'Put the text in quotes.');
    case 'BAD_DQ_ESCAPE':
      return not(
        'a backslash in double quotes starts an escape, and this is none',
        'Write two backslashes, or use single quotes.',
      );
    case 'BAD_DIRECTIVE':
      return not(
        'a line that starts with % is a directive',
        'Put the text in quotes, or take the line out.',
      );
    default:
      return not(
        sentence(error.message),
        'Look at quotes, brackets and indentation here and in the line above.',
      );
  }
}

function sentence(message: string): string {
  return message.charAt(0).toLowerCase() + message.slice(1);
}

/** The rest of the line with its text in quotes, as an example that fits. */
function quotedLine(text: string, at: number): string {
  const end = text.indexOf('\n', at);
  const rest = text.slice(at, end < 0 ? text.length : end).trim();
  return `"${rest.replace(/(\s#.*)$/, '').replace(/["\\]/g, '\\$&')}"`;
}
