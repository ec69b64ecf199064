/** A photograph that belongs to the job, a piece, or a hole of it. */
import type { Job, Verdict } from '../../../model/types.ts';
import { TIME } from '../../diary/entry.ts';
import { livingEntries } from '../../diary/living.ts';
import { already, placeNamed, type Stamp, type Wished, write, wrong } from '../base/verdict.ts';

export function judgePhoto(job: Job, wish: Wished<'photo'>, stamp: Stamp): Verdict {
  const { picture, taken } = wish;
  if (picture.trim() === '') return wrong('no-picture', 'Which photograph?');
  if (taken !== undefined && !TIME.test(taken)) {
    return wrong(
      'bad-time',
      `${taken} is no time with its offset, like 2026-04-11T18:25:40+02:00.`,
    );
  }
  const place = placeNamed(job, wish);
  if ('ok' in place) return place;
  const there = livingEntries(job.entries).some(
    (e) =>
      e.verb === 'photo' &&
      e.value === picture &&
      e.piece === place.piece &&
      e.hole?.join() === place.hole?.join(),
  );
  if (there) return already();
  const time = taken === undefined ? {} : { shot: taken };
  return write(stamp, wish, { verb: 'photo', value: picture, ...place, ...time });
}
