/** What the YAML library finds wrong, in the words of somebody who writes YAML by hand. */
import type { YAMLError } from 'yaml';
import type { Code, Data } from '../faults/faults.ts';

export interface Explained {
  code: Code;
  data: Data;
}

/** Message of the library, what it means, and the way out. The first that fits counts. */
const WORDS: readonly [RegExp, string, string][] = [
  [/^Flow (map|seq)/, 'a bracket { or [ is still open here', 'Close it with } or ] where it ends.'],
  [
    /^All \w+ items must start|indented more|not properly indented/,
    'this line stands too far left or right',
    'Keys that belong together start in the same column, with blanks before them.',
  ],
  [
    /^Missing closing/,
    'a quote is still open here',
    'Close the text with the quote it starts with; in single quotes an apostrophe is written twice.',
  ],
  [
    /^Implicit (map )?keys/,
    'here is a text where a key and its colon belong',
    'Write KEY: TEXT. A text that goes on below its key stands further in, or in quotes.',
  ],
  [
    /^Missing , |^Missing space after :/,
    'a comma, or a blank behind a colon, is missing in these brackets',
    'Write {key: text, key: text}. If it is one text, put it in quotes.',
  ],
  [
    /^Unexpected (,|empty item)/,
    'a comma stands here with nothing before it',
    'Take one comma out, or put the text in quotes.',
  ],
  [/^Plain value cannot start/, 'a text cannot start with this sign', 'Put the text in quotes.'],
  [
    /^Invalid escape/,
    'a backslash in double quotes starts an escape, and this is none',
    'Write two backslashes, or use single quotes.',
  ],
  [
    /directive/i,
    'a line that starts with % or --- speaks to the YAML reader',
    'Put the text in quotes, or take the line out.',
  ],
  [
    /at node end|^Unexpected scalar|same line with key/,
    'more stands here than one value',
    'If it is one text, put all of it in quotes; a list starts on the line below its key.',
  ],
  [
    /^Comments must/,
    'a # needs a blank before it',
    'Put a blank before it, or the text in quotes.',
  ],
  [
    /alias|anchor|tag/i,
    '& and * and ! have a meaning of their own at the start of a text',
    'Put the text in quotes.',
  ],
];

export function explain(error: YAMLError, text: string): Explained {
  switch (error.code) {
    case 'MULTIPLE_DOCS':
      return { code: 'two-files', data: {} };
    case 'RESOURCE_EXHAUSTION':
      return { code: 'too-deep', data: {} };
    case 'TAB_AS_INDENT':
      return { code: 'tab', data: {} };
    case 'BLOCK_AS_IMPLICIT_KEY':
      return { code: 'colon', data: { like: quotedLine(text, error.pos[0]) } };
    default:
      return { code: 'not-yaml', data: inWords(error.message) };
  }
}

/** Where a person would look: the quote that was left open, the word and not the blank before it. */
export function placeOfError({ code, message, pos: [at] }: YAMLError, text: string): number {
  if (code === 'TAB_AS_INDENT') return at;
  const quote = /^Missing closing (["'])/.exec(message)?.[1];
  if (quote !== undefined) return openQuote(text, at, quote);
  const blank = /\s*/y;
  blank.lastIndex = at;
  blank.test(text);
  return blank.lastIndex < text.length ? blank.lastIndex : at;
}

/** The last quote before the end that is no escape: any other behind it would have closed the text. */
function openQuote(text: string, end: number, quote: string): number {
  for (let at = text.lastIndexOf(quote, end - 1); at >= 0; at = text.lastIndexOf(quote, at - 1)) {
    if (quote === "'" && text[at - 1] === "'") at -= 1;
    else if (quote === "'" || !isEscaped(text, at)) return at;
    if (at === 0) break;
  }
  return end;
}

/** An odd number of backslashes stands before it. */
function isEscaped(text: string, at: number): boolean {
  let start = at;
  while (text[start - 1] === '\\') start -= 1;
  return (at - start) % 2 === 1;
}

function inWords(message: string): { what: string; way: string } {
  const [, what, way] = WORDS.find(([pattern]) => pattern.test(message)) ?? [];
  return {
    what: what ?? (message.charAt(0).toLowerCase() + message.slice(1)).replace(/\.+$/, ''),
    way: way ?? 'Look at quotes, brackets and indentation here and in the line above.',
  };
}

/** The rest of the line with its text in quotes, as an example that fits. */
function quotedLine(text: string, at: number): string {
  const end = text.indexOf('\n', at);
  const rest = text.slice(at, Math.min(end < 0 ? text.length : end, at + 200)).trim();
  return `"${rest.replace(/\s#.*$/, '').replace(/["\\]/g, '\\$&')}"`;
}
