/**
 * A photograph without what it tells beside the picture: place, owner, serial numbers, thumbnails, what hangs behind
 * its end. Colours and the way up stay. JPEG (ITU-T T.81, JFIF, Exif 2.32), PNG (ISO 15948) and WebP (RFC 9649); of
 * every other kind nothing is given out. Only what is known to be needed is kept.
 */

import { bareProfile } from './icc.ts';

export type PictureKind = 'image/jpeg' | 'image/png' | 'image/webp';

const ASCII = new TextDecoder('latin1');

function text(bytes: Uint8Array, from: number, length: number): string {
  return ASCII.decode(bytes.subarray(from, from + length));
}

/** By its first bytes; null: none that can be stripped. */
export function pictureKind(bytes: Uint8Array): PictureKind | null {
  if (bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff) return 'image/jpeg';
  if (bytes[0] === 0x89 && text(bytes, 1, 7) === 'PNG\r\n\x1a\n') return 'image/png';
  if (text(bytes, 0, 4) === 'RIFF' && text(bytes, 8, 4) === 'WEBP') return 'image/webp';
  return null;
}

/** How a PNG packs its profile of colours (RFC 1950), and the sum behind a chunk (ISO 15948, annex D). */
export interface Packing {
  /** Throws where it cannot be unpacked. */
  inflate(bytes: Uint8Array): Uint8Array;
  deflate(bytes: Uint8Array): Uint8Array;
  crc32(bytes: Uint8Array): number;
}

/** `orientation` as Exif has it, 1 to 8. Null where the file is none of these kinds, or broken. */
export function stripped(
  bytes: Uint8Array,
  orientation: number,
  packing: Packing,
): Uint8Array | null {
  const turn = orientation >= 2 && orientation <= 8 ? orientation : 1;
  switch (pictureKind(bytes)) {
    case 'image/jpeg':
      return jpeg(bytes, turn);
    case 'image/png':
      return png(bytes, turn, packing);
    case 'image/webp':
      return webp(bytes, turn);
    default:
      return null;
  }
}

/** A whole Exif block that holds the way up and nothing else: TIFF header, one directory of one entry. */
function exif(orientation: number): Uint8Array {
  return Uint8Array.from([
    ...[0x4d, 0x4d, 0, 42, 0, 0, 0, 8],
    ...[0, 1],
    ...[0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, orientation, 0, 0],
    ...[0, 0, 0, 0],
  ]);
}

function joined(parts: readonly Uint8Array[]): Uint8Array {
  const all = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
}

const letters = (said: string) => Uint8Array.from(said, (c) => c.charCodeAt(0));

// ---------------------------------------------------------------- JPEG

const [SOI, EOI, SOS, COM, APP0, APP2, APP14, APP15] = [
  0xd8, 0xd9, 0xda, 0xfe, 0xe0, 0xe2, 0xee, 0xef,
];

function jpeg(bytes: Uint8Array, orientation: number): Uint8Array | null {
  const parts: Uint8Array[] = [bytes.subarray(0, 2)];
  let at = 2;
  let hasJfif = false;
  const pending = orientation === 1 ? null : app1(orientation);
  const profile: Uint8Array[] = [];
  const body: Uint8Array[] = [];
  while (at + 1 < bytes.length) {
    if (bytes[at] !== 0xff) return null;
    const marker = bytes[at + 1] ?? 0;
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    if (marker === EOI) {
      body.push(bytes.subarray(at, at + 2));
      const colours = profile.length === 0 ? [] : [jpegProfile(profile)];
      return joined([...parts, ...(pending ? [pending] : []), ...colours, ...body]);
    }
    if (marker === SOI || (marker >= 0xd0 && marker <= 0xd7) || marker === 0x01) {
      body.push(bytes.subarray(at, at + 2));
      at += 2;
      continue;
    }
    const length = ((bytes[at + 2] ?? 0) << 8) | (bytes[at + 3] ?? 0);
    const end = at + 2 + length;
    if (length < 2 || end > bytes.length) return null;
    const segment = bytes.subarray(at, end);
    // The header of JFIF stands first, before the way up.
    if (marker === APP0 && !hasJfif && text(segment, 4, 5) === 'JFIF\0') {
      hasJfif = true;
      parts.push(jfif(segment));
    } else if (marker === APP2 && text(segment, 4, 12) === PROFILE) profile.push(segment);
    else if (marker === APP14) body.push(adobe(segment));
    else if (isKept(marker)) body.push(segment);
    at = end;
    if (marker !== SOS) continue;
    const scan = scanEnd(bytes, at);
    body.push(bytes.subarray(at, scan));
    at = scan;
  }
  return null;
}

