/** Photographs as cameras write them, small: made here, from nothing but the standards. */
import { crc32, deflateSync } from 'node:zlib';

export interface Facts {
  /** `2026:04:11 16:40:12` */
  clock?: string;
  offset?: string;
  orientation?: number;
  /** Where it was taken, and whose camera it is: what must never leave. */
  secret?: string;
  /** Of a JPEG, 8 or 16; 8 unless said. */
  width?: number;
}

const u16 = (n: number) => Buffer.from([n >> 8, n & 0xff]);
const u32 = (n: number) => {
  const b = Buffer.alloc(4);
  b.writeUInt32BE(n);
  return b;
};

type Field = { tag: number; type: number; count: number; value: Buffer };
const ascii = (tag: number, text: string): Field => {
  const value = Buffer.from(`${text}\0`, 'latin1');
  return { tag, type: 2, count: value.length, value };
};
const short = (tag: number, n: number): Field => ({ tag, type: 3, count: 1, value: u16(n) });
const long = (tag: number, n: number): Field => ({ tag, type: 4, count: 1, value: u32(n) });
const degrees = (tag: number, d: number): Field => ({
  tag,
  type: 5,
  count: 3,
  value: Buffer.concat([u32(d), u32(1), u32(30), u32(1), u32(0), u32(1)]),
});

/** A directory of Exif 2.32 at its place in the block, and what its fields point to behind it. */
function directory(fields: readonly Field[], at: number): Buffer {
  const sorted = [...fields].sort((a, b) => a.tag - b.tag);
  let far = at + 2 + 12 * sorted.length + 4;
  const behind: Buffer[] = [];
  const rows = sorted.map(({ tag, type, count, value }) => {
    const head = Buffer.concat([u16(tag), u16(type), u32(count)]);
    if (value.length <= 4) return Buffer.concat([head, value, Buffer.alloc(4 - value.length)]);
    const row = Buffer.concat([head, u32(far)]);
    const even = value.length % 2 === 0 ? value : Buffer.concat([value, Buffer.alloc(1)]);
    behind.push(even);
    far += even.length;
    return row;
  });
  return Buffer.concat([u16(sorted.length), ...rows, u32(0), ...behind]);
}

export function exifBlock({ clock, offset, orientation, secret }: Facts): Buffer {
  const first: Field[] = [
    ...(orientation === undefined ? [] : [short(0x0112, orientation)]),
    ...(secret === undefined
      ? []
      : [ascii(0x010f, secret), ascii(0x013b, secret), ascii(0x8298, secret)]),
  ];
  const own: Field[] = [
    ...(clock === undefined ? [] : [ascii(0x9003, clock)]),
    ...(offset === undefined ? [] : [ascii(0x9011, offset)]),
    ...(secret === undefined ? [] : [ascii(0xa430, secret), ascii(0xa431, secret)]),
  ];
  const gps: Field[] =
    secret === undefined ? [] : [ascii(1, 'N'), degrees(2, 47), ascii(3, 'E'), degrees(4, 8)];
  const pointers = (exifAt: number, gpsAt: number) => [
    ...first,
    long(0x8769, exifAt),
    ...(gps.length === 0 ? [] : [long(0x8825, gpsAt)]),
  ];
  const exifAt = 8 + directory(pointers(0, 0), 8).length;
  const gpsAt = exifAt + directory(own, exifAt).length;
  return Buffer.concat([
    Buffer.from('MM\0*', 'latin1'),
    u32(8),
    directory(pointers(exifAt, gpsAt), 8),
    directory(own, exifAt),
    gps.length === 0 ? Buffer.alloc(0) : directory(gps, gpsAt),
  ]);
}

const segment = (marker: number, body: Buffer) =>
  Buffer.concat([Buffer.from([0xff, marker]), u16(body.length + 2), body]);

/**
 * A grey JPEG, 8 high, baseline (ITU-T T.81): blocks whose coefficients are all nothing, two bits each. With everything in it that
 * applications put in, and something behind its end.
 */
