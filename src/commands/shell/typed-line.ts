/** A command line as a shell has it, as far as it is typed: its words without their quotes. */
import type { Shell } from './shells.ts';

export interface TypedLine {
  /** All words behind the program's name, the last one as far as it is typed. */
  words: string[];
  /** What of the last word the shell leaves standing in front of what it puts in: bash parts words at : and = too. */
  kept: string;
  /** The last word is where an output goes to, or an input comes from. */
  redirected: boolean;
}

/** Where bash begins the word that it completes: COMP_WORDBREAKS as it is unless somebody set it. */
const BREAKS = /[:=@]/;

interface Word {
  text: string;
  kept: number;
  redirected: boolean;
}

export function readTypedLine(line: string, shell: Shell): TypedLine {
  const words: Word[] = [];
  let word: Word | null = null;
  let quote: string | null = null;
  let redirected = false;
  const begin = (): Word => {
    word ??= { text: '', kept: 0, redirected };
    redirected = false;
    return word;
  };
  const end = () => {
    if (word !== null) words.push(word);
    word = null;
  };
  for (let at = 0; at < line.length; at++) {
    const c = line[at] ?? '';
    if (quote !== null) {
      const at1 = line[at + 1];
      if (c === quote) {
        quote = null;
        begin().kept = begin().text.length;
      } else if (c === '\\' && at1 !== undefined && escapes(quote, shell).includes(at1)) {
        begin().text += at1;
        at++;
      } else begin().text += c;
    } else if (/\s/.test(c)) end();
    else if (c === '"' || c === "'") {
      quote = c;
      begin().kept = begin().text.length;
    } else if (c === '\\') {
      begin().text += line[at + 1] ?? '';
      at++;
    } else if (c === '>' || c === '<') {
      // A figure in front of it is the number of an output.
      if (word !== null && /^\d+$/.test((word as Word).text)) word = null;
      end();
      redirected = true;
    } else {
      begin().text += c;
      if (BREAKS.test(c)) begin().kept = begin().text.length;
    }
  }
  const { text, kept, redirected: last } = begin();
  const plain = words.filter((w) => !w.redirected).map((w) => w.text);
  return {
    words: [...plain.slice(1), text],
    kept: shell === 'bash' ? text.slice(0, kept) : '',
    redirected: last,
  };
}

/** What a backslash takes its meaning from, within quotes. */
function escapes(quote: string, shell: Shell): string {
  if (quote === '"') return '"\\$`';
  return shell === 'fish' ? "'\\" : '';
}
