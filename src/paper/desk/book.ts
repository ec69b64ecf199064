/** A report with its photographs: which are shown, and what is to be written for them. */
import { basename, dirname, join } from 'node:path';
import { findBench } from '../../diary/bench.ts';
import type { Job } from '../../model/types.ts';
import { isPaper, type NoPaper, type Paper } from '../ask.ts';
import { type ReportAsk, report } from '../report.ts';
import { type Pictures, picturesOf, withPictures, writeFileBeside } from './pictures.ts';
import { writePage } from './write-page.ts';

export interface BookAsk extends Omit<ReportAsk, 'jobs' | 'pictures'> {
  jobs: readonly { job: Job; file: string }[];
  /** Where the page goes; null: nowhere, it is only made. */
  to: string | null;
  /** Stands in the page for each picture until it is written: nobody can have guessed it. */
  nonce: string;
}

export interface BookMade {
  made: Paper;
  /** The page in parts: each picture is read when its turn comes. */
  parts: Iterable<string>;
  /** Pictures that go beside the page, and the folder for them. */
  beside: { folder: string; files: ReadonlyMap<string, string> } | null;
}

export function book(ask: BookAsk): BookMade | NoPaper {
  const { to, inside, nonce } = ask;
  const folder = to === null ? '' : `${basename(to).replace(/\.html?$/i, '')}.pictures`;
  let count = 0;
  const sourceOf = (end: string): string => {
    count += 1;
    const name = `${String(count).padStart(3, '0')}.${end}`;
    return inside ? `data:${nonce}-${name}` : `${encodeURIComponent(folder)}/${name}`;
  };
  const found = ask.jobs.map(({ job, file }): Pictures => {
    const root = findBench(dirname(file))?.folder ?? dirname(file);
    return picturesOf(job, file, root, sourceOf);
  });
  const files = new Map(found.flatMap((f) => [...f.files]));
  const jobs = ask.jobs.map(({ job }) => job);
  const made = report({ ...ask, jobs, pictures: found.map((f) => f.shown) });
  if (!isPaper(made)) return made;
  if (inside) return { made, parts: withPictures(made.html, { files }), beside: null };
  const beside =
    to === null || files.size === 0 ? null : { folder: join(dirname(to), folder), files };
  return { made, parts: [made.html], beside };
}

/** Writes the pictures, then the page. */
export function writeBook({ parts, beside }: BookMade, to: string, nonce: string) {
  if (beside !== null) {
    const written = writeFileBeside(beside.folder, beside.files);
    if (!written.ok) return written;
  }
  return writePage(to, parts, nonce);
}
