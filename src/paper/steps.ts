/** The way up, for the wall: what goes back in which order, with its bolts, what is set on the wrench, joint and cautions. */

import { inWords } from '../job/truth/said.ts';
import type { Job, PieceNow } from '../model/types.ts';
import { many } from '../model/words.ts';
import { rounds } from '../piece/sequence/rounds.ts';
import { sequence } from '../piece/sequence/sequence.ts';
import { cautionsForTask } from '../plan/care/cautions.ts';
import { plan } from '../plan/plan.ts';
import type { Ask, NoPaper, Paper } from './ask.ts';
import { joined, type Markup, m, t } from './markup.ts';
import { wrapped } from './measure.ts';
import { page, within } from './page.ts';
import {
  cautionsOn,
  counted,
  dayOf,
  kindSaid,
  ownTorques,
  stageSaid,
  texts,
  torqueSaid,
  unreadOn,
  wrenchesSaid,
} from './said.ts';

export type StepsAsk = Omit<Ask, 'piece'>;

interface Row {
  name: string;
  lines: string[];
  cautions: string[];
}

export function steps(ask: StepsAsk): Paper | NoPaper {
  const { job, now, size } = ask;
  const rows = rowsOf(ask);
  if (rows.length === 0) return { code: 'all-back', say: 'Nothing is left to go back.' };
  const back = plan(job, now).steps.filter((s) => s.kind === 'on' && s.done).length;
  const { points, fits, long } = pointsFor(ask, rows, within(size));
  const body = m`<h1>The way up: ${t(job.upper.job)}</h1>
<p class="quiet">${joined([job.upper.machine, dayOf(now)].filter((s) => s !== null).map(t), ' · ')}${back === 0 ? null : m` · ${many(back, 'piece')} back already`}</p>${unreadOn(job)}
<ol class="way" style="font-size:${points}pt">${rows.map((one) => row(one, long.has(one)))}</ol>
<p class="quiet">The maker’s order and figures go before this sheet.</p>`;
  const notes = fits
    ? []
    : ['Too much for one page, even in small letters: it goes on with a second.'];
  return {
    html: page({ title: `The way up: ${job.upper.job}`, size, body, style: STYLE }),
    sheets: null,
    life: null,
    notes,
  };
}

const STYLE = `
.way{columns:2;column-gap:10mm;line-height:1.25;padding-left:7mm;margin:2mm 0}
.way li{break-inside:avoid;margin-bottom:.6em}
.way .long{break-inside:auto}
.way p{margin:0}
.way .box{float:right;margin:0 .3mm 0 1mm;border:.3mm solid #000;width:1em;height:1em}
.way .caution{font-weight:bold}`;

function row({ name, lines, cautions }: Row, long: boolean): Markup {
  return m`<li${long ? m` class="long"` : null}><span class="box"></span><b>${t(name)}</b>${lines.map((l) => m`<p>${t(l)}</p>`)}${cautions.map((c) => m`<p class="caution">! ${t(c)}</p>`)}</li>`;
}

/** What is open from the last piece that has to come off: pieces that go on, and tasks as they come. */
function rowsOf(ask: StepsAsk): Row[] {
  const { job, now } = ask;
  const all = plan(job, now).steps;
  const from = all.findLastIndex((s) => s.kind === 'off' && !s.done) + 1;
  return all.flatMap(({ step, kind, done }, i): Row[] => {
    if (done) return [];
    const piece = kind === 'on' ? job.pieces.get(step.replace(/ on$/, '')) : undefined;
    if (piece) return [pieceRow(ask, piece)];
    const task = i < from ? undefined : job.tasks.get(step);
    if (!task) return [];
    const { say, limit, when } = task.spec;
    const cautions = cautionsForTask(task.spec).map((c) => c.say);
    const lines = [
      ...(when === null ? [] : [inWords([when])]),
      ...(limit === null ? [] : [inWords(['limit: ', limit])]),
    ];
    return [{ name: inWords([say]), lines, cautions }];
  });
}

