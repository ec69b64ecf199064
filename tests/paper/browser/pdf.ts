/**
 * Reads lines and curves out of a PDF as the browser writes it: enough of ISO 32000-1 (7.3, 7.8, 8.3, 8.5) to know where
 * on the paper each path lies. In mm from the upper left corner of its page.
 */
import { inflateSync } from 'node:zlib';

export interface Path {
  /** Corners and ends; of a curve its ends only. */
  points: { x: number; y: number }[];
  /** With a curve in it. */
  curved: boolean;
  x: number;
  y: number;
  width: number;
  height: number;
}

export interface PdfPage {
  /** mm */
  width: number;
  height: number;
  paths: Path[];
}

const MM = 25.4 / 72;
type Matrix = readonly [number, number, number, number, number, number];
const UNIT: Matrix = [1, 0, 0, 1, 0, 0];

/** m, then n. */
function times(m: Matrix, n: Matrix): Matrix {
  return [
    m[0] * n[0] + m[1] * n[2],
    m[0] * n[1] + m[1] * n[3],
    m[2] * n[0] + m[3] * n[2],
    m[2] * n[1] + m[3] * n[3],
    m[4] * n[0] + m[5] * n[2] + n[4],
    m[4] * n[1] + m[5] * n[3] + n[5],
  ];
}

export function readPdf(bytes: Buffer): PdfPage[] {
  const text = bytes.toString('latin1');
  const objects = new Map<number, string>();
  for (const found of text.matchAll(/(?:^|\n)(\d+) 0 obj\b([\s\S]*?)endobj/g)) {
    objects.set(Number(found[1]), found[2] ?? '');
  }
  return [...objects.values()]
    .filter((o) => /\/Type\s*\/Page\b/.test(o))
    .map((page) => {
      const [, box = ''] = /\/MediaBox\s*\[([^\]]*)\]/.exec(page) ?? [];
      const [, , w = 0, h = 0] = box.trim().split(/\s+/).map(Number);
      const [, contents = ''] = /\/Contents\s+(\d+) 0 R/.exec(page) ?? [];
      const stream = streamOf(objects.get(Number(contents)) ?? '');
      return { width: w * MM, height: h * MM, paths: pathsOf(stream, [1, 0, 0, -1, 0, h]) };
    });
}

function streamOf(object: string): string {
  const start = /stream\r?\n/.exec(object);
  if (!start) return '';
  const raw = Buffer.from(object.slice(start.index + start[0].length), 'latin1');
  return /\/FlateDecode/.test(object)
    ? inflateSync(raw).toString('latin1')
    : raw.toString('latin1');
}

function pathsOf(stream: string, upright: Matrix): Path[] {
  const paths: Path[] = [];
  const kept: Matrix[] = [];
  let now: Matrix = UNIT;
  let points: Path['points'] = [];
  let curved = false;
  let numbers: number[] = [];
  const at = (x: number, y: number) => {
    const m = times(now, upright);
    points.push({ x: (x * m[0] + y * m[2] + m[4]) * MM, y: (x * m[1] + y * m[3] + m[5]) * MM });
  };
  for (const word of stream.match(
    /\/[^\s/<>[\]()]+|\((?:\\.|[^\\)])*\)|<[^>]*>|[^\s/<>[\]()]+|[[\]]/g,
  ) ?? []) {
    const n = Number(word);
    if (!Number.isNaN(n)) {
      numbers.push(n);
      continue;
    }
    const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = numbers;
    if (word === 'q') kept.push(now);
    else if (word === 'Q') now = kept.pop() ?? UNIT;
    else if (word === 'cm') now = times([a, b, c, d, e, f], now);
    else if (word === 'm' || word === 'l') at(a, b);
    else if (word === 'c') {
      at(e, f);
      curved = true;
    } else if (word === 're') {
      at(a, b);
      at(a + c, b + d);
    } else if (/^(?:S|s|f|f\*|B|B\*|b|b\*)$/.test(word)) {
      if (points.length > 0) paths.push({ points, curved, ...boxOf(points) });
      [points, curved] = [[], false];
    } else if (word === 'n') [points, curved] = [[], false];
    numbers = [];
  }
  return paths;
}

function boxOf(points: Path['points']) {
  const [xs, ys] = [points.map((p) => p.x), points.map((p) => p.y)];
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
}