function app1(orientation: number): Uint8Array {
  const block = exif(orientation);
  const length = 2 + 6 + block.length;
  return joined([
    Uint8Array.from([0xff, 0xe1, length >> 8, length & 0xff]),
    letters('Exif\0\0'),
    block,
  ]);
}

/** Without the small picture that may hang in it. */
function jfif(segment: Uint8Array): Uint8Array {
  const bare = Uint8Array.from(segment.subarray(0, 18));
  bare.set([0, 16], 2);
  bare.set([0, 0], 16);
  return bare.length === 18 ? bare : new Uint8Array();
}

/** What makes the picture. */
function isKept(marker: number): boolean {
  return marker !== COM && (marker < APP0 || marker > APP15);
}

const ADOBE = 16;
const PROFILE = 'ICC_PROFILE\0';

/** How the colours are coded, in the twelve bytes that say so; nothing behind them. */
function adobe(segment: Uint8Array): Uint8Array {
  if (segment.length < ADOBE || text(segment, 4, 5) !== 'Adobe') return new Uint8Array();
  const bare = Uint8Array.from(segment.subarray(0, ADOBE));
  bare.set([0, ADOBE - 2], 2);
  // Its version and flags: of the program that wrote it.
  bare.set([0, 100, 0, 0, 0, 0], 9);
  return bare;
}

/** The profile of its colours out of its pieces, and nothing but colours in it. */
function jpegProfile(pieces: readonly Uint8Array[]): Uint8Array {
  const inOrder = [...pieces].sort((a, b) => (a[16] ?? 0) - (b[16] ?? 0));
  const bare = bareProfile(joined(inOrder.map((piece) => piece.subarray(18))));
  const length = 2 + PROFILE.length + 2 + (bare?.length ?? 0);
  if (bare === null || length > 0xffff) return new Uint8Array();
  const head = [0xff, 0xe2, length >> 8, length & 0xff];
  return joined([Uint8Array.from(head), letters(PROFILE), Uint8Array.from([1, 1]), bare]);
}

/** Where coded data ends: at a marker that is no filling and no restart. */
function scanEnd(bytes: Uint8Array, from: number): number {
  for (let at = from; at + 1 < bytes.length; at += 1) {
    if (bytes[at] !== 0xff) continue;
    const next = bytes[at + 1] ?? 0;
    if (next !== 0 && next !== 0xff && !(next >= 0xd0 && next <= 0xd7)) return at;
  }
  return bytes.length;
}

// ---------------------------------------------------------------- PNG, WebP

const PNG_KEPT = new Set(
  'IHDR PLTE IDAT IEND tRNS gAMA cHRM sRGB sBIT bKGD pHYs acTL fcTL fdAT'.split(' '),
);

