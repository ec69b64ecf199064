/**
 * Bolts in outline on paper, at true length: to lay the one in the hand beside it. Only its length and its diameter are
 * true; heads are drawn by their shape, in the proportions that are usual, no source.
 */
import { type HeadShape, headShape } from '../bolt/read/head.ts';
import { threadOf } from '../bolt/thread/threads.ts';
import type { Kind } from '../model/types.ts';
import { type Markup, m } from './markup.ts';

export interface BoltSize {
  /** Of the thread, mm; null where the file does not say one that is known. */
  d: number | null;
  /** Under the head; of a countersunk one, a stud and a grub screw: over all. Null where nobody said it. */
  length: number | null;
  shape: HeadShape | null;
}

export function sizeOf(kind: Kind): BoltSize {
  return {
    d: threadOf(kind.thread)?.d ?? bareDiameter(kind.thread),
    length: kind.length,
    shape: headShape(kind.head) ?? headShape(kind.text),
  };
}

/** `M7` is 7 mm thick, whatever its pitch. */
function bareDiameter(thread: string | null): number | null {
  const d = Number(/^M(\d+(?:\.\d+)?)/i.exec(thread ?? '')?.[1] ?? Number.NaN);
  return d > 0 && d < 200 ? d : null;
}

/** Height and width of a head, in diameters of the thread. */
const HEADS: Readonly<Record<HeadShape, readonly [height: number, width: number]>> = {
  hex: [0.7, 1.7],
  flange: [0.9, 2.1],
  socket: [1, 1.5],
  button: [0.55, 1.75],
  countersunk: [0.5, 2],
  pan: [0.6, 2],
  bleed: [0.9, 1.6],
  stud: [0, 1],
  grub: [0, 1],
};
/** Without a known diameter the line alone is true. */
const THICK = 6;

/** What is drawn to the left of where the length begins, mm. */
export function headRoom({ d, shape }: BoltSize): number {
  if (shape === 'countersunk') return 0;
  return HEADS[shape ?? 'hex'][0] * (d ?? THICK);
}

export function boltHeight({ d, shape }: BoltSize): number {
  return HEADS[shape ?? 'hex'][1] * (d ?? THICK);
}

/**
 * The bolt with its length from `x` to the right about the axis `y`, and below it the line itself between two ends.
 * `line` is where that line is. Nothing of it is drawn where the length is not known.
 */
export function drawBolt(
  size: BoltSize,
  letter: string,
  x: number,
  y: number,
  line: number,
): Markup {
  const { length, shape } = size;
  if (length === null) return m``;
  const d = size.d ?? THICK;
  const [h, w] = HEADS[shape ?? 'hex'];
  const [head, half] = [h * d, (w * d) / 2];
  const end = Math.min(0.15 * d, length / 2);
  const shank = shape === 'countersunk' ? head : 0;
  const outline = `M${f(x + shank)} ${f(y - d / 2)}H${f(x + length - end)}L${f(x + length)} ${f(y - d / 2 + end)}V${f(y + d / 2 - end)}L${f(x + length - end)} ${f(y + d / 2)}H${f(x + shank)}`;
  return m`<g class="bolt" fill="none" stroke="#000" stroke-width=".25"><path d="${outline}"${size.d === null ? m` stroke-dasharray="1 1"` : null}/>${drawHead(shape, x, y, head, half, d)}<path class="length" data-kind="${letter}" data-mm="${length}" d="M${x} ${line}H${x + length}"/><path d="M${x} ${line - 1.4}V${line + 1.4}M${x + length} ${line - 1.4}V${line + 1.4}"/></g>`;
}

function drawHead(
  shape: HeadShape | null,
  x: number,
  y: number,
  head: number,
  half: number,
  d: number,
): Markup {
  const box = (from: number, to: number, by: number) =>
    `M${f(from)} ${f(y - by)}H${f(to)}V${f(y + by)}H${f(from)}Z`;
  const path = (d: string) => m`<path d="${d}"/>`;
  switch (shape) {
    case 'stud':
    case 'grub':
      return path(`M${f(x)} ${f(y - d / 2)}V${f(y + d / 2)}`);
    case 'countersunk':
      return path(
        `M${f(x)} ${f(y - half)}V${f(y + half)}L${f(x + head)} ${f(y + d / 2)}M${f(x)} ${f(y - half)}L${f(x + head)} ${f(y - d / 2)}`,
      );
    case 'button':
    case 'pan':
      return path(
        `M${f(x)} ${f(y - half)}V${f(y + half)}C${f(x - head)} ${f(y + half)} ${f(x - head)} ${f(y - half)} ${f(x)} ${f(y - half)}Z`,
      );
    case 'flange':
      return path(box(x - head * 0.25, x, half) + box(x - head, x - head * 0.25, half * 0.78));
    case 'socket':
      return path(
        box(x - head, x, half) +
          `M${f(x - head)} ${f(y - half / 2)}H${f(x - head / 2)}V${f(y + half / 2)}H${f(x - head)}`,
      );
    default:
      return path(
        `${box(x - head, x, half)}M${f(x - head)} ${f(y - half / 2)}H${f(x)}M${f(x - head)} ${f(y + half / 2)}H${f(x)}`,
      );
  }
}

function f(value: number): number {
  return Number(value.toFixed(5));
}