function pieceRow({ job, wrenches }: StepsAsk, piece: PieceNow): Row {
  const { spec } = piece;
  const bolts = counted(piece.holes.flatMap((h) => h.belongs ?? [])).map(
    ({ count, said, kind }) =>
      `${count} × ${said}${kindSaid(job.upper.kinds, kind).slice(kind.length)}`,
  );
  const list = (name: string, what: 'joint' | 'loose' | 'marks' | 'routes') =>
    spec[what].length === 0 ? [] : [`${name}: ${texts(spec[what]).join('; ')}`];
  return {
    name: spec.name,
    lines: [
      ...(piece.tray === null ? [] : [`from ${piece.tray}`]),
      ...list('joint', 'joint'),
      ...list('loose', 'loose'),
      ...list('marks', 'marks'),
      ...list('routes', 'routes'),
      ...bolts,
      ...tightened(job, piece, wrenches),
    ],
    cautions: cautionsOn(piece),
  };
}

/** The order, then each pass with what is printed and what is set. */
function tightened(job: Job, piece: PieceNow, wrenches: StepsAsk['wrenches']): string[] {
  if (piece.holes.length === 0) return [];
  const { spec } = piece;
  const names = piece.holes.map((h) => h.name);
  const order = sequence(spec, job.upper.kinds, names).tighten;
  const { rounds: all } = rounds(spec, job.upper.kinds, order, names);
  const torque = torqueSaid(piece);
  const own = ownTorques(piece);
  const stages = all.map(({ name, torque: figure, angle, after, order: holes }) => {
    const which = own.length > 0 && holes.length < names.length ? ` (${holes.join(' ')})` : '';
    const set = wrenchesSaid(wrenches, figure)[0];
    return `${name}${which} ${stageSaid(figure, angle)}${after === null ? '' : ` after ${after}`}${set === undefined ? '' : `, ${set}`}`.trim();
  });
  return [
    ...(names.length > 1 ? [`order ${order.join(' ')}`] : []),
    torque === null ? 'torque not noted' : `torque ${torque}`,
    ...stages,
    // The stages have its figure; how it is printed stands nowhere else.
    ...own.flatMap(({ hole, said }) =>
      said.printed === null ? [] : [`hole ${hole}: ${inWords([said])}`],
    ),
  ];
}

/** mm of a point. */
const POINT = 25.4 / 72;
const SIZES = [16, 14, 12.5, 11, 10, 9, 8, 7, 6.5, 6, 5.5];
/** mm: what stands over and under the columns, a line each. */
const AROUND = { title: 7, machine: 4.5, unread: 9, rest: 11 };

/** The largest letters in which all of it stands on one page in two columns, and which rows are parted there. */
function pointsFor(
  { job }: StepsAsk,
  rows: readonly Row[],
  sheet: { width: number; height: number },
) {
  const title = wrapped(`The way up: ${job.upper.job}`, sheet.width / (15 * POINT)).length;
  const machine = wrapped(
    `${job.upper.machine ?? ''} 2026-01-01`,
    sheet.width / (8.5 * POINT),
  ).length;
  const unread = unreadOn(job) === null ? 0 : AROUND.unread;
  const room =
    sheet.height - title * AROUND.title - machine * AROUND.machine - unread - AROUND.rest;
  const heightAt = (points: number) => {
    const size = points * POINT;
    const most = ((sheet.width - 10) / 2 - 8) / size;
    return ({ name, lines, cautions }: Row) => {
      const texts = [name, ...lines, ...cautions.map((c) => `! ${c}`)];
      return size * texts.reduce((n, text) => n + wrapped(text, most).length * 1.25, 0.6);
    };
  };
  const points = SIZES.find((size) => columnsOf(rows.map(heightAt(size)), room) <= 2);
  const taken = points ?? SIZES.at(-1) ?? 6;
  const height = heightAt(taken);
  const long = new Set(rows.filter((one) => isLong(height(one), room)));
  return { points: taken, fits: points !== undefined, long };
}

/** A row so high may be parted between columns, any other stands whole in one. */
const isLong = (height: number, room: number) => height > room / 2;

function columnsOf(heights: readonly number[], room: number): number {
  let [columns, used] = [1, 0];
  for (const height of heights) {
    const parted = isLong(height, room);
    if (!parted && used + height > room) [columns, used] = [columns + 1, 0];
    used += height;
    for (; parted && used > room; used -= room) columns += 1;
  }
  return columns;
}
