/** What has to be ready before a joint is made, beyond its faces: seals, levers, threads, the wrench. */
import { printQuantity } from '../../bolt/read/units.ts';
import { inOtherWords, type Words } from '../../job/truth/said.ts';
import type { Kind, PassSpec, PieceNow, Quantity, Torque } from '../../model/types.ts';
import { list, listPieces } from '../../model/words.ts';
import { piecePasses } from '../../piece/passes.ts';
import type { Buy } from '../buy/list.ts';
import { isBack } from '../order/needed.ts';
import type { Standing } from '../order/standing.ts';
import { consumablesIn } from '../seal/joint.ts';
import { sortsOf } from '../tests/disturbed.ts';
import { isControl } from '../tests/sorts.ts';
import { type AskedItem, look } from './items.ts';

type Kinds = ReadonlyMap<string, Kind>;

/** Bolts go into holes; nuts go onto studs that stay where they are. */
export function hasBlindHoles({ holes }: PieceNow, kinds: Kinds): boolean {
  return holes.some((h) => !/\bnuts?\b/i.test(kinds.get(h.belongs?.kind ?? '')?.text ?? ''));
}

/** A new seal goes on with it: it has a lip that can be turned over, whatever the joint says. */
export function hasSeal(buys: readonly Buy[], piece: string): boolean {
  return buys.some((buy) => buy.for.includes(`${piece} on`) && /\bseals?\b/i.test(buy.what));
}

/** Levers and cables directly under it: it slides on over them in one position only. */
export function sliding({ job, overs }: Standing, { spec }: PieceNow): AskedItem[] {
  const under = [...job.pieces.values()].filter(
    (p) =>
      overs.get(p.spec.key)?.has(spec.key) &&
      (p.where === 'home' || isBack(p)) &&
      sortsOf(p.spec).some(isControl),
  );
  if (under.length === 0) return [];
  const names = listPieces(under);
  return [look('position', `In the position in which it slides on: ${names}.`)];
}

/** Threadlocker holds on clean dry threads only (common practice, no source); which grade, by joint or kind. */
export function lockers({ spec, holes }: PieceNow, kinds: Kinds): AskedItem[] {
  const letters = new Set(holes.flatMap((h) => h.belongs?.kind ?? []));
  const notes = [...letters].flatMap((letter) => kinds.get(letter)?.note ?? []);
  const own = [...spec.holes.values()].flatMap((h) => h.note?.text ?? []);
  const texts = [...spec.joint.flatMap(({ text }) => text.split(';')), ...notes, ...own];
  const grades = texts.flatMap((text) =>
    consumablesIn([text]).flatMap((c) => (c.what === 'threadlocker' ? [c.grade] : [])),
  );
  if (grades.length === 0) return [];
  const which = [...new Set(grades.flatMap((g) => g ?? []))];
  const said = which.length === 0 ? '' : `, ${list(which)} strength`;
  return [look('locker', `Threads clean and dry, no oil on them, for the threadlocker${said}.`)];
}

/**
 * To what figure: pass by pass where they differ, and of holes that have their own. Beside the torque of the piece and of a
 * hole stands how it is printed, where that is not so.
 */
export function wrench({ spec, holes }: PieceNow, kinds: Kinds): AskedItem[] {
  if (holes.length === 0) return [];
  // The round at the end is at the figure that the wrench has by then.
  const passes = piecePasses(spec, kinds).filter((p) => p.after === null && p.name !== 'final');
  const set = passes.flatMap((p) =>
    p.torque?.quantity ? [figure(p, p.torque.quantity, spec.torque)] : [],
  );
  const own = [...spec.holes.values()].flatMap(({ name, torque: figure }) => {
    if (!figure?.quantity) return [];
    return [[`${name} takes `, figure.printed ? figure : printQuantity(figure.quantity)]];
  });
  const figures = set.map(({ name, value }) => (set.length === 1 ? [value] : [`${name} `, value]));
  const how = set.length === 1 ? ' for ' : ': ';
  const unread = spec.torque !== null && spec.torque.quantity === null;
  const texts: Words[] = [
    ...(figures.length === 0
      ? []
      : [[`Wrench set${how}`, ...figures.flatMap((f, i) => (i === 0 ? f : [', then ', ...f]))]]),
    ...(unread ? [['Look the torque up: ', spec.torque ?? '']] : []),
    ...own,
  ];
  const words = texts.flatMap((text, i) => (i === 0 ? text : ['. ', ...text]));
  return texts.length === 0 ? [] : [look('wrench', [...words, '.'])];
}

/** The figure of a pass, with how it is printed where it is the piece's own. */
function figure(pass: PassSpec, quantity: Quantity, own: Torque | null) {
  const text = printQuantity(quantity);
  const isOwn = own !== null && pass.torque === own;
  return { name: pass.name, value: isOwn ? inOtherWords(own, text) : text };
}
