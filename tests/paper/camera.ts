/** Photographs as cameras write them, small: made here, from nothing but the standards. */
import { crc32, deflateSync } from 'node:zlib';

export interface Facts {
  /** `2026:04:11 16:40:12` */
  clock?: string;
  offset?: string;
  orientation?: number;
  /** Where it was taken, and whose camera it is: what must never leave. */
  secret?: string;
  /** Of a JPEG or a PNG, 8 or 16; 8 unless said. */
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

/** A profile of colours (ICC.1:2022) with what makers and programs put into it, and something behind each of its tags. */
export function profile(secret: string, more: { late?: boolean; lut?: boolean } = {}): Buffer {
  const said = Buffer.from(secret, 'latin1');
  const type = (name: string, ...parts: Buffer[]) =>
    Buffer.concat([Buffer.from(`${name}\0\0\0\0`, 'latin1'), ...parts]);
  const xyz = (...n: number[]) =>
    type('XYZ ', ...n.map((v) => u32(Math.round(v * 65536) >>> 0)), said);
  // The primaries and the curve of sRGB at D50 (IEC 61966-2-1, as its profiles have them).
  const curve = type(
    'para',
    u16(3),
    said.subarray(0, 2),
    ...[2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.04045].map((v) => u32(Math.round(v * 65536))),
    said,
  );
  const tags: [string, Buffer][] = [
    ['desc', type('text', said)],
    ['cprt', type('text', said)],
    ['dmnd', type('text', said)],
    ['meta', type('dict', said)],
    ['wtpt', xyz(0.9642, 1, 0.8249)],
    ...(more.lut
      ? [['A2B0', type('mft2', said)] as [string, Buffer]]
      : [
          ['rXYZ', xyz(0.43607, 0.22249, 0.01392)] as [string, Buffer],
          ['gXYZ', xyz(0.38515, 0.71687, 0.09708)] as [string, Buffer],
          ['bXYZ', xyz(0.14307, 0.06061, 0.7141)] as [string, Buffer],
          ['rTRC', curve] as [string, Buffer],
          ['gTRC', curve] as [string, Buffer],
          ['bTRC', type('curv', u32(1), u16(0x0233), said)] as [string, Buffer],
        ]),
  ];
  const head = Buffer.alloc(128);
  for (const at of [4, 24, 40, 48, 52, 56, 80, 84, 100]) said.copy(head, at, 0, 4);
  head[8] = more.late ? 4 : 2;
  head.write('mntrRGB XYZ ', 12, 'latin1');
  head.write('acsp', 36, 'latin1');
  let at = 132 + 12 * tags.length;
  const rows = tags.map(([name, body]) => {
    const row = Buffer.concat([Buffer.from(name, 'latin1'), u32(at), u32(body.length)]);
    at += body.length;
    return row;
  });
  const all = Buffer.concat([
    head,
    u32(tags.length),
    ...rows,
    ...tags.map(([, body]) => body),
    said,
  ]);
  all.writeUInt32BE(all.length, 0);
  return all;
}

/** In two pieces, the second first. */
function profileSegments(icc: Buffer): Buffer[] {
  const middle = Math.floor(icc.length / 2);
  const piece = (n: number, part: Buffer) =>
    segment(
      0xe2,
      Buffer.concat([Buffer.from('ICC_PROFILE\0', 'latin1'), Buffer.from([n, 2]), part]),
    );
  return [piece(2, icc.subarray(middle)), piece(1, icc.subarray(0, middle))];
}

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
    ...(secret === '' ? [] : profileSegments(profile(secret))),
    segment(0xee, Buffer.from(`Adobe\0\x64\0\0\0\0\x01${secret}`, 'latin1')),
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

/** A black PNG, 8 high (ISO 15948), with texts. */
export function png(facts: Facts): Buffer {
  const secret = facts.secret ?? '';
  return Buffer.concat([
    Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'),
    chunk('IHDR', Buffer.concat([u32(facts.width ?? 8), u32(8), Buffer.from([8, 0, 0, 0, 0])])),
    chunk('eXIf', exifBlock(facts)),
    ...(secret === ''
      ? []
      : [
          chunk(
            'iCCP',
            Buffer.concat([
              Buffer.from(`${secret.slice(0, 20)}\0\0`, 'latin1'),
              deflateSync(profile(secret)),
            ]),
          ),
        ]),
    chunk('tEXt', Buffer.from(`Author\0${secret}`, 'latin1')),
    chunk('IDAT', deflateSync(Buffer.alloc(8 * ((facts.width ?? 8) + 1)))),
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
    riff('VP8X', Buffer.from([secret === '' ? 0x0c : 0x2c, 0, 0, 0, 0, 0, 0, 0, 0, 0])),
    ...(secret === '' ? [] : [riff('ICCP', profile(secret, { late: true }))]),
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
