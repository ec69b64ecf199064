/** The three gates of a piece: before prying, before the joint is made, before it closes what is behind it. */

import { inOtherWords, listed, type Words } from '../../job/truth/said.ts';
import { textsIn } from '../../model/said.ts';
import type { HoleNow, PieceNow, PieceSpec, TextSaid } from '../../model/types.ts';
import { list, listNames, listPieces } from '../../model/words.ts';
import { isSeal } from '../../piece/seals.ts';
import type { Buy } from '../buy/list.ts';
import { isHere } from '../buy/state.ts';
import { cautionsSaid } from '../care/cautions.ts';
import { hurtHoles, isAway, isBack } from '../order/needed.ts';
import { spoken } from '../order/relations.ts';
import type { Standing } from '../order/standing.ts';
import { untimedCure } from '../seal/cure.ts';
import { type Joint, readJoint } from '../seal/joint.ts';
import { sayDuration, sayWithin } from '../time/duration.ts';
import { anywhere, insertsFitted, insideItems } from './inside.ts';
import { type AskedItem, ifAny, look, stopped, ticked, unticked, warn } from './items.ts';
import { hasBlindHoles, hasSeal, lockers, sliding, wrench } from './ready.ts';
import { hurtSince, sayOdd, sayStillIn } from './stops.ts';

/** Every bolt out, counted, before anything is pried. */
export function beforePrying(standing: Standing, piece: PieceNow): AskedItem[] {
  const { spec, holes } = piece;
  const still = holes.filter((h) => h.state !== 'out');
  const along = carried(standing, spec);
  const rest = still.length === 0 ? '' : `: ${listNames(still)} still in`;
  const count = `${holes.length - still.length} of ${holes.length} out${rest}.`;
  const over = [...(standing.overs.get(spec.key) ?? [])]
    .flatMap((key) => standing.job.pieces.get(key) ?? [])
    .filter((p) => !isAway(p));
  const bolted = over.filter((p) => p.holes.length > 0);
  const hanging = over.filter((p) => p.holes.length === 0);
  return [
    ...ifAny(still, () =>
      stopped('bolts', count, sayStillIn(standing, piece, still), { to: 'bolts', piece: spec.key }),
    ),
    ...(holes.length > 0 && still.length === 0 ? [ticked('bolts', count)] : []),
    ...ifAny(bolted, () => unticked('over', `Still over it: ${listPieces(bolted)}.`)),
    ...ifAny(hanging, () => unticked('connected', `Still connected: ${listPieces(hanging)}.`)),
    ...ifAny(along, () => look('along', `Comes off with it: ${listPieces(along)}.`)),
    ...along.flatMap((p) => runsWith(p, 'runs')),
    ...ifAny(spec.marks, () => look('marks', ['Marked: ', ...listed(spec.marks), '.'])),
    ...ifAny(spec.loose, () =>
      look('loose', ['Falls out or stays in: ', ...listed(spec.loose), '.']),
    ),
    ...ifAny(spec.routes, () =>
      look('routes', ['Seen how it runs: ', ...listed(spec.routes), '.']),
    ),
    ...cautions(spec, 'off'),
  ];
}

