/** Before the engine runs for the first time again. */

import { byNoFigure, noFigureSaid } from '../../job/fold/no-figure.ts';
import { otherFigure, otherFigureSaid } from '../../job/fold/other-figure.ts';
import { isOther } from '../../job/fold/say-hole.ts';
import { backInOld, whyOld } from '../../job/judge/marks/used-once.ts';
import { inWords, type Words } from '../../job/truth/said.ts';
import { troubleOf } from '../../model/states/troubles.ts';
import { printInstant } from '../../model/time.ts';
import type { Job, TaskSpec, Where } from '../../model/types.ts';
import { capital, list, listNames, listPieces } from '../../model/words.ts';
import { isSeal } from '../../piece/seals.ts';
import type { Buy } from '../buy/list.ts';
import { isHere } from '../buy/state.ts';
import { CARES, caresOf } from '../care/care.ts';
import { RUNNING } from '../care/cautions.ts';
import { fillsIn, fluidsOf } from '../care/fluids.ts';
import { reachable } from '../order/graph.ts';
import { looseOf } from '../order/loose.ts';
import { isAway, isBack } from '../order/needed.ts';
import type { Standing } from '../order/standing.ts';
import { roundLeft } from '../piece/round-left.ts';
import { sayCureOf, untimedCure, untoldCures } from '../seal/cure.ts';
import { disturbedOf, sortsOf } from '../tests/disturbed.ts';
import { isControl, SORTS, sortRow } from '../tests/sorts.ts';
import { sayTime } from '../time/days.ts';
import { dueWhen, readingsIn } from '../time/due.ts';
import { insideItems } from './inside.ts';
import { type AskedItem, look, stopped, ticked, unticked, warn } from './items.ts';
import { fluidOut, hurtSince, looseSaid } from './stops.ts';

export function beforeStart(standing: Standing, buys: readonly Buy[]): AskedItem[] {
  const { job } = standing;
  const pieces = [...job.pieces.values()];
  const openings = [null, ...pieces.map((p) => p.spec.key)];
  const off = pieces.filter((p) => p.where !== 'home' && !isBack(p) && fingerTight(p).length === 0);
  const away = off.filter((p) => isAway(p) || !p.fitted);
  return [
    ...fluids(standing),
    ...unfilled(standing),
    ...fingerTightItems(standing),
    ...insideItems(standing, openings).filter((item) => item.done === false),
    ...threads(standing),
    ...others(standing),
    ...onceMore(standing),
    ...notNotedIn(buys),
    ...(away.length > 0 ? [unticked('off', `Not back: ${listPieces(away)}.`)] : []),
    ...off.filter((p) => !away.includes(p)).flatMap(unfinished),
    ...pieces.filter((p) => roundLeft(job, p).length > 0).map(notRound),
    ...noTorque(standing),
    ...troubles(standing),
    ...stillToDo(standing),
    ...waits(standing),
    ...curing(standing),
    ...curingUntimed(standing),
    ...controls(standing),
    ...RUNNING.map(({ key, say }) => warn(key, say)),
  ];
}

/** A bolt of another kind than belongs there, put in for a reason. */
function others({ job }: Standing): AskedItem[] {
  return [...job.pieces.values()].flatMap(({ spec, holes }) => {
    const odd = holes.filter(isOther);
    if (odd.length === 0) return [];
    const said = odd.map((h) => `${h.name} has ${h.holds?.kind}, not ${h.belongs?.kind}`);
    return [{ ...unticked(`other-${spec.key}`, `${spec.name}: ${list(said)}.`), loud: true }];
  });
}

/** Where a piece is that goes back, or is. */
const BACK: readonly Where[] = ['on', 'tight', 'tested'];

/** What is used once and went back in old, with the reason that was given; what only may be is a question. */
function onceMore({ job }: Standing): AskedItem[] {
  return [...job.pieces.values()].flatMap((piece) => {
    const { key, name } = piece.spec;
    const old = BACK.includes(piece.where) ? backInOld(job, piece) : [];
    if (old.length === 0) return [];
    const why = whyOld(job, piece).map((text) => `“${text}”`);
    const because = why.length === 0 ? '' : ` Because ${list(why)}.`;
    const say = `${name}: ${old.map((o) => o.say).join(' ')}${because}`;
    return [old.some((o) => o.sure) ? warn(`once-${key}`, say) : look(`once-${key}`, say)];
  });
}

/** What seals is here, its piece is back, and nobody noted that it went in. */
function notNotedIn(buys: readonly Buy[]): AskedItem[] {
  return buys
    .filter((buy) => buy.wentIn && !buy.ask && isHere(buy.state) && buy.state !== 'fitted')
    .filter(({ what }) => isSeal(what))
    .map(({ buy, what }) =>
      look(`fitted-${buy}`, `${what} is here, its piece is back, not noted as fitted: is it in?`),
    );
}

