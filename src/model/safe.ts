/**
 * The one place where text from files, git or file names is made harmless before anybody sees it.
 *
 * A terminal obeys control characters; bidirectional marks make a line read otherwise than it is; characters
 * without width hide. All of these are shown as what they are, in ASCII: `\x1b`, `\u202e`. Everything that
 * has a shape of its own stays.
 */
import { pattern } from './pattern.ts';
import { remembering } from './remembering.ts';

/** Controls, format characters, separators of lines, halves of surrogates, fillers and selectors without a shape. */
const HIDDEN = pattern(
  () =>
    /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}\u115f\u1160\u3164\uffa0]|\u034f|\u17b4|\u17b5|[\u{e0100}-\u{e01ef}]/gu,
);

/** Letters, figures, signs and arrows of which none is hidden: most texts are no more, and need no table of all letters. */
export const SHOWN =
  /^[\n -~\xa1-\xac\xae-\u024f\u2010-\u2027\u2030-\u205e\u2190-\u23ff\u2500-\u27bf]*$/;

/** More marks on one letter than any language writes (UAX #15, stream-safe text): they would cover the lines around it. */
const PILED = pattern(() => /(\p{M}{30})(\p{M}+)/gu);

/** The text with everything that does not show itself as a token; line breaks stay, a tab becomes a space. */
export function safe(text: string): string {
  if (SHOWN.test(text)) return text;
  return text
    .replace(PILED.made, (_, some: string, more: string) => `${some}(+${countOf(more)} marks)`)
    .replace(/\r\n/g, '\n')
    .replace(HIDDEN.made, (c) => (c === '\n' ? c : c === '\t' ? ' ' : token(c)));
}

/** In characters, halves of one counted once. */
const countOf = (text: string): number => text.replace(/[\udc00-\udfff]/g, '').length;

/** The same on one line: a run of line breaks and tabs becomes one space. */
export function safeLine(text: string): string {
  return safe(text.replace(/[\r\n\t]+/g, (run) => (/[\n\t]/.test(run) ? ' ' : run)));
}

/** As one would type it in a shell; whatever a shell or a terminal might obey is quoted or shown. */
export function quoted(path: string): string {
  return /^[\w@%+=:,./-]+$/.test(path) ? path : `'${safeLine(path).replaceAll("'", "'\\''")}'`;
}

/** A sentence with its end, so that another may follow. */
export function ended(sentence: string): string {
  return /[.!?:]$/.test(sentence) ? sentence : `${sentence}.`;
}

/** A text as it is said: on one line, so that no part of it looks like another line of what is shown. */
export function oneLine(text: string): string {
  if (!text.includes('\n')) return text.trimEnd();
  const [first = '', ...rest] = text.split('\n');
  const said = rest.map((line) => line.trim()).filter((line) => line !== '');
  return [first.trimEnd(), ...said].join(' ').trimEnd();
}

const token = remembering((c) => {
  const code = c.codePointAt(0) ?? 0;
  const hex = code.toString(16);
  if (code <= 0xff) return `\\x${hex.padStart(2, '0')}`;
  return code <= 0xffff ? `\\u${hex.padStart(4, '0')}` : `\\u{${hex}}`;
});

/** A value as JSON on one line: the same value, with what does not show itself as escapes. */
export function harmlessJson(value: unknown): string {
  const said = JSON.stringify(value);
  if (SHOWN.test(said)) return said;
  return said.replace(HIDDEN.made, (c) =>
    Array.from(
      { length: c.length },
      (_, i) => `\\u${c.charCodeAt(i).toString(16).padStart(4, '0')}`,
    ).join(''),
  );
}