function png(bytes: Uint8Array, orientation: number, packing: Packing): Uint8Array | null {
  const parts = [bytes.subarray(0, 8)];
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  for (let at = 8; at + 12 <= bytes.length; ) {
    const end = at + 12 + view.getUint32(at);
    const name = text(bytes, at + 4, 4);
    if (end > bytes.length) return null;
    if (PNG_KEPT.has(name)) parts.push(bytes.subarray(at, end));
    // The way up stands before the picture (ISO 15948, eXIf), behind the head.
    if (name === 'IHDR' && orientation !== 1)
      parts.push(pngChunk('eXIf', exif(orientation), packing));
    if (name === 'iCCP') parts.push(pngProfile(bytes.subarray(at + 8, end - 4), packing));
    if (name === 'IEND') return joined(parts);
    at = end;
  }
  return null;
}

/** The profile with nothing in it but colours; nothing where it is not to be read. */
function pngProfile(chunk: Uint8Array, packing: Packing): Uint8Array {
  const end = chunk.indexOf(0);
  if (end < 0 || chunk[end + 1] !== 0) return new Uint8Array();
  let profile: Uint8Array | null = null;
  try {
    profile = bareProfile(packing.inflate(chunk.subarray(end + 2)));
  } catch {
    // Not packed as it should be.
  }
  if (profile === null) return new Uint8Array();
  return pngChunk('iCCP', joined([letters('colours\0\0'), packing.deflate(profile)]), packing);
}

function pngChunk(name: string, body: Uint8Array, { crc32 }: Packing): Uint8Array {
  const said = joined([letters(name), body]);
  return joined([big(body.length), said, big(crc32(said))]);
}

function big(value: number): Uint8Array {
  return Uint8Array.from([value >>> 24, value >>> 16, value >>> 8, value], (n) => n & 0xff);
}

/** Of one picture: the frames of a moving one may hold anything. */
const WEBP_KEPT = new Set(['VP8 ', 'VP8L', 'VP8X', 'ALPH', 'ICCP']);
const [HAS_EXIF, HAS_XMP, HAS_ICC, MOVES] = [0x08, 0x04, 0x20, 0x02];

function webp(bytes: Uint8Array, orientation: number): Uint8Array | null {
  const chunks: Uint8Array[] = [];
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const all = Math.min(bytes.length, 8 + view.getUint32(4, true));
  let extended = false;
  for (let at = 12; at + 8 <= all; ) {
    const size = view.getUint32(at + 4, true);
    const end = at + 8 + size + (size % 2);
    const name = text(bytes, at, 4);
    if (at + 8 + size > all) return null;
    if (name === 'VP8X' && ((bytes[at + 8] ?? 0) & MOVES) !== 0) return null;
    if (name === 'ICCP') {
      const profile = bareProfile(bytes.subarray(at + 8, at + 8 + size));
      if (profile === null) withoutProfile(chunks);
      else chunks.push(riffChunk(name, profile));
    } else if (WEBP_KEPT.has(name)) {
      const chunk = Uint8Array.from(bytes.subarray(at, Math.min(end, all)));
      if (name === 'VP8X') {
        extended = true;
        chunk[8] = ((chunk[8] ?? 0) & ~(HAS_EXIF | HAS_XMP)) | (orientation === 1 ? 0 : HAS_EXIF);
      }
      chunks.push(chunk);
    }
    at = end;
  }
  if (chunks.length === 0) return null;
  if (extended && orientation !== 1) {
    const block = exif(orientation);
    chunks.push(letters('EXIF'), little(block.length), block);
  }
  const body = joined(chunks);
  return joined([letters('RIFF'), little(body.length + 4), letters('WEBP'), body]);
}

/** Says in the head that there is none. */
function withoutProfile(chunks: readonly Uint8Array[]): void {
  const head = chunks.find((chunk) => text(chunk, 0, 4) === 'VP8X');
  if (head) head[8] = (head[8] ?? 0) & ~HAS_ICC;
}

function riffChunk(name: string, body: Uint8Array): Uint8Array {
  const pad = new Uint8Array(body.length % 2);
  return joined([letters(name), little(body.length), body, pad]);
}

function little(value: number): Uint8Array {
  return Uint8Array.from([value, value >> 8, value >> 16, value >> 24], (n) => n & 0xff);
}
