/**
 * What stands beside each hole, put where it covers neither another hole nor what stands there already, as far as
 * there is room: to the right, to the left, above or below. In mm, pure, the same for the same holes.
 */
import type { Box } from '../piece/life-size.ts';
import { textWidth } from './measure.ts';

/** A hole with lines of text beside it. */
export interface Lettered {
  x: number;
  y: number;
  /** Of what is drawn around its middle, mm. */
  radius: number;
  /** The first is the largest. */
  lines: readonly string[];
}

export interface WrittenLabel {
  /** Where each line begins, its baseline, and the size of its letters. */
  lines: readonly { text: string; x: number; y: number; size: number; bold: boolean }[];
  /** All of it, the hole and its text. */
  box: Box;
}

/** Sizes of letters: of the first line and of the others. */
const FIRST = 3.8;
const OTHERS = 2.7;
const GAP = 0.8;

export function writeBeside(holes: readonly Lettered[]): WrittenLabel[] {
  const rings = holes.map(({ x, y, radius: r }) => ({
    x: x - r,
    y: y - r,
    width: 2 * r,
    height: 2 * r,
  }));
  const taken: Box[] = [...rings];
  return holes.map((hole, i) => {
    const ring = rings[i] ?? { x: hole.x, y: hole.y, width: 0, height: 0 };
    const size = (k: number) => (k === 0 ? FIRST : OTHERS);
    const width = Math.max(0, ...hole.lines.map((text, k) => textWidth(text, k === 0) * size(k)));
    const height = hole.lines.reduce((sum, _, k) => sum + size(k) * 1.1, 0);
    const off = hole.radius + GAP;
    const free: Box[] = [
      { x: hole.x + off, y: hole.y - height / 2, width, height },
      { x: hole.x - off - width, y: hole.y - height / 2, width, height },
      { x: hole.x - width / 2, y: hole.y - off - height, width, height },
      { x: hole.x - width / 2, y: hole.y + off, width, height },
    ];
    const hidden = (box: Box) =>
      taken.reduce((sum, other) => (other === ring ? sum : sum + shared(box, other)), 0);
    const box = free.reduce((best, next) => (hidden(next) < hidden(best) - 1e-9 ? next : best));
    taken.push(box);
    let y = box.y;
    const lines = hole.lines.map((text, k) => {
      const written = { text, x: box.x, y: y + size(k) * 0.85, size: size(k), bold: k === 0 };
      y += size(k) * 1.1;
      return written;
    });
    return { lines, box: united(ring, box) };
  });
}

/** Area that two boxes have in common. */
function shared(a: Box, b: Box): number {
  const w = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x);
  const h = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y);
  return w > 0 && h > 0 ? w * h : 0;
}

/** A box around all of these, `pad` mm wider on each side. */
export function around(boxes: readonly Box[], pad: number): Box {
  const { x, y, width, height } = boxes.reduce(united);
  return { x: x - pad, y: y - pad, width: width + 2 * pad, height: height + 2 * pad };
}

function united(a: Box, b: Box): Box {
  const [x, y] = [Math.min(a.x, b.x), Math.min(a.y, b.y)];
  return {
    x,
    y,
    width: Math.max(a.x + a.width, b.x + b.width) - x,
    height: Math.max(a.y + a.height, b.y + b.height) - y,
  };
}
