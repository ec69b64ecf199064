/** Lines of a job file that are not taken as they stand, in words: what they say counts nowhere. */
import type { Fault, Job, UnreadLine } from '../../model/types.ts';
import { list } from '../../model/words.ts';

/** Errors by which no word of the file is lost: all of its lines were read. */
const ALL_READ: readonly string[] = ['missing', 'no-version', 'bad-version'];

/** Whether what stands in the line of such a fault counts nowhere, or not as it stands. */
export function losesALine({ code, severity }: Pick<Fault, 'code' | 'severity'>): boolean {
  return severity === 'error' && !ALL_READ.includes(code);
}

/** More lines than this are counted. */
const MOST = 6;

/** `line 12 (bad-time) and line 20 (bad-name)`. */
export function sayLines(unread: readonly UnreadLine[]): string {
  const named = unread.slice(0, MOST).map(({ line, code }) => `line ${line} (${code})`);
  const more = unread.length - named.length;
  return list(more > 0 ? [...named, `${more} more`] : named);
}

/** The file has a newer form than this program knows: what it says may be right there. */
export function isNewer({ unread }: Pick<Job, 'unread'>): boolean {
  return unread.some(({ code }) => code === 'newer-version');
}

/** `Not all of the job could be read: line 12 (bad-time) does not count.`; null where all of it was. */
export function unreadSaid(job: Pick<Job, 'unread'>): string | null {
  const { unread } = job;
  if (unread.length === 0) return null;
  if (isNewer(job))
    return 'Not all of the job could be read: its file has a newer form than this putback knows.';
  const verb = unread.length === 1 ? 'does' : 'do';
  return `Not all of the job could be read: ${sayLines(unread)} ${verb} not count.`;
}
