/** Photographs of a report: stripped of all that they tell beside the picture, in the page or in a folder beside it. */
import { basename, join } from 'node:path';
import { crc32, deflateSync, inflateSync } from 'node:zlib';
import { livingEntries } from '../../job/diary/living.ts';
import { disk, errorCode, writeNew } from '../../job/save/disk.ts';
import { failOf, type SaveFail, saveFail } from '../../job/save/fail.ts';
import { lookAt, readPlain } from '../../job/save/plain.ts';
import { secondsOf } from '../../model/time.ts';
import type { Job } from '../../model/types.ts';
import { list } from '../../model/words.ts';
import type { ReportPicture } from '../report.ts';
import { type Packing, type PictureKind, pictureKind, stripped } from '../strip.ts';
import { cameraOf, MOST_BYTES } from './camera.ts';
import { shownFrom } from './photo-files.ts';

/** What stands in the page in the place of a picture until it is written. */
export interface Pictures {
  shown: ReportPicture[];
  /** The file behind each place that stands in a source, by that source. */
  files: Map<string, string>;
}

/** A profile of colours is a few kB. */
const MOST_PROFILE = 4 << 20;
export const PACKING: Packing = {
  inflate: (bytes) => inflateSync(bytes, { maxOutputLength: MOST_PROFILE }),
  deflate: (bytes) => deflateSync(bytes),
  crc32: (bytes) => crc32(bytes),
};

const ENDS: Readonly<Record<PictureKind, string>> = {
  'image/jpeg': 'jpg',
  'image/png': 'png',
  'image/webp': 'webp',
};

/**
 * The photographs of a job in the order in which they were taken. `root`: the bench; nothing outside of it is shown.
 * `sourceOf` makes an address that stands in the page for the n-th picture.
 */
export function picturesOf(
  job: Job,
  file: string,
  root: string,
  sourceOf: (end: string, kind: PictureKind) => string,
): Pictures {
  const files = new Map<string, string>();
  const entries = livingEntries(job.entries).filter((e) => e.verb === 'photo');
  const shown = entries.map((entry): ReportPicture => {
    const piece = entry.piece === undefined ? null : job.pieces.get(entry.piece);
    const name = piece?.spec.name ?? entry.piece ?? null;
    const known = {
      piece: entry.hole && name !== null ? `${name}, hole ${list(entry.hole)}` : name,
      name: basename(entry.value),
      taken: entry.shot ?? '',
      says: entry.says ?? null,
    };
    const path = shownFrom(file, root, entry.value);
    if (path === null) {
      const why = 'it lies outside of the bench. photo --copy puts it beside the job.';
      return { ...known, source: null, why };
    }
    const read = clean(path);
    if (typeof read === 'string') return { ...known, source: null, why: read };
    const source = sourceOf(ENDS[read.kind], read.kind);
    files.set(source, path);
    return { ...known, source, why: '' };
  });
  return {
    // Of two cameras one may have its clock in another zone.
    shown: shown.sort((a, b) => (secondsOf(a.taken) || 0) - (secondsOf(b.taken) || 0)),
    files,
  };
}

/** The picture alone, or why it is not to be had. */
function clean(path: string): { kind: PictureKind; bytes: Uint8Array } | string {
  let read: ReturnType<typeof readPlain>;
  try {
    read = readPlain(path, MOST_BYTES);
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return 'it is not there any more.';
    return failOf(error, path, 'read').say;
  }
  if (!read.whole) return 'it is too large.';
  const kind = pictureKind(read.bytes);
  if (kind === null)
    return 'only of JPEG, PNG and WebP can be taken out what they tell of place and owner.';
  const bytes = stripped(read.bytes, cameraOf(read.bytes).orientation, PACKING);
  return bytes === null ? 'it is broken.' : { kind, bytes };
}

/** The page in parts, each picture in its place as a data: address, read only when its turn comes. */
export function* withPictures(html: string, { files }: Pick<Pictures, 'files'>): Iterable<string> {
  let rest = html;
  for (const [source, path] of inOrder(html, files)) {
    const at = rest.indexOf(source);
    yield rest.slice(0, at);
    const read = clean(path);
    if (typeof read !== 'string') {
      yield `data:${read.kind};base64,`;
      yield Buffer.from(read.bytes.buffer, read.bytes.byteOffset, read.bytes.byteLength).toString(
        'base64',
      );
    }
    rest = rest.slice(at + source.length);
  }
  yield rest;
}

function inOrder(html: string, files: ReadonlyMap<string, string>): [string, string][] {
  return [...files]
    .filter(([source]) => html.includes(source))
    .sort(([a], [b]) => html.indexOf(a) - html.indexOf(b));
}

/** A folder with this in it is ours, and its pictures may be written anew. */
const MARK = '.putback-pictures';

/** Stripped copies in a folder beside the page; `names` are those of the sources, behind the folder's. */
export function writeFileBeside(
  folder: string,
  files: ReadonlyMap<string, string>,
): { ok: true } | SaveFail {
  try {
    const there = lookAt(disk, folder);
    if (there === null) {
      disk.mkdirSync(folder);
      writeNew(disk, join(folder, MARK), '', { sync: false });
    } else if (there.odd !== 'a folder' || lookAt(disk, join(folder, MARK)) === null) {
      return saveFail(
        'exists',
        `${folder} is there already, and putback did not make it.`,
        'Choose another name with -o.',
      );
    }
    for (const [source, path] of files) {
      const to = join(folder, basename(decodeURIComponent(source)));
      const read = clean(path);
      if (lookAt(disk, to)?.odd === null) disk.unlinkSync(to);
      if (typeof read !== 'string') writeNew(disk, to, read.bytes, { sync: false });
    }
    return { ok: true };
  } catch (error) {
    return failOf(error, folder);
  }
}