/** All that must be ready before the sealant tube is opened or the gasket laid on. */
export function beforeSealing(
  standing: Standing,
  piece: PieceNow,
  buys: readonly Buy[],
): AskedItem[] {
  const { spec, holes } = piece;
  const joint = readJoint(textsIn(spec.joint));
  const wet = [...spec.holes.values()].filter((h) => h.wet);
  const clear = asideOver(standing, piece);
  return [
    ...insideItems(standing, [spec.key, ...belowOf(standing, spec.key)]),
    ...unmended(standing, piece),
    ...underOpen(standing, piece),
    ...partItems(buys, spec.key),
    look('faces', 'Both faces clean and dry, nothing scraped into what is open.'),
    ...(hasBlindHoles(piece, standing.job.upper.kinds)
      ? [look('blind', 'Blind holes blown dry, eyes covered: oil under a bolt cracks the boss.')]
      : []),
    ...ifAny(wet, () =>
      look('wet', `Sealant on the threads of ${listNames(wet)}: open to a liquid.`),
    ),
    ...spec.loose.map((thing, i) =>
      look(`loose-${i + 1}`, ['Counted and in its place: ', thing, '.']),
    ),
    ...jointParts(spec).map((part, i) => look(`joint-${i + 1}`, ['Joint: ', part, '.'])),
    ...(joint.lip || hasSeal(buys, spec.key)
      ? [look('lip', 'Seals: the lip the right way round, not turned over.')]
      : []),
    ...ifAny(spec.marks, () => look('marks', ['Lined up: ', ...listed(spec.marks), '.'])),
    ...ifAny(spec.routes, () => look('routes', ['Runs as it did: ', ...listed(spec.routes), '.'])),
    ...carried(standing, spec).flatMap((p) => runsWith(p, 'runs as it did')),
    ...sliding(standing, piece),
    ...ifAny(clear, () => look('clear', `Held clear of the joint: ${listPieces(clear)}.`)),
    ...ifAny(holes, () => look('bolts', `Bolts sorted: ${sorted(piece)}.`)),
    ...lockers(piece, standing.job.upper.kinds),
    ...wrench(piece, standing.job.upper.kinds),
    ...cautions(spec, 'on'),
    ...times(joint, untimedCure(standing, piece)),
  ];
}

/** What must be true of its bolts and threads before anything else is made ready. */
function unmended(standing: Standing, piece: PieceNow): AskedItem[] {
  const { key } = piece.spec;
  const odd = piece.holes.filter((h) => h.unsettled || h.conflict !== null);
  const hurt = hurtHoles(piece);
  const at = (holes: readonly HoleNow[]) => ({ piece: key, hole: holes[0]?.name ?? '' });
  return [
    ...ifAny(odd, () =>
      stopped('settled', `Settle what belongs in ${listNames(odd)}.`, sayOdd(odd), {
        to: 'settle',
        ...at(odd),
      }),
    ),
    ...ifAny(hurt, () =>
      stopped(
        'threads',
        `Mend first: ${troubles(hurt)}.`,
        `${hurtSince(standing, piece, hurt)}. Mend it before the joint is made.`,
        { to: 'mend', ...at(hurt) },
      ),
    ),
  ];
}

/** How long what seals stands, cures and stays open; `untimed`: what cures without a figure. */
function times({ stand, open }: Joint, untimed: string | null): AskedItem[] {
  return [
    ...(stand === null
      ? []
      : [look('stand', `Sealant on, it stands ${sayDuration(stand)}; then close.`)]),
    ...(untimed === null
      ? []
      : [look('cure', ['How long it cures was not read: ', untimed, '. Look at the tube.'])]),
    ...(open === null ? [] : [look('hurry', `All within ${sayWithin(open)} from then on.`)]),
  ];
}

/** Pieces that come off with this one and go back with it, without a step of their own. */
function carried({ job }: Standing, { key }: PieceSpec): PieceNow[] {
  return [...job.pieces.values()].filter((p) => p.spec.along.includes(key));
}

/** How such a piece runs and what is marked on it: no step of its own says it. */
function runsWith({ spec }: PieceNow, runs: string): AskedItem[] {
  const row = (what: string, texts: readonly TextSaid[]) =>
    texts.length > 0 ? [[`${spec.name}, ${what}: `, ...listed(texts), '.']] : [];
  return [...row('marked', spec.marks), ...row(runs, spec.routes)].map((words, i) =>
    look(`with-${i + 1}-${spec.key}`, words),
  );
}

/** What went in must come out before it is closed. */
export function beforeClosing(standing: Standing, piece: PieceNow): AskedItem[] {
  const { job, finished, relations } = standing;
  const { spec } = piece;
  const open = [...job.tasks.values()].filter(
    (task) =>
      task.spec.while.some((step) => spoken(step) === `${spec.key} off`) &&
      finished.done[relations.at.get(task.spec.key) ?? -1] !== true,
  );
  const below = belowOf(standing, spec.key);
  const tangs = insertsFitted(standing, [spec.key, ...below]);
  return [
    ...insideItems(standing, [spec.key, ...below]),
    ...anywhere(standing),
    ...underOpen(standing, piece),
    ...open.map(({ spec: task }) => unticked(`task-${task.key}`, ['Still to do: ', task.say])),
    ...(tangs > 0 ? [look('tangs', `Insert tangs counted: ${tangs}.`)] : []),
    ...spec.loose.map((thing, i) => look(`loose-${i + 1}`, ['In its place: ', thing, '.'])),
    look('tools', 'Tools, magnets and what blocked something: counted and out.'),
    look('lamp', 'Looked in with a lamp, felt along the bottom.'),
  ];
}

