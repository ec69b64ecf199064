/** Paper from the screens: as it is usual, beside the job; and photographs, handed to the desktop. */
import { basename, dirname, join, resolve } from 'node:path';
import { findBench } from '../../diary/bench.ts';
import { findUser } from '../../diary/user.ts';
import { disk, errorCode } from '../../job/save/disk.ts';
import { lookAt } from '../../job/save/plain.ts';
import type { Job } from '../../model/types.ts';
import { type Ask, isPaper, type NoPaper, type Paper, type PaperName } from '../ask.ts';
import { blank } from '../blank.ts';
import { card } from '../card.ts';
import { labels } from '../labels.ts';
import { sheet } from '../sheet.ts';
import { steps } from '../steps.ts';
import { tag } from '../tag.ts';
import { type BookMade, book, writeBook } from './book.ts';
import { type Desktop, openFile } from './open.ts';
import { pictureName } from './photo-files.ts';

export interface Print {
  job: Job;
  /** Whole path of the job file. */
  file: string;
  what: PaperName;
  piece: string | null;
  open: boolean;
}

interface Outside extends Desktop {
  now(): string;
  id(): string;
}

/** `cover-card-alternator.html` beside `cover.yaml`. */
export function besideJob(file: string, what: PaperName, piece: string | null): string {
  const stem = basename(file).replace(/\.ya?ml$/i, '');
  return join(dirname(file), `${stem}-${what}${piece === null ? '' : `-${piece}`}.html`);
}

/** One sentence: where it lies, or why there is none. */
export async function printPaper(print: Print, outside: Outside): Promise<string> {
  const { file, what, open } = print;
  const to = besideJob(file, what, print.piece);
  const made = make(print, to, outside);
  if ('say' in made) return made.say;
  const written = writeBook(made, to, outside.id());
  if (!written.ok) return `Not saved. ${written.say} ${written.fix}`;
  const failed = open ? await openFile(to, outside) : null;
  return failed === null ? `Page: ${to}` : `Page: ${to}. Not opened: ${failed}`;
}

const LABEL = { width: 70, height: 37 };

function make(print: Print, to: string, { now, id, env }: Outside): BookMade | NoPaper {
  const { job, file, what } = print;
  const piece = print.piece === null ? null : (job.pieces.get(print.piece) ?? null);
  const wrenches = findBench(dirname(file))?.wrenches ?? [];
  const ask: Ask = { job, now: now(), size: findUser(env).settings.paper, piece, wrenches };
  if (what === 'report') {
    return book({ ...ask, jobs: [{ job, file }], by: null, inside: false, to, nonce: id() });
  }
  const made = plain(ask, what);
  return isPaper(made) ? { made, parts: [made.html], beside: null } : made;
}

function plain(ask: Ask, what: Exclude<PaperName, 'report'>): Paper | NoPaper {
  switch (what) {
    case 'card':
      return ask.piece === null
        ? { code: 'no-piece', say: 'Of which piece?' }
        : card({ ...ask, piece: ask.piece, across: null });
    case 'blank':
      return blank({ ...ask, row: new Array<null>(12).fill(null), name: '' });
    case 'labels':
      return labels({ ...ask, label: LABEL, all: false });
    case 'tag':
      return tag({ ...ask, who: null });
    case 'steps':
      return steps(ask);
    case 'sheet':
      return sheet({ ...ask, question: null, show: new Set() });
  }
}

/** Only what is a picture by its name and a file by what lies there: a diary may come from anybody. */
export async function showPicture(job: string, said: string, desktop: Desktop): Promise<string> {
  const path = resolve(dirname(job), said);
  if (!pictureName(path)) return `${basename(path)} is no photograph by its name.`;
  try {
    const there = lookAt(disk, path);
    if (there === null) return `${basename(path)} is not there any more.`;
    if (there.odd !== null) return `${basename(path)} is ${there.odd}.`;
  } catch (error) {
    if (errorCode(error) === null) throw error;
    return `${basename(path)} cannot be reached.`;
  }
  const failed = await openFile(path, desktop);
  return failed === null ? `Opened: ${basename(path)}` : `Not opened: ${failed}`;
}
