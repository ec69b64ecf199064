/** What follows from a job: what is to be looked at again or done after a day, a distance or so many hours. */
import { choresOf } from '../memory/due.ts';
import type { Job } from '../model/types.ts';
import { followsStart } from '../plan/gates/start.ts';
import { testList } from '../plan/tests/testlist.ts';

const said = (parts: readonly (string | null)[]) => parts.filter((s) => s !== null).join(', ');

/** `Retorque the head, after the first heat, due 2026-05-02`: one sentence each; `now` is RFC 3339. */
export function followsFrom(job: Job, now: string): string[] {
  const items = testList(job, now).filter(
    (i) => i.state === 'later' || i.state === 'due' || i.state === 'failed',
  );
  return [
    ...items.map((i) => said([i.say, i.when, i.due === null ? null : `due ${i.due.slice(0, 10)}`])),
    // What is to be done after a time or a distance: `after 50 km, at 41280 km`.
    ...choresOf(job, now).map((c) =>
      said([c.say, c.when, c.due && `due ${c.due}`, c.at && `at ${c.at}`]),
    ),
  ];
}

/** What the file says already of after the start, while nothing of it has begun to count. Other work is wanting before it. */
export function followsLater(job: Job): string[] {
  return [...job.tasks.values()].flatMap(({ spec, done }) =>
    spec.when === null || done !== null || (spec.verb === 'do' && !followsStart(job, spec))
      ? []
      : [said([spec.say.text.replace(/\.$/, ''), spec.when.text])],
  );
}