/** The parts of its joint; a text of several has how it is printed behind the last of them. */
function jointParts({ joint }: PieceSpec): Words {
  return joint.flatMap((said) => {
    const { parts } = readJoint([said.text]);
    return parts.map((part, i) => (i + 1 < parts.length ? part : inOtherWords(said, part)));
  });
}

export function cautions(spec: PieceSpec, way: 'off' | 'on'): AskedItem[] {
  return cautionsSaid(spec, way).map(({ key, said }) => warn(key, [said]));
}

/** Pieces under this one, at any depth. */
function belowOf({ allOvers }: Standing, key: string): string[] {
  const below = new Set([key]);
  for (const over of below) {
    for (const [lower, overs] of allOvers) if (overs.has(over)) below.add(lower);
  }
  below.delete(key);
  return [...below];
}

function underOpen(standing: Standing, { spec }: PieceNow): AskedItem[] {
  const open = belowOf(standing, spec.key)
    .flatMap((key) => standing.job.pieces.get(key) ?? [])
    .filter((p) => p.where !== 'home' && !isBack(p));
  return open.length > 0 ? [unticked('under', `Under it and not back: ${listPieces(open)}.`)] : [];
}

/** Moved aside and still hanging there: what the faces could catch. */
function asideOver({ job, overs }: Standing, { spec }: PieceNow): PieceNow[] {
  return [...(overs.get(spec.key) ?? [])]
    .flatMap((key) => job.pieces.get(key) ?? [])
    .filter((p) => p.away === 'aside');
}

function partItems(buys: readonly Buy[], piece: string): AskedItem[] {
  const own = buys.filter((buy) => buy.for.includes(`${piece} on`));
  return own.map((buy) => {
    const key = `part-${buy.buy}` as const;
    // Only read out of the joint's words, and never listed: it is a question.
    if (buy.ask) return look(key, `A new one, or does the old one do: ${buy.what}?`);
    if (!isHere(buy.state) && buy.holds.length === 0) return look(key, `To hand: ${buy.what}.`);
    if (!isHere(buy.state) && buy.once) {
      const old = buy.why === null ? ' Used once: the old one does not go back in.' : '';
      const how = buy.state === 'wanted' ? '' : ` (${buy.state})`;
      const stop = `${buy.what} is never used twice, and no new one is noted as here${how}. Note it, or say why the old one goes in.`;
      const way = { to: 'buy', buy: buy.buy } as const;
      return stopped(key, `${buy.what}: ${buy.state}.${old}`, stop, way);
    }
    // Never noted, it may lie on the shelf; what was noted as not here stops before the faces are cleaned for it.
    if (buy.state === 'wanted') return unticked(key, `${buy.what}: ${buy.state}.`);
    if (!isHere(buy.state)) {
      const without = isSeal(buy.what) ? 'the old one goes in' : 'it goes on without';
      const stop = `${buy.what}: noted as ${buy.state}, not as here. Note it when it is, or say why ${without}.`;
      return stopped(key, `${buy.what}: ${buy.state}.`, stop, { to: 'buy', buy: buy.buy });
    }
    const same = buy.state !== 'here';
    return { ...look(key, `Here, and the same as the old one: ${buy.what}.`), done: same || null };
  });
}

/** `7 S, 3 M, 1 L`, with what lies under their heads. */
function sorted(piece: PieceNow): string {
  const words = piece.holes.map((h) =>
    h.belongs ? [h.belongs.kind, ...h.belongs.with].join('+') : '?',
  );
  const counts = [...Map.groupBy(words, (word) => word)];
  return counts.map(([word, all]) => `${all.length} ${word}`).join(', ');
}

function troubles(holes: readonly HoleNow[]): string {
  return list(holes.map((h) => `${h.name} ${h.trouble}`));
}