function fluids(standing: Standing): AskedItem[] {
  const items = fluidsOf(standing).map((fluid): AskedItem => {
    const key = `fluid-${fluid.drained}` as const;
    if (!fluid.out) return ticked(key, `In again: ${fluid.what}.`);
    // Without a task that fills it in, somebody has to say so.
    const done = fluid.fill === null ? null : false;
    const stop = fluidOut(standing, fluid);
    const way = fluid.fill === null ? {} : { way: { to: 'task', task: fluid.fill } as const };
    return {
      key,
      words: [`${capital(fluid.what)} is out. Fill it in.`],
      done,
      stops: true,
      stop,
      ...way,
    };
  });
  return [...items, look('levels', 'Oil, fuel and every other level looked at.')];
}

type Piece = Parameters<typeof isBack>[0];

/** Not tight yet: without a pass, or with some of its passes. */
function fingerTight(piece: Piece): string[] {
  return piece.holes.filter((h) => h.state === 'in').map((h) => h.name);
}

function fingerTightItems(standing: Standing): AskedItem[] {
  const { job } = standing;
  const loose = [...job.pieces.values()].filter((p) => fingerTight(p).length > 0);
  if (loose.length === 0) return [ticked('tight', 'Nothing is only finger-tight.')];
  return loose.map((piece) => {
    const { key, name } = piece.spec;
    const said = looseOf(job, piece).map(({ holes, lacks }) => {
      return `${list(holes)} ${lacks === null ? 'only finger-tight' : `not tight, ${lacks}`}`;
    });
    const stop = looseSaid(standing, piece);
    const say = `${name}: ${said.join('; ')}.`;
    return stopped(`tight-${key}`, say, stop, { to: 'tighten', piece: key });
  });
}

/** A thread that turns without tightening holds nothing. */
function threads(standing: Standing): AskedItem[] {
  return [...standing.job.pieces.values()].flatMap((piece) => {
    const pulled = piece.holes.filter(
      (h) => h.trouble !== null && troubleOf(h.trouble).atStart === 'stops',
    );
    if (pulled.length === 0) return [];
    const { key, name } = piece.spec;
    const say = `${name}: thread pulled in ${listNames(pulled)}.`;
    const stop = `${name}: ${hurtSince(standing, piece, pulled)}. It holds nothing: mend it.`;
    return [
      stopped(`thread-${key}`, say, stop, { to: 'mend', piece: key, hole: pulled[0]?.name ?? '' }),
    ];
  });
}

function troubles(standing: Standing): AskedItem[] {
  return [...standing.job.pieces.values()].flatMap((piece) => {
    const hurt = piece.holes.filter(
      (h) => h.trouble !== null && troubleOf(h.trouble).atStart === 'loud',
    );
    if (hurt.length === 0) return [];
    const { key, name } = piece.spec;
    return [
      {
        ...unticked(`trouble-${key}`, `${name}: ${hurtSince(standing, piece, hurt)}.`),
        loud: true,
      },
    ];
  });
}

/** Its bolts are tight, and it was not gone round once more. */
function notRound({ spec }: Piece): AskedItem {
  return unticked(`round-${spec.key}`, `${spec.name}: not gone once round at full torque.`);
}

/** Tightened by no figure, or by another than is printed: only the manual and a wrench tell whether it holds. */
function noTorque({ job }: Standing): AskedItem[] {
  return [...job.pieces.values()].flatMap((piece) => {
    const { key, name } = piece.spec;
    const back = BACK.includes(piece.where);
    const unknown = back ? noFigureSaid(piece, byNoFigure(job, piece)) : null;
    const other = back ? otherFigureSaid(otherFigure(job, piece)) : null;
    const said = [
      ...(unknown === null ? [] : [`${unknown}. Look it up, and go round with it.`]),
      ...(other === null
        ? []
        : [`${other}. Set it right; what was too tight may be harmed: the manual says.`]),
    ];
    if (said.length === 0) return [];
    const say = `${name}: ${said.join(' ')}`;
    const cared = caresOf(piece.spec).care.length > 0;
    return [cared ? warn(`torque-${key}`, say) : look(`torque-${key}`, say)];
  });
}

/** It lies on its place, and a bolt is missing or in conflict. */
function unfinished(piece: Piece): AskedItem[] {
  const { key, name } = piece.spec;
  const odd = piece.holes.filter((h) => h.conflict !== null).map((h) => h.name);
  const empty = piece.holes
    .filter((h) => h.state === 'out' && h.trouble === null && h.conflict === null)
    .map((h) => h.name);
  const said = [
    ...(empty.length > 0 ? [`no bolt in ${list(empty)}`] : []),
    ...(odd.length > 0 ? [`two marks differ at ${list(odd)}`] : []),
  ];
  const say = said.length === 0 ? `Not back: ${name}.` : `${name}: ${said.join('; ')}.`;
  return [{ ...unticked(`part-back-${key}`, say), loud: true }];
}

