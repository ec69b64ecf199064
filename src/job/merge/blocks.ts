/**
 * A job file's text as blocks of keys, by its lines alone and so at little cost: in a file that reads, whatever
 * belongs to a key is deeper than it, so a line in the keys' column is a key, a comment or nothing.
 */
import { lineAt } from '../edit/lines.ts';

/** Keys in one column, each with what belongs to it, and what is left below the last. */
export interface Block {
  chunks: Map<string, Chunk>;
  rest: string;
  column: number;
}
export interface Chunk {
  key: string;
  /** Comments and blank lines above the key's line; for the first key of a file also what opens the document. */
  lead: string;
  /** The key's line alone. */
  head: string;
  /** All below that line that belongs to the key. */
  body: string;
}

export const EMPTY: Block = { chunks: new Map(), rest: '', column: 0 };

/** A key, quoted or not, and its colon; no dash of a list, no anchor, tag, flow or explicit key. */
const KEY =
  /^ *(?:"([^"\\]*)"|'([^']*)'|([^\s#&*!|>'"%@`{}[\],?:-][^:]*?(?::[^\s:][^:]*?)*)) *:(?=\s|$)/;
/** Nothing behind the key but a comment: what stands below may be a block. */
const OPENS = /:[ \t]*(?:#.*)?\n?$/;

/** The keys of a whole file, or what is below one of them. Null when the text is no block of keys, or one key stands there twice. */
export function blockOf(text: string, of: 'file' | 'key'): Block | null {
  const chunks = new Map<string, Chunk>();
  let column = -1;
  let last: Chunk | null = null;
  let lead = '';
  for (let at = 0; at < text.length; ) {
    const { next } = lineAt(text, at);
    const line = text.slice(at, next);
    at = next;
    const indent = line.search(/[^ ]/);
    if (line.trim() === '' || (line[indent] === '#' && (last === null || indent <= column))) {
      lead += line;
    } else if (last !== null && indent > column) {
      last.body += lead + line;
      lead = '';
    } else if (of === 'file' && last === null && /^(?:%|---\s)/.test(line)) {
      lead += line;
    } else {
      const found = KEY.exec(line);
      const key = found?.[1] ?? found?.[2] ?? found?.[3];
      if (key === undefined || chunks.has(key) || (column >= 0 && indent !== column)) return null;
      column = indent;
      last = { key, lead, head: line, body: '' };
      chunks.set(key, last);
      lead = '';
    }
  }
  return { chunks, rest: lead, column: Math.max(column, 0) };
}

/** The block below a key; null when something else stands there. */
export function below(chunk: Chunk): Block | null {
  return OPENS.test(chunk.head) && chunk.body.trim() !== '' ? blockOf(chunk.body, 'key') : null;
}
