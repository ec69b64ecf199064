/** Before the engine runs for the first time again. */
import { list } from '../../job/judge/parts.ts';
import { RUNNING } from '../cautions.ts';
import { disturbedOf, type Sort, sortsOf } from '../disturbed.ts';
import { fluidsOf } from '../fluids.ts';
import { isBack } from '../needed.ts';
import { withPrintedTask } from '../say.ts';
import type { Standing } from '../standing.ts';
import { printInstant } from '../time.ts';
import { type Asked, known, look } from './items.ts';
import { insideItems } from './piece.ts';

export function beforeStart(standing: Standing): Asked[] {
  const { job } = standing;
  const pieces = [...job.pieces.values()];
  const openings = [null, ...pieces.map((p) => p.spec.key)];
  const off = pieces.filter((p) => p.where !== 'home' && !isBack(p) && fingerTight(p).length === 0);
  return [
    ...fluids(standing),
    ...fingerTightItems(standing),
    ...insideItems(standing, openings).filter((item) => item.done === false),
    ...threads(standing),
    ...(off.length > 0
      ? [known('off', `Not back: ${list(off.map((p) => p.spec.name))}.`, false)]
      : []),
    ...waits(standing),
    ...controls(standing),
    ...RUNNING.map(({ key, say }) => look(key, say)),
  ];
}

function fluids(standing: Standing): Asked[] {
  const items = fluidsOf(standing).map((fluid): Asked => {
    const key = `fluid-${fluid.drained}`;
    if (!fluid.out) return known(key, `In again: ${fluid.what}.`, true, true);
    // Without a task that fills it in, somebody has to say so.
    const done = fluid.fill === null ? null : false;
    return { key, say: `${sentence(fluid.what)} is out. Fill it in.`, done, stops: true };
  });
  return [...items, look('levels', 'Oil, fuel and every other level looked at.')];
}

function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

type Piece = Parameters<typeof isBack>[0];

function fingerTight(piece: Piece): string[] {
  return piece.holes.filter((h) => h.state === 'in').map((h) => h.name);
}

function fingerTightItems({ job }: Standing): Asked[] {
  const loose = [...job.pieces.values()].filter((p) => fingerTight(p).length > 0);
  if (loose.length === 0) return [known('tight', 'Nothing is only finger-tight.', true, true)];
  return loose.map((piece) => {
    const say = `${piece.spec.name}: ${list(fingerTight(piece))} only finger-tight.`;
    return known(`tight-${piece.spec.key}`, say, false, true);
  });
}

/** A thread that turns without tightening holds nothing. */
function threads({ job }: Standing): Asked[] {
  return [...job.pieces.values()].flatMap((piece) => {
    const pulled = piece.holes.filter((h) => h.trouble === 'pulled').map((h) => h.name);
    if (pulled.length === 0) return [];
    const say = `${piece.spec.name}: thread pulled in ${list(pulled)}.`;
    return [known(`thread-${piece.spec.key}`, say, false, true)];
  });
}

function waits({ job, relations, finished, now }: Standing): Asked[] {
  return [...finished.running].flatMap(([place, { until }]) => {
    const key = relations.steps[place]?.key ?? '';
    const spec = job.tasks.get(key)?.spec;
    const say = spec ? withPrintedTask(job, spec).say : key;
    const end = until === null ? '' : ` until ${printInstant({ ...now, seconds: until })}`;
    return [known(`wait-${key}`, `Not over${end}: ${say}.`, false)];
  });
}

const CONTROLS: readonly [Sort, string, boolean][] = [
  ['cable', 'free, with its play, at both locks', false],
  ['lever', 'moves free and comes back', false],
  ['steering', 'turns free from lock to lock, without play', false],
  // Until it is firm nothing stops the machine.
  ['brake', 'lever pumped until it is firm', true],
  ['fuel', 'no drop and no smell, no flame near', false],
];

function controls({ job, lines }: Standing): Asked[] {
  return disturbedOf(job, lines).flatMap((piece) => {
    const sorts = sortsOf(piece.spec);
    return CONTROLS.filter(([sort]) => sorts.includes(sort)).map(
      ([sort, say, stops]): Asked => ({
        key: `${sort}-${piece.spec.key}`,
        say: `${piece.spec.name}: ${say}.`,
        done: null,
        stops,
      }),
    );
  });
}
