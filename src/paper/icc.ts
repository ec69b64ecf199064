/**
 * A colour profile without what it tells beside the colours: who made it and when, of which device, texts. After ICC.1:2022
 * (7.2 header, 7.3 tag table, 10 types). Only profiles of a matrix and curves, as cameras and screens have; null for
 * every other, and for one that is broken: the picture then counts as sRGB.
 */

const HEADER = 128;
const ROW = 12;

/** Of the header what a reader of the colours needs: version, class, colour space, PCS, signature, intent, illuminant. */
const HEADER_KEPT: readonly (readonly [number, number])[] = [
  [8, 24],
  [36, 40],
  [64, 80],
];

/** Tags that say how figures become colours, and of which types they may be. */
const KEPT: Readonly<Record<string, readonly string[]>> = {
  rXYZ: ['XYZ '],
  gXYZ: ['XYZ '],
  bXYZ: ['XYZ '],
  wtpt: ['XYZ '],
  rTRC: ['curv', 'para'],
  gTRC: ['curv', 'para'],
  bTRC: ['curv', 'para'],
  kTRC: ['curv', 'para'],
  chad: ['sf32'],
};
const COLOUR = ['rXYZ', 'gXYZ', 'bXYZ', 'rTRC', 'gTRC', 'bTRC'];
const GREY = ['kTRC'];

/** Figures of a parametric curve, by its function. */
const OF_FUNCTION = [1, 3, 4, 5, 7];

export function bareProfile(bytes: Uint8Array): Uint8Array | null {
  if (bytes.length < HEADER + 4 || signature(bytes, 36) !== 'acsp') return null;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const count = view.getUint32(HEADER);
  if (count > 100 || HEADER + 4 + ROW * count > bytes.length) return null;
  const tags = new Map<string, Uint8Array>();
  for (let i = 0; i < count; i += 1) {
    const at = HEADER + 4 + ROW * i;
    const name = signature(bytes, at);
    const found = dataOf(bytes, view, name, view.getUint32(at + 4), view.getUint32(at + 8));
    if (found !== null) tags.set(name, found);
  }
  const has = (names: readonly string[]) => names.every((name) => tags.has(name));
  if (!has(COLOUR) && !has(GREY)) return null;
  // Two that every profile must have: what it is called, and whose it is. They say nothing.
  for (const name of ['desc', 'cprt']) tags.set(name, nameless(name, (bytes[8] ?? 0) >= 4));
  return written(bytes, tags);
}

function signature(bytes: Uint8Array, at: number): string {
  return String.fromCharCode(...bytes.subarray(at, at + 4));
}

/** The bytes of a tag as long as its type says they are: nothing hangs behind them. */
function dataOf(
  bytes: Uint8Array,
  view: DataView,
  name: string,
  at: number,
  size: number,
): Uint8Array | null {
  if (size < 12 || at + size > bytes.length) return null;
  const type = signature(bytes, at);
  if (KEPT[name]?.includes(type) !== true) return null;
  const length = lengthOf(type, view, at);
  if (!(length <= size)) return null;
  const bare = Uint8Array.from(bytes.subarray(at, at + length));
  // Reserved, and nothing else.
  bare.fill(0, 4, 8);
  if (type === 'para') bare.fill(0, 10, 12);
  return bare;
}

/** NaN for a function that there is not. */
function lengthOf(type: string, view: DataView, at: number): number {
  switch (type) {
    case 'XYZ ':
      return 20;
    case 'sf32':
      return 44;
    case 'curv':
      return 12 + 2 * view.getUint32(at + 8);
    default:
      return 12 + 4 * (OF_FUNCTION[view.getUint16(at + 8)] ?? Number.NaN);
  }
}

/** An empty text: `mluc` without a record for a description and a licence of version 4, else their older types. */
function nameless(name: string, late: boolean): Uint8Array {
  if (late) return data('mluc', [0, 0, 0, 0, 0, 0, 0, 12]);
  if (name === 'cprt') return data('text', [0]);
  // Count 1, an empty ASCII text; no Unicode; no script code and 67 bytes for it.
  return data('desc', [0, 0, 0, 1, 0, ...Array<number>(8 + 3 + 67).fill(0)]);
}

function data(type: string, body: readonly number[]): Uint8Array {
  return Uint8Array.from([...Array.from(type, (c) => c.charCodeAt(0)), 0, 0, 0, 0, ...body]);
}

function written(from: Uint8Array, tags: ReadonlyMap<string, Uint8Array>): Uint8Array {
  const start = HEADER + 4 + ROW * tags.size;
  const even = (n: number) => Math.ceil(n / 4) * 4;
  const size = [...tags.values()].reduce((sum, d) => sum + even(d.length), start);
  const bytes = new Uint8Array(size);
  for (const [a, b] of HEADER_KEPT) bytes.set(from.subarray(a, b), a);
  const view = new DataView(bytes.buffer);
  view.setUint32(0, size);
  view.setUint32(HEADER, tags.size);
  let at = start;
  [...tags].forEach(([name, body], i) => {
    const row = HEADER + 4 + ROW * i;
    for (let c = 0; c < 4; c += 1) bytes[row + c] = name.charCodeAt(c);
    view.setUint32(row + 4, at);
    view.setUint32(row + 8, body.length);
    bytes.set(body, at);
    at += even(body.length);
  });
  return bytes;
}
