/** Letters and figures of five rows, to be read from two metres: each pixel two columns wide where there is room. */
import { bold, type Line, line, type Span, width } from './text.ts';

const HEIGHT = 5;

/** Rows of each sign, parted by /. */
const SIGNS: Readonly<Record<string, string>> = {
  '0': '####/#  #/#  #/#  #/####',
  '1': ' # /## / # / # /###',
  '2': '####/   #/####/#   /####',
  '3': '####/   #/ ###/   #/####',
  '4': '#  #/#  #/####/   #/   #',
  '5': '####/#   /####/   #/####',
  '6': '####/#   /####/#  #/####',
  '7': '####/   #/  # / #  / #  ',
  '8': '####/#  #/####/#  #/####',
  '9': '####/#  #/####/   #/####',
  A: ' ## /#  #/####/#  #/#  #',
  B: '### /#  #/### /#  #/### ',
  C: ' ###/#   /#   /#   / ###',
  D: '### /#  #/#  #/#  #/### ',
  E: '####/#   /### /#   /####',
  F: '####/#   /### /#   /#   ',
  G: ' ###/#   /# ##/#  #/ ###',
  H: '#  #/#  #/####/#  #/#  #',
  I: '###/ # / # / # /###',
  J: '  ##/   #/   #/#  #/ ## ',
  K: '#  #/# # /##  /# # /#  #',
  L: '#   /#   /#   /#   /####',
  M: '#   #/## ##/# # #/#   #/#   #',
  N: '#   #/##  #/# # #/#  ##/#   #',
  O: ' ## /#  #/#  #/#  #/ ## ',
  P: '### /#  #/### /#   /#   ',
  Q: ' ## /#  #/#  #/# ##/ ###',
  R: '### /#  #/### /# # /#  #',
  S: ' ###/#   / ## /   #/### ',
  T: '#####/  #  /  #  /  #  /  #  ',
  U: '#  #/#  #/#  #/#  #/ ## ',
  V: '#   #/#   #/ # # / # # /  #  ',
  W: '#   #/#   #/# # #/## ##/#   #',
  X: '#   #/ # # /  #  / # # /#   #',
  Y: '#   #/ # # /  #  /  #  /  #  ',
  Z: '####/  # / #  /#   /####',
  a: '    / ## /   #/ ###/ ###',
  b: '#   /#   /### /#  #/### ',
  c: '    / ###/#   /#   / ###',
  d: '   #/   #/ ###/#  #/ ###',
  e: '    / ## /####/#   / ###',
  f: ' ##/#  /## /#  /#  ',
  g: ' ###/#  #/ ###/   #/ ## ',
  i: '#/ /#/#/#',
  k: '#   /# # /##  /# # /#  #',
  l: '#/#/#/#/#',
  m: '     /#### /# # #/# # #/# # #',
  n: '    /### /#  #/#  #/#  #',
  o: '    / ## /#  #/#  #/ ## ',
  t: ' # /###/ # / # / ##',
  x: '    /#  #/ ## / ## /#  #',
  '·': ' / /#/ / ',
  '.': ' / / / /#',
  ',': '  /  /  / #/# ',
  '-': '   /   /###/   /   ',
  '+': '   / # /###/ # /   ',
  '/': '   #/  # / #  /#   /    ',
  '°': '##/##/  /  /  ',
  '?': '### /   #/ ## /    / #  ',
  ' ': '  /  /  /  /  ',
};

/** The rows of a text, each pixel `wide` columns; null where a sign of it is not known. */
function rowsOf(text: string, wide: number): string[] | null {
  const signs = [...text].map((c) => (SIGNS[c] ?? SIGNS[c.toUpperCase()])?.split('/'));
  if (signs.some((s) => s === undefined)) return null;
  return Array.from({ length: HEIGHT }, (_, y) =>
    signs
      .map((sign) =>
        [...(sign?.[y] ?? '')].map((p) => (p === '#' ? '█' : ' ').repeat(wide)).join(''),
      )
      .join(' '.repeat(wide)),
  );
}

/** As large as it fits: with wide pixels, with narrow ones, or as one bold line. */
export function farText(text: string, columns: number): Line[] {
  for (const wide of [2, 1]) {
    const rows = rowsOf(text, wide);
    if (rows?.every((row) => width(row) <= columns)) return rows.map((row) => line(bold(row)));
  }
  return [line(bold(text))];
}

/** Texts beside one another, each as tall as it is; what comes last stands at the right edge. */
export function sideBySide(blocks: readonly Line[][], columns: number): Line[] {
  const tall = Math.max(0, ...blocks.map((b) => b.length));
  const wide = blocks.map((b) => Math.max(0, ...b.map((l) => width(l))));
  const free = Math.max(blocks.length - 1, columns - wide.reduce((a, b) => a + b, 0));
  const gap = Math.min(GAP, Math.floor(free / Math.max(1, blocks.length - 1)));
  return Array.from({ length: tall }, (_, y) => {
    let at = 0;
    let x = 0;
    const row: Span[] = [];
    for (const [i, block] of blocks.entries()) {
      const last = i === blocks.length - 1 && i > 0;
      const from = last ? columns - (wide[i] ?? 0) : x;
      const part = block[y] ?? [];
      row.push(...line(' '.repeat(Math.max(0, from - at))), ...part);
      at = Math.max(at, from) + width(part);
      x = from + (wide[i] ?? 0) + gap;
    }
    return row;
  });
}

const GAP = 4;