/** Tasks that are to be done before anything runs: not what is done while a piece is off, nor what follows a test. */
function openTasks({ job, relations, finished }: Standing): TaskSpec[] {
  const tests = relations.steps.flatMap((s, i) => (s.kind === 'test' ? [i] : []));
  const later = reachable(relations.graph, tests);
  return [...job.tasks.values()]
    .map((task) => task.spec)
    .filter(({ key, while: during, before }) => {
      const place = relations.at.get(key) ?? -1;
      const open = finished.done[place] !== true && !later.has(place);
      return open && during.length === 0 && before.length === 0;
    });
}

/** Without oil it does not run twice; whatever else is to be filled in is told. */
const RUNS_DRY = /\boil\b/i;

/** What is to be filled in, and nobody noted that it was let out. */
function unfilled(standing: Standing): AskedItem[] {
  const told = new Set(fluidsOf(standing).flatMap((fluid) => fluid.fill ?? []));
  return openTasks(standing)
    .filter((task) => task.verb === 'do' && fillsIn(task.say.text) && !told.has(task.key))
    .map((task) => {
      const say: Words = ['Not noted as done: ', task.say, '.'];
      if (!RUNS_DRY.test(task.say.text))
        return { ...unticked(`fill-${task.key}`, say), loud: true };
      return stopped(`fill-${task.key}`, say, `${inWords(say)} Do it, and say so.`, {
        to: 'task',
        task: task.key,
      });
    });
}

/** Words that say that the machine has run before: `after the first heat`, `when hot`. */
const HAS_RUN =
  /\b(?:after|at) (?:the |a )?(?:first|short|test)\b|\bfirst (?:heat|run|ride)\b|\b(?:hot|warm)\b/i;

/** Due only once the machine has run for so long, or so far: before the start it is not missing. */
export function followsStart(job: Job, { say, when }: Pick<TaskSpec, 'say' | 'when'>): boolean {
  if (when === null) return false;
  const { by, state } = dueWhen(when.text, null, readingsIn(job), null, { seconds: 0, offset: 0 });
  return (by !== 'days' && state === 'later') || HAS_RUN.test(`${say.text} ${when.text}`);
}

/** Other work of the file, and controls that are to be set. What is set hot or later comes after the first start. */
function stillToDo(standing: Standing): AskedItem[] {
  return openTasks(standing).flatMap((task) => {
    const { say, limit } = task;
    const within: Words = limit === null ? [] : [' (', limit, ')'];
    if (task.verb === 'adjust' && task.when === null) {
      return [unticked(`adjust-${task.key}`, ['Not adjusted yet: ', say, ...within, '.'])];
    }
    if (task.verb !== 'do' || fillsIn(say.text) || followsStart(standing.job, task)) return [];
    const when = task.when === null ? [] : [', ', task.when];
    return [unticked(`task-${task.key}`, ['Still to do: ', say, ...when, '.'])];
  });
}

function waits({ job, relations, finished, now }: Standing): AskedItem[] {
  return [...finished.running].flatMap(([place, { until }]) => {
    const key = relations.steps[place]?.key ?? '';
    const spec = job.tasks.get(key)?.spec;
    const say = spec?.say ?? key;
    const end =
      until === null
        ? ''
        : ` until ${sayTime(printInstant({ ...now, seconds: until }), printInstant(now))}`;
    return [unticked(`wait-${key}`, [`Not over${end}: `, say, '.'])];
  });
}

/**
 * It breaks nothing by itself and so does not stop: a joint that was loaded too early weeps, and is made again. But it
 * is told loudly, and no tick hides it.
 */
function curing(standing: Standing): AskedItem[] {
  return untoldCures(standing).map((cure) => ({
    ...unticked(`cure-${cure.piece}`, sayCureOf(cure, printInstant(standing.now))),
    loud: true,
  }));
}

/** A joint that was made anew and cures, nobody knows how long: only the tube tells. */
function curingUntimed(standing: Standing): AskedItem[] {
  return disturbedOf(standing.job, standing.lines).flatMap((piece) => {
    const says = isBack(piece) ? untimedCure(standing, piece) : null;
    if (says === null) return [];
    const { key, name } = piece.spec;
    return [look(`cure-${key}`, [`${name}: `, says, '. How long was not read: look at the tube.'])];
  });
}

function controls({ job, lines }: Standing): AskedItem[] {
  return disturbedOf(job, lines).flatMap((piece) => {
    const sorts = sortsOf(piece.spec);
    const moved = SORTS.filter(isControl).flatMap((sort) => {
      return sorts.includes(sort) ? [[sort, sortRow(sort).control ?? '', false] as const] : [];
    });
    const cared = caresOf(piece.spec).care.flatMap((care) => {
      const { start } = CARES[care];
      return start === null ? [] : [[care, start.say, start.stops] as const];
    });
    return [...moved, ...cared].map(
      ([sort, say, stops]): AskedItem => ({
        key: `${sort}-${piece.spec.key}`,
        words: [`${piece.spec.name}: ${say}.`],
        done: null,
        stops,
      }),
    );
  });
}
