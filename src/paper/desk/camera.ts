/** What a photograph says of itself: when it was taken, and which way up it is. */
import ExifReader from 'exifreader';
import { readPlain } from '../../job/save/plain.ts';

export interface Camera {
  /** As its clock said: `2026-04-11T16:40:12`; null: it does not say. */
  clock: string | null;
  /** `+02:00`; null: it does not say. */
  offset: string | null;
  /** As Exif has it, 1 to 8. */
  orientation: number;
}

/** Larger than this is no photograph. */
export const MOST_BYTES = 128 << 20;
/** Most kinds say it near their start. */
const START = 512 << 10;

const NOTHING: Camera = { clock: null, offset: null, orientation: 1 };

/** Throws the system's error, or NotPlain. */
export function readCamera(path: string): Camera {
  const start = readPlain(path, START);
  const first = cameraOf(start.bytes);
  if (first.clock !== null || start.whole) return first;
  return cameraOf(readPlain(path, MOST_BYTES).bytes);
}

/**
 * Why a file is no photograph, by its first bytes and its size; null: it is one. A picture of any kind that cameras write:
 * JPEG, PNG, WebP, GIF, TIFF and the raw kinds that are TIFF inside, HEIC, AVIF and CR3 (ISO 14496-12, brands), RAF.
 * Throws the system's error, or NotPlain.
 */
export function noPhotograph(path: string): string | null {
  const { bytes, stat } = readPlain(path, HEAD);
  if (stat.size === 0n) return 'is empty';
  if (stat.size > BigInt(MOST_BYTES)) return `is larger than ${MOST_BYTES >> 20} MB`;
  return KINDS.some((kind) => kind.test(bytes.toString('latin1'))) ? null : 'is no photograph';
}

const HEAD = 64;
const BRANDS = 'hei[cxms]|hev[cxms]|mif[12]|msf1|avi[fs]|crx ';
const KINDS = [
  /^\xff\xd8\xff/,
  /^\x89PNG\r\n\x1a\n/,
  /^RIFF.{4}WEBP/s,
  /^GIF8[79]a/,
  /^(?:II[*+U]\0|MM\0[*+]|IIR[OS])/,
  /^FUJIFILMCCD-RAW/,
  new RegExp(`^.{4}ftyp(?:${BRANDS}|.{8,40}?(?:${BRANDS}))`, 's'),
];

/** Never throws: what is no picture says nothing. */
export function cameraOf(bytes: Uint8Array): Camera {
  let exif: Record<string, { value?: unknown; description?: string } | undefined>;
  try {
    const tags = ExifReader.load(Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength), {
      expanded: true,
      includeUnknown: false,
      // It would be told that there is nothing here to read that with.
      excludeTags: { xmp: true },
    });
    exif = (tags.exif ?? {}) as typeof exif;
  } catch {
    return NOTHING;
  }
  const said = (name: string) => exif[name]?.description ?? '';
  const clock =
    clockOf(said('DateTimeOriginal')) ??
    clockOf(said('DateTimeDigitized')) ??
    clockOf(said('DateTime'));
  const offset =
    /^[+-]\d\d:\d\d$/.exec(said('OffsetTimeOriginal') || said('OffsetTime'))?.[0] ?? null;
  const turn = Number(exif.Orientation?.value);
  return {
    clock,
    offset,
    orientation: Number.isInteger(turn) && turn >= 1 && turn <= 8 ? turn : 1,
  };
}

/** `2026:04:11 16:40:12`; a clock that was never set says only zeros. */
function clockOf(text: string): string | null {
  const [, y, mo, d, h, mi, s] =
    /^(\d{4})[:-](\d\d)[:-](\d\d)[ T](\d\d):(\d\d):(\d\d)/.exec(text) ?? [];
  return y === undefined || y === '0000' ? null : `${y}-${mo}-${d}T${h}:${mi}:${s}`;
}