export function jpeg(facts: Facts): Buffer {
  const secret = facts.secret ?? '';
  const ones = Buffer.concat([Buffer.from([0]), Buffer.alloc(64, 1)]);
  // One code of one bit each: the difference 0, and the end of the block.
  const table = (id: number) =>
    Buffer.concat([Buffer.from([id, 1]), Buffer.alloc(15), Buffer.from([0])]);
  return Buffer.concat([
    Buffer.from([0xff, 0xd8]),
    segment(0xe0, Buffer.from('JFIF\0\x01\x02\0\0\x01\0\x01\0\0', 'latin1')),
    segment(0xe1, Buffer.concat([Buffer.from('Exif\0\0', 'latin1'), exifBlock(facts)])),
    segment(0xe1, Buffer.from(`http://ns.adobe.com/xap/1.0/\0<x>${secret}</x>`, 'latin1')),
    segment(0xe2, Buffer.from(`MPF\0${secret}`, 'latin1')),
    segment(0xed, Buffer.from(`Photoshop 3.0\0${secret}`, 'latin1')),
    segment(0xfe, Buffer.from(`comment ${secret}`, 'latin1')),
    segment(0xdb, ones),
    segment(0xc0, Buffer.from([8, 0, 8, 0, facts.width ?? 8, 1, 1, 0x11, 0])),
    segment(0xc4, table(0x00)),
    segment(0xc4, table(0x10)),
    segment(0xda, Buffer.from([1, 1, 0, 0, 63, 0])),
    Buffer.from([facts.width === 16 ? 0x0f : 0x3f]),
    Buffer.from([0xff, 0xd9]),
    Buffer.from(`behind the end: ${secret}`, 'latin1'),
  ]);
}

const chunk = (name: string, body: Buffer) => {
  const said = Buffer.concat([Buffer.from(name, 'latin1'), body]);
  return Buffer.concat([u32(body.length), said, u32(crc32(said))]);
};

/** A black PNG of 8 × 8 (ISO 15948), with texts. */
export function png(facts: Facts): Buffer {
  const secret = facts.secret ?? '';
  return Buffer.concat([
    Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'),
    chunk('IHDR', Buffer.concat([u32(8), u32(8), Buffer.from([8, 0, 0, 0, 0])])),
    chunk('eXIf', exifBlock(facts)),
    chunk('tEXt', Buffer.from(`Author\0${secret}`, 'latin1')),
    chunk('IDAT', deflateSync(Buffer.alloc(8 * 9))),
    chunk('IEND', Buffer.alloc(0)),
    Buffer.from(secret, 'latin1'),
  ]);
}

const riff = (name: string, body: Buffer) => {
  const size = Buffer.alloc(4);
  size.writeUInt32LE(body.length);
  const pad = body.length % 2 === 0 ? Buffer.alloc(0) : Buffer.alloc(1);
  return Buffer.concat([Buffer.from(name, 'latin1'), size, body, pad]);
};

/** A WebP of one pixel (RFC 9649), extended, with Exif and XMP. */
export function webp(facts: Facts): Buffer {
  const secret = facts.secret ?? '';
  const vp8l = Buffer.from('2f000000000788 8fd1 ff02'.replaceAll(' ', ''), 'hex');
  const body = Buffer.concat([
    Buffer.from('WEBP', 'latin1'),
    riff('VP8X', Buffer.from([0x0c, 0, 0, 0, 0, 0, 0, 0, 0, 0])),
    riff('VP8L', vp8l),
    riff('EXIF', exifBlock(facts)),
    riff('XMP ', Buffer.from(`<x>${secret}</x>`, 'latin1')),
  ]);
  const size = Buffer.alloc(4);
  size.writeUInt32LE(body.length);
  return Buffer.concat([Buffer.from('RIFF', 'latin1'), size, body]);
}

const box = (name: string, ...parts: Buffer[]) => {
  const body = Buffer.concat(parts);
  return Buffer.concat([u32(body.length + 8), Buffer.from(name, 'latin1'), body]);
};

/** A HEIC with nothing in it but its Exif item (ISO 14496-12: ftyp, meta, iinf, iloc; ISO 23008-12, annex A). */
export function heic(facts: Facts): Buffer {
  const exif = Buffer.concat([u32(6), Buffer.from('Exif\0\0', 'latin1'), exifBlock(facts)]);
  const flags = Buffer.alloc(4);
  const infe = box(
    'infe',
    Buffer.from([2, 0, 0, 0]),
    u16(1),
    u16(0),
    Buffer.from('Exif\0', 'latin1'),
  );
  const iinf = box('iinf', flags, u16(1), infe);
  const iloc = (at: number) =>
    box(
      'iloc',
      flags,
      Buffer.from([0x44, 0x00]),
      u16(1),
      ...[u16(1), u16(0), u16(1), u32(at), u32(exif.length)],
    );
  const hdlr = box('hdlr', flags, u32(0), Buffer.from('pict', 'latin1'), Buffer.alloc(13));
  const ftyp = box(
    'ftyp',
    Buffer.from('heic', 'latin1'),
    u32(0),
    Buffer.from('mif1heic', 'latin1'),
  );
  const meta = (at: number) => box('meta', flags, hdlr, iinf, iloc(at));
  const at = ftyp.length + meta(0).length + 8;
  return Buffer.concat([ftyp, meta(at), box('mdat', exif)]);
}
