/** Where nothing can be done now: what is to be tested, or what the job waits for. */
import type { Job } from '../../model/types.ts';
import { sayBought } from '../buy/say.ts';
import { testsNow } from '../tests/testlist.ts';
import { sayTime } from '../time/days.ts';
import type { Back } from './back.ts';
import { sayWait } from './note.ts';

/** `Nothing is next: it waits for HL-1142 gasket, promised for 5 May.` `now` is RFC 3339. */
export function nothingNext(job: Job, back: Back, now: string): string {
  if (back.due.length > 0) return 'Nothing is left to do but what is to be tested.';
  const later = testsNow(job, now).filter((test) => test.state === 'later');
  const waits = [
    ...back.awaited.map((b) => `${b.what}, ${sayBought(b, now)}`),
    ...back.waits.map((wait) => sayWait(wait, now)),
    ...back.cures.map(({ name, says, until }) => sayWait({ say: `${name}, ${says}`, until }, now)),
    ...later.map(({ say, due, when }) => {
      const day = due === null ? when : sayTime(due, now);
      return day === null ? withoutStop(say) : `${withoutStop(say)} (${day})`;
    }),
  ];
  if (waits.length > 0) return `Nothing is next: it waits for ${waits.join('; ')}.`;
  if (job.pieces.size + job.tasks.size === 0)
    return 'No piece is noted yet: say what comes off first.';
  const isBack = [...job.pieces.values()].some((p) => p.where === 'tight');
  return isBack && testsNow(job, now).length === 0
    ? 'Nothing is next, and no test says that it holds: add one, or note what you saw.'
    : 'Nothing is next.';
}

const withoutStop = (text: string): string => text.replace(/\.$/, '');
