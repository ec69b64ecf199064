/** May a printed text be called not so? Only one that stands there, and by a truth that can be read. */

import type { Correctable, Job, Subject, Verdict } from '../../../model/types.ts';
import { WRITABLE } from '../../../model/types.ts';
import { holeNames } from '../../../piece/order.ts';
import { type Figure, figuresOf, figuresOfHole, isPrinted } from '../../truth/corrections.ts';
import {
  HOLE_TEXTS,
  holesIn,
  PIECE_TEXTS,
  spelled,
  TASK_TEXTS,
  truthFault,
} from '../../truth/figures.ts';
import {
  already,
  list,
  meant,
  noPiece,
  type Stamp,
  type Wished,
  write,
  wrong,
} from '../base/verdict.ts';

type Wish = Wished<'correct'>;
type Wrong = ReturnType<typeof wrong>;

export function judgeCorrect(job: Job, wish: Wish, stamp: Stamp): Verdict {
  const found = figuresFor(job, wish);
  if ('ok' in found) return found;
  const { of, name, figures } = found;
  const { what } = wish;
  const truth = spelled(what, wish.truth);
  const fault = truthFault(what, truth) ?? orderFault(job, of, what, truth);
  if (fault !== null) return wrong('bad-truth', fault, { what });
  const figure = pick(figures, wish, name);
  if ('ok' in figure) return figure;
  const was = spelled(what, figure.text);
  if (was === truth) return already();
  const place = {
    ...(of.piece === undefined ? {} : { piece: of.piece }),
    ...(of.hole === undefined ? {} : { hole: [of.hole] }),
    ...(of.task === undefined ? {} : { task: of.task }),
  };
  const along = wish.came === undefined ? {} : { came: wish.came };
  const entry = { verb: 'corrected', value: what, ...place, was, ...along } as const;
  return write(stamp, { ...wish, says: truth }, entry);
}

/** The texts of that kind, and how the thing is called; a refusal where there can be none. */
function figuresFor(
  job: Job,
  wish: Wish,
): { of: Subject; name: string; figures: Figure[] } | Wrong {
  const of = (({ piece, hole, task }) => ({
    ...(piece === undefined ? {} : { piece }),
    ...(hole === undefined ? {} : { hole }),
    ...(task === undefined ? {} : { task }),
  }))(wish);
  const only = (figures: Figure[]) =>
    figures.filter((f) => f.what === wish.what && f.hole === of.hole);
  if (of.piece !== undefined) {
    const now = job.pieces.get(of.piece);
    const spec = job.upper.pieces.get(of.piece);
    if (!now) return noPiece(job, of.piece);
    const { name } = now.spec;
    if (of.hole === undefined) {
      if (!PIECE_TEXTS.some((l) => l.what === wish.what))
        return noSuch(name, 'a piece', PIECE_TEXTS, wish.what);
      return { of, name, figures: only(figuresOf(job, { piece: of.piece })) };
    }
    if (!spec || !isPrinted(spec, of.hole)) {
      const has = spec ? holeNames(spec) : [];
      const holes = has.length === 0 ? 'the file has none' : `it has ${has[0]} to ${has.at(-1)}`;
      return wrong('no-such-hole', `${name} has no hole ${of.hole}: ${holes}.`, { hole: of.hole });
    }
    if (!HOLE_TEXTS.some((l) => l.what === wish.what))
      return noSuch(name, 'a hole', HOLE_TEXTS, wish.what);
    const figures = figuresOfHole(job, { piece: of.piece, hole: of.hole });
    return { of, name: `Hole ${of.hole} of ${name}`, figures: only(figures) };
  }
  const key = of.task ?? '';
  if (!job.upper.tasks.has(key)) {
    const say = `No task ${key} in this job.${meant(key, job.upper.tasks.keys())}`;
    return wrong('no-such-task', say, { task: key });
  }
  if (!TASK_TEXTS.some((l) => l.what === wish.what))
    return noSuch(key, 'a task', TASK_TEXTS, wish.what);
  return { of, name: key, figures: only(figuresOf(job, { task: key })) };
}

function noSuch(
  name: string,
  kind: string,
  lenses: readonly { what: Correctable }[],
  what: Correctable,
): Wrong {
  const all = [...new Set(lenses.map((l) => l.what))];
  return wrong('no-such-figure', `${name}: ${kind} has no ${what}. It has ${list(all)}.`, { what });
}

/** An order names each hole of the piece once, as the reader of the file wants it. */
function orderFault(job: Job, of: Subject, what: Correctable, truth: string): string | null {
  const spec = job.upper.pieces.get(of.piece ?? '');
  if (what !== 'sequence' || !spec) return null;
  return orderIn(holeNames(spec), truth);
}

/** What is wrong with an order of these holes, in a sentence; null when each is there once, or none is known. */
export function orderIn(holes: readonly string[], order: string): string | null {
  const said = holesIn(order);
  const missing = holes.filter((hole) => !said.includes(hole));
  const odd = holes.length === 0 ? [] : said.filter((hole) => !holes.includes(hole));
  if (missing.length > 0) return `The order leaves out ${list(missing)}.`;
  return odd.length > 0 ? `The order names ${list(odd)}, and there is no such hole.` : null;
}

function pick(figures: readonly Figure[], wish: Wish, name: string): Figure | Wrong {
  const { what } = wish;
  const [only, ...more] = figures;
  if (!only) {
    const way = (WRITABLE as readonly string[]).includes(what)
      ? ' Put it in with putback write.'
      : '';
    return wrong('nothing-printed', `${name}: nothing is printed about ${what}.${way}`, { what });
  }
  const texts = [...new Set(figures.map((f) => f.text))];
  if (wish.printed === undefined) {
    if (more.length === 0 || texts.length === 1) return only;
    return which(`${name} has several: say which one is not so, by its start.`, texts, what);
  }
  const start = spelled(what, wish.printed);
  const says = (f: Figure) =>
    [f.text, ...(f.printed === null ? [] : [f.printed])].map((t) => spelled(what, t));
  const exact = figures.filter((f) => says(f).includes(start));
  const found =
    exact.length > 0 ? exact : figures.filter((f) => says(f).some((t) => t.startsWith(start)));
  const [first] = found;
  if (first && new Set(found.map((f) => f.text)).size === 1) return first;
  const say = first ? `several begin with “${start}”.` : `none begins with “${start}”.`;
  return which(`${name}: ${say}`, texts, what);
}

function which(say: string, texts: readonly string[], what: Correctable): Wrong {
  return wrong('which-text', [say, ...texts.map((text) => `  ${text}`)].join('\n'), {
    what,
    texts,
  });
}
