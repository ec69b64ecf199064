/** The note of a good workmate, row by row: how a job stands, as one reads it on coming back after days. */
import { sayDiffers, sayTrouble } from '../../job/fold/say-hole.ts';
import { daysBetween } from '../../model/time.ts';
import type { Job, PieceNow, Trouble } from '../../model/types.ts';
import { list } from '../../model/words.ts';
import { isStuff } from '../buy/itself.ts';
import { buysNow } from '../buy/list.ts';
import { sayBought } from '../buy/say.ts';
import { sayThing } from '../order/inside.ts';
import { looseOf } from '../order/loose.ts';
import { openOverNight, type PieceOpening } from '../order/openings.ts';
import { sayDate, sayTime } from '../time/days.ts';
import type { Back } from './back.ts';

export interface NoteRow {
  label: string;
  texts: string[];
  /** It must not be forgotten. */
  loud: boolean;
}

/** Rows of what must not be forgotten. */
const LOUD = ['Open', 'Inside', 'Finger-tight'];
/** Rows that are there even if they have nothing to say. */
const ALWAYS = ['Off', 'Finger-tight'];

/** Rows that say something; what is off and what is only finger-tight are said to be nothing where they are. */
export function noteRows(job: Job, back: Back, now: string): NoteRow[] {
  return rowsOf(job, back, now).flatMap(([label, texts]) => {
    if (texts.length > 0) return [{ label, texts, loud: LOUD.includes(label) }];
    return ALWAYS.includes(label) ? [{ label, texts: ['nothing'], loud: false }] : [];
  });
}

function rowsOf(job: Job, back: Back, now: string): [label: string, texts: string[]][] {
  const { off, half } = back;
  const open = openOverNight(job, now).filter((o) => o.covered === null);
  const aside = off.filter((p) => p.aside);
  return [
    ['Off', off.filter((p) => !p.aside).map(lies)],
    ['Aside', aside.map((p) => p.name)],
    ['Coming off', half.map((p) => `${p.name}: ${p.out} of ${p.of} out`)],
    ['Open', open.map((o) => openSaid(o, now))],
    ['Inside', back.inside.map((i) => sayThing(i) + placeOf(job, i.piece) + since(i.since, now))],
    ['Trouble', back.trouble.map((t) => troubleSaid(t, now))],
    ['Differs', [...job.pieces.values()].flatMap(differing)],
    ['Finger-tight', fingers(job, back)],
    ['Awaited', back.awaited.map((b) => awaitedSaid(b, now))],
    ['In the house?', stuff(job, now)],
    ['Here', back.here.map((b) => (b.tray === null ? b.what : `${b.what} (${b.tray})`))],
    ['Waits', back.waits.map((w) => sayWait(w, now))],
    ['Test now', back.due.map((t) => (t.state === 'failed' ? `${t.say}, failed` : t.say))],
    ['Ready', back.finish === null ? [] : [`${readySaid(back.finish, now)} at the earliest`]],
    ['Last note', lastNote(job, now)],
  ];
}

/** A part that is promised for a day is there at no hour that anybody knows. */
function readySaid(finish: string, now: string): string {
  return /T00:00(?::00)?(?!\d)/.test(finish) ? sayDate(finish, now) : sayTime(finish, now);
}

/** Sealant, threadlocker, grease that the work takes: nobody noted that they are there, and a shop closes. */
function stuff(job: Job, now: string): string[] {
  const all = buysNow(job, now).filter((buy) => isStuff(buy) && buy.state === 'wanted');
  return all.flatMap(({ what, wentIn }) => (wentIn ? [] : [what]));
}

function awaitedSaid(buy: Back['awaited'][number], now: string): string {
  const without = buy.without ? '; its piece is back without it' : '';
  return `${buy.what}, ${sayBought(buy, now)}${without}`;
}

/** `Case cover since 11 April: covered, plugged? Look in before it closes.` */
function openSaid({ name, since: from }: PieceOpening, now: string): string {
  return `${name}${since(from, now)}: covered, plugged? Look in before it closes`;
}

/** When a wait is over, as one says it. */
export function sayWait(wait: { say: string; until: string | null }, now: string): string {
  return wait.until === null ? wait.say : `${wait.say}: until ${sayTime(wait.until, now)}`;
}

function lies({ name, tray }: Back['off'][number]): string {
  return tray === null ? name : `${name} (${tray})`;
}

function placeOf(job: Job, piece: string | null): string {
  return piece === null ? '' : ` (${job.pieces.get(piece)?.spec.name ?? piece})`;
}

/** ` since 11 April`, where that is another day. */
function since(at: string | null, now: string): string {
  return at === null || daysBetween(at, now) === 0 ? '' : ` since ${sayDate(at, now)}`;
}

function troubleSaid(t: Back['trouble'][number], now: string): string {
  const says = t.says === null ? '' : ` (${t.says})`;
  return `${t.name}, ${t.hole}: ${sayTrouble(t.trouble as Trouble)}${since(t.since, now)}${says}`;
}

function differing(piece: PieceNow): string[] {
  const odd = piece.holes.filter((h) => h.unsettled || h.conflict !== null);
  return odd.map((h) => `${piece.spec.name}, ${h.name}: ${sayDiffers(h)}`);
}

/** More names than this are counted instead. */
const NAMED = 6;

function fingers(job: Job, { fingerTight }: Back): string[] {
  return fingerTight.flatMap(({ piece, name }) => {
    const now = job.pieces.get(piece);
    return (now ? looseOf(job, now) : []).map(({ holes, lacks }) => {
      const which = holes.length <= NAMED ? list(holes) : `${holes.length} bolts`;
      return `${name}: ${which}${lacks === null ? '' : ` (${lacks})`}`;
    });
  });
}

function lastNote(job: Job, now: string): string[] {
  const entry = job.entries.findLast((e) => e.verb === 'note' && job.living.has(e.id));
  return entry ? [`${entry.value} (${sayDate(entry.at, now)})`] : [];
}
