/** The gates of a job as one comes to them: which holds just now, and what it asks first. */
import { inWords, withoutPrinted } from '../../job/truth/said.ts';
import type { Job, Moment, PieceNow } from '../../model/types.ts';
import { isSeal } from '../../piece/seals.ts';
import { buysNow } from '../buy/list.ts';
import { isAllBack } from '../order/job-now.ts';
import { shouldSaid } from '../piece/answers.ts';
import { roundLeft } from '../piece/round-left.ts';
import { behindItem } from './figures.ts';
import { gateOf } from './gate.ts';
import { itemOf } from './item-rows.ts';
import type { ItemInWords } from './items.ts';

/** Remembers in this sitting that a gate was passed; that before the start until something comes off again. */
export function gateMark(job: Job, moment: Moment, piece: PieceNow | null): string {
  if (piece) return `gate ${moment} ${piece.spec.key} ${piece.round}`;
  const rounds = [...job.pieces.values()].filter((p) => p.where !== 'home').map((p) => p.round);
  return `gate ${moment}  ${rounds.length} ${rounds.reduce((sum, n) => sum + n, 0)}`;
}

/** Bolts of it are all out and it is away: what is asked before it goes on is asked now. */
function isStillOff(piece: PieceNow): boolean {
  return piece.away !== 'no' && piece.holes.every((h) => h.state === 'out');
}

/**
 * The gates in the way of a piece that goes on, in their order: shut nothing in, then make the joint. Where what
 * seals it is not here, that is said before anything is looked into, cleaned or counted.
 */
export function gatesOn(job: Job, piece: PieceNow, now: string, read: readonly string[]): Moment[] {
  if (!isStillOff(piece)) return [];
  const asked: Moment[] = [];
  const joint = isJointed(job, piece, now);
  const closing = gateOf(job, 'closing', piece.spec.key, now);
  const left = closing.some((i) => itemOf(i.key)?.row.keepsOpen && !i.done);
  if (joint || left) asked.push('closing');
  if (joint || piece.spec.loose.length > 0) asked.push('sealing');
  if (lacksSeal(job, piece, now)) asked.reverse();
  return asked.filter(
    (m) =>
      !read.includes(gateMark(job, m, piece)) &&
      gateOf(job, m, piece.spec.key, now).some((i) => !i.done),
  );
}

function lacksSeal(job: Job, { spec }: PieceNow, now: string): boolean {
  const stops = gateOf(job, 'sealing', spec.key, now)
    .filter(stopsNow)
    .map((i) => i.key as string);
  return buysNow(job, now).some(({ buy, what }) => isSeal(what) && stops.includes(`part-${buy}`));
}

/** The file says how its joint is made, or a gasket or a seal is on the list for it. */
function isJointed(job: Job, { spec }: PieceNow, now: string): boolean {
  const seals = buysNow(job, now).filter((buy) => buy.for.includes(`${spec.key} on`));
  return (
    spec.joint.length > 0 || seals.some(({ what }) => isSeal(what) && !/washers?\b/i.test(what))
  );
}

/** What is to be seen to before the first bolt of a piece; nothing where one is out, or where that was passed. */
export function toLoosen(
  job: Job,
  piece: PieceNow,
  now: string,
  read: readonly string[],
): ItemInWords[] {
  if (piece.where === 'off' || read.includes(gateMark(job, 'loosening', piece))) return [];
  return gateOf(job, 'loosening', piece.spec.key, now).filter((i) => !i.done);
}

/** All that came off is back and gone round to the end: nothing of it is left to tighten. */
export function isDoneUp(job: Job): boolean {
  return isAllBack(job) && [...job.pieces.values()].every((p) => roundLeft(job, p).length === 0);
}

/** All that came off is back, and somebody has still to look before it runs. */
export function isStartAsked(job: Job, now: string, read: readonly string[]): boolean {
  if (!isAllBack(job) || read.includes(gateMark(job, 'start', null))) return false;
  return gateOf(job, 'start', null, now).some((i) => !i.done);
}

/** What stops first, then what can hurt, then the rest as it stands. */
export function sortedItems(
  job: Job,
  moment: Moment,
  piece: PieceNow | null,
  now: string,
): { item: ItemInWords; caution: boolean; printed: string[] }[] {
  const items = gateOf(job, moment, piece?.spec.key ?? null, now).map((item) => ({
    item: piece && item.key === 'bolts' && moment === 'sealing' ? counted(item, job, piece) : item,
    caution: item.loud,
    printed: [],
    ...printedBeside(job, moment, piece, item),
  }));
  const rank = (i: (typeof items)[number]) => (stopsNow(i.item) ? 0 : i.caution ? 1 : 2);
  return items.toSorted((a, b) => rank(a) - rank(b));
}

/** What is printed in another way is taken out of the item's words, so that it can be shown struck beside them. */
function printedBeside(
  job: Job,
  moment: Moment,
  piece: PieceNow | null,
  item: ItemInWords,
): { item: ItemInWords; printed: string[] } | null {
  const behind = behindItem(job, moment, piece?.spec.key ?? null, item.key);
  const wrong = behind?.rows.filter((r) => r.printed !== null) ?? [];
  if (!behind || wrong.length === 0) return null;
  const texts = new Set(wrong.flatMap((r) => r.figure?.said ?? []));
  const words = withoutPrinted(item.words, texts);
  return { item: { ...item, words, say: inWords(words) }, printed: behind.printed };
}

/** What should lie in the tray is counted with it. */
function counted(item: ItemInWords, job: Job, piece: PieceNow): ItemInWords {
  const should = shouldSaid(job, piece);
  return should === null ? item : { ...item, say: `${item.say} ${should}` };
}

/** Something stops there: it rings on arriving. */
export function isStopped(job: Job, moment: Moment, piece: string | null, now: string): boolean {
  return gateOf(job, moment, piece, now).some(stopsNow);
}

export function stopsNow(item: ItemInWords): boolean {
  return item.stops && !item.done;
}
