/** Lines of spans as texts with colour, or without, or in 7-bit characters. */
import { codeOf, type Palette } from './palettes.ts';
import type { Line, Span } from './text.ts';

const ESC = '\x1b[';
/** SGR numbers of ECMA-48. */
const BOLD = 1;
const INVERSE = 7;
const STRUCK = 9;

/** The line as a terminal takes it. Without colour there is no escape sequence at all. */
export function paint(
  line: Line,
  look: { colour: boolean; ascii: boolean; palette?: Palette },
): string {
  return line
    .map((s) => {
      const text = look.ascii ? plain(s.text) : s.text;
      return look.colour ? styled(text, s, look.palette ?? 'usual') : text;
    })
    .join('');
}

function styled(text: string, s: Span, palette: Palette): string {
  const colour = s.colour ? codeOf(s.colour, palette) : null;
  const codes = [
    ...(s.bold ? [BOLD] : []),
    ...(s.inverse ? [INVERSE] : []),
    ...(s.struck ? [STRUCK] : []),
    ...(colour === null ? [] : [colour]),
  ];
  // Blanks look the same in bold and in colour: nothing to send.
  const empty = !s.inverse && text.trim() === '';
  return codes.length === 0 || empty ? text : `${ESC}${codes.join(';')}m${text}${ESC}0m`;
}

/** What stands in for signs that are common on a bench; each as wide as the sign. */
const SIGNS: Readonly<Record<string, string>> = {
  '·': '.',
  '⋅': '.',
  '×': 'x',
  '–': '-',
  '—': '-',
  '‘': "'",
  '’': "'",
  '“': '"',
  '”': '"',
  '…': '.',
  '→': '>',
  '°': 'd',
  µ: 'u',
  μ: 'u',
  Ø: 'O',
  ø: 'o',
  ß: 's',
};

/** In 7-bit characters: accents go, known signs become their nearest, the rest a question mark a column. */
function plain(text: string): string {
  if (/^[\x20-\x7e]*$/.test(text)) return text;
  return [...text.normalize('NFC')]
    .map((c) => SIGNS[c] ?? c.normalize('NFD').replace(/\p{M}/gu, ''))
    .join('')
    .replace(/[^\x20-\x7e]/gu, '?');
}
