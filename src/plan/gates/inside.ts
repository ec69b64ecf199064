/** What went into an opening and has to come out of it again: rags, plugs, magnets, the tangs of inserts. */

import { slug } from '../../model/slug.ts';
import { printInstant } from '../../model/time.ts';
import { countedInside, type Inside, sayThing } from '../order/inside.ts';
import type { Standing } from '../order/standing.ts';
import { sayOn } from '../time/days.ts';
import { type AskedItem, look, stopped, ticked } from './items.ts';
import { stillInside } from './stops.ts';

/** Each thing that went into these openings; what is still inside stops. */
export function insideItems(standing: Standing, pieces: readonly (string | null)[]): AskedItem[] {
  const counts = countedInside(standing.lines).filter((thing) => pieces.includes(thing.piece));
  return counts.map((thing) => {
    const about = [thing.piece, slug(thing.what)].filter((part) => part !== null).join('-');
    const key = `inside-${about}` as const;
    const say = sayInside(standing, thing);
    if (thing.count === 0) return ticked(key, say);
    const { piece, what, count } = thing;
    return stopped(key, say, stillInside(standing, thing), { to: 'out', piece, what, count });
  });
}

/** Noted without an opening: nobody knows which piece shuts it in. */
export function anywhere(standing: Standing): AskedItem[] {
  const now = printInstant(standing.now);
  return countedInside(standing.lines)
    .filter((thing) => thing.piece === null && thing.count > 0)
    .map((thing) => {
      const since = `${sayThing(thing)} went in ${sayOn(thing.since, now)}, nobody noted where`;
      return look(`elsewhere-${slug(thing.what)}`, `Not in here: ${since}.`);
    });
}

function sayInside({ job }: Standing, thing: Inside): string {
  const where =
    thing.piece === null ? '' : ` (${job.pieces.get(thing.piece)?.spec.name ?? thing.piece})`;
  if (thing.count === 0)
    return `${sayThing({ ...thing, count: thing.total })} in, and out again${where}.`;
  return `${sayThing(thing)} still inside${where}.`;
}

/** Holes of these pieces that were mended with a wire insert in this round, by what was said then. */
export function insertsFitted({ lines, rounds }: Standing, pieces: readonly string[]): number {
  return lines.all
    .filter((l) => l.verb === 'state' && l.value === 'mended' && /\binsert/i.test(l.says ?? ''))
    .filter((l) => l.piece !== undefined && pieces.includes(l.piece))
    .filter((l) => l.index > rounds(l.piece ?? '').start)
    .reduce((sum, l) => sum + (l.hole?.length ?? 1), 0);
}
