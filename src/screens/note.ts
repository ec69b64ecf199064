/** The note of a good workmate: where the job stands, in words, as one reads it on coming back after days. */
import type { Job, PieceNow } from '../job/types.ts';
import type { Back } from '../plan/back.ts';
import { sayThing } from '../plan/inside.ts';
import type { Acts } from './act.ts';
import { show } from './moves.ts';
import type { Page } from './page.ts';
import { hangingBoth } from './parts/both.ts';
import { correctionsSaid, isOpen, wrapStruck } from './parts/corrections-said.ts';
import { daysBetween, sayDate, sayDays } from './parts/days.ts';
import { lastMark } from './parts/job-now.ts';
import { taskOf } from './parts/ladder-names.ts';
import { nextNow } from './parts/next-now.ts';
import { toSettle } from './parts/piece-now.ts';
import { backNow } from './parts/plan-now.ts';
import { sayBought } from './parts/say-buy.ts';
import { sayDiffers, sayTrouble } from './parts/say-piece.ts';
import { sayWait } from './parts/say-wait.ts';
import { scrolled } from './parts/scroll.ts';
import { bold, hanging, type Line, line, pad, type Style, span, wrap } from './parts/text.ts';
import { list } from './parts/words.ts';
import type { State } from './state.ts';

export const noteActs = {
  pieces: (state) => show(state, { screen: 'job', here: null }),
} satisfies Acts;

export function drawNote(state: State): Page {
  const { view } = state;
  const job = state.open?.job;
  if (!job || view.screen !== 'note') return { left: [], middle: () => [] };
  const last = lastMark(job);
  const days = last === null ? 0 : daysBetween(last, state.now);
  const since =
    last === null ? '' : days === 0 ? 'last mark today' : `${sayDays(days)} since the last mark`;
  const back = backNow(job, state.now);
  return {
    left: line(bold(job.upper.job)),
    right: line(since),
    under: line(job.upper.machine ?? ''),
    middle: (columns, rows) => scrolled(noteLines(job, back, state.now, columns), view.top, rows),
    say: sayNext(job, back, state.now, state.columns),
    most: 8,
  };
}

/** Things offered for the next twenty minutes. */
const OFFERED = 2;

/** What to do first, and what must not be done. */
function sayNext(job: Job, back: Back, now: string, columns: number): Line[] {
  const dont = back.dont.flatMap((text) => wrap(text, columns, { colour: 'red', bold: true }));
  const next = nextSaid(job, back, now).flatMap((text) =>
    wrapStruck(job, text, columns, { bold: true }),
  );
  return [...next, ...dont];
}

/** Twenty minutes of work, and the next step where that is at another piece. */
function nextSaid(job: Job, { next }: Back, now: string): string[] {
  const offered = next.can.slice(0, OFFERED);
  const step = nextNow(job, now);
  const rung = taskOf(step?.rung ?? null) ?? step?.rung;
  const same = offered.some((d) => d.step.split(' ')[0] === rung);
  const [maybe] = next.maybe;
  const idle = maybe ? `Next: ${maybe.say}` : 'Nothing is on its way.';
  return [
    ...(step && !same ? [`Next: ${step.say}`] : []),
    ...(offered.length > 0 ? [`Twenty minutes: ${offered.map((d) => d.say).join(' Then: ')}`] : []),
    ...(step || offered.length > 0 ? [] : [idle]),
  ];
}

const LABEL = 15;
const LOUD: Style = { colour: 'red', bold: true };

type Row = [label: string, texts: readonly string[], none: string | null, style?: Style];

function noteLines(job: Job, back: Back, now: string, columns: number): Line[] {
  const pieces = [...job.pieces.values()];
  const { off, half } = back;
  const loud = (texts: readonly unknown[]) => (texts.length > 0 ? LOUD : {});
  const inside = back.inside.map((i) => sayThing(i) + placeOf(job, i.piece) + since(i.since, now));
  const rows: Row[] = [
    ['Off', off.filter((p) => !p.aside).map(lies), 'nothing'],
    ['Aside', off.filter((p) => p.aside).map((p) => p.name), null],
    ['Coming off', half.map((p) => `${p.name}: ${p.out} of ${p.of} out`), null],
    ['Inside', inside, null, loud(inside)],
    ['Trouble', back.trouble.map((t) => troubleSaid(t, now)), null],
    ['Differs', pieces.flatMap(differing), null],
    ['Finger-tight', fingers(back), 'nothing', loud(back.fingerTight)],
    ['Awaited', back.awaited.map((b) => `${b.what}, ${sayBought(b, now)}`), null],
    ['Here', back.here.map((b) => (b.tray === null ? b.what : `${b.what} (${b.tray})`)), null],
    ['Waits', back.waits.map((w) => sayWait(w, now)), null],
    ['Test now', back.due.map((t) => (t.state === 'failed' ? `${t.say}, failed` : t.say)), null],
    ['Last note', lastNote(job, now), null],
  ];
  const lines = rows.flatMap(([label, texts, none, style]): Line[] => {
    const shown = texts.length === 0 && none !== null ? [none] : texts;
    return shown.flatMap((text, i) =>
      hanging(pad(line(i === 0 ? bold(label) : span('')), LABEL), text, columns, style),
    );
  });
  const wrong = correctionsSaid(job, (c) => isOpen(job, c));
  return [
    ...lines,
    ...wrong.flatMap((both, i) =>
      hangingBoth(pad(line(i === 0 ? bold('True here') : span('')), LABEL), both, columns),
    ),
  ];
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
  const trouble = sayTrouble(t.trouble as Parameters<typeof sayTrouble>[0]);
  const says = t.says === null ? '' : ` (${t.says})`;
  return `${t.name}, ${t.hole}: ${trouble}${since(t.since, now)}${says}`;
}

function differing(piece: PieceNow): string[] {
  return toSettle(piece).map((h) => `${piece.spec.name}, ${h.name}: ${sayDiffers(h)}`);
}

/** More names than this are counted instead. */
const NAMED = 6;

function fingers({ fingerTight }: Back): string[] {
  return fingerTight.map(({ name, holes }) =>
    holes.length <= NAMED ? `${name}: ${list(holes)}` : `${name}: ${holes.length} bolts`,
  );
}

function lastNote(job: Job, now: string): string[] {
  const entry = job.entries.findLast((e) => e.verb === 'note' && job.living.has(e.id));
  return entry ? [`${entry.value} (${sayDate(entry.at, now)})`] : [];
}
