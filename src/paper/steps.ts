/** The way up, for the wall: what goes back in which order, with its bolts, what is set on the wrench, joint and cautions. */

import { inWords } from '../job/truth/said.ts';
import type { Job, PieceNow } from '../model/types.ts';
import { many } from '../model/words.ts';
import { rounds } from '../piece/sequence/rounds.ts';
import { sequence } from '../piece/sequence/sequence.ts';
import { cautionsForTask } from '../plan/care/cautions.ts';
import { taskSaid } from '../plan/order/say.ts';
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
  const { points, fits } = pointsFor(rows, within(size));
  const body = m`<h1>The way up: ${t(job.upper.job)}</h1>
<p class="quiet">${joined([job.upper.machine, dayOf(now)].filter((s) => s !== null).map(t), ' · ')}${back === 0 ? null : m` · ${many(back, 'piece')} back already`}</p>
<ol class="way" style="font-size:${points}pt">${rows.map(row)}</ol>
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
.way p{margin:0}
.way .box{float:right;border:.3mm solid #000;width:1em;height:1em}
.way .caution{font-weight:bold}`;

function row({ name, lines, cautions }: Row): Markup {
  return m`<li><span class="box"></span><b>${t(name)}</b>${lines.map((l) => m`<p>${t(l)}</p>`)}${cautions.map((c) => m`<p class="caution">! ${t(c)}</p>`)}</li>`;
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
    const { step: say, limit } = taskSaid(job, task.spec);
    const cautions = cautionsForTask(task.spec).map((c) => c.say);
    const lines = limit === null ? [] : [inWords(['within ', limit])];
    return [{ name: inWords([say]), lines, cautions }];
  });
}

function pieceRow({ job, wrenches }: StepsAsk, piece: PieceNow): Row {
  const { spec } = piece;
  const of = { piece: spec.key };
  const bolts = counted(piece.holes.flatMap((h) => h.belongs ?? [])).map(
    ({ count, said, kind }) =>
      `${count} × ${said}${kindSaid(job.upper.kinds, kind).slice(kind.length)}`,
  );
  const list = (name: string, what: 'joint' | 'loose' | 'marks' | 'routes') =>
    spec[what].length === 0 ? [] : [`${name}: ${texts(job, of, what).join('; ')}`];
  return {
    name: spec.name,
    lines: [
      ...(piece.tray === null ? [] : [`from ${piece.tray}`]),
      ...list('joint', 'joint'),
      ...list('loose', 'loose'),
      ...list('marks', 'marks'),
      ...list('routes', 'routes'),
      ...(bolts.length === 0 ? [] : [bolts.join('; ')]),
      ...tightened(job, piece, wrenches),
    ],
    cautions: cautionsOn(job, piece),
  };
}

/** The order, then each pass with what is printed and what is set. */
function tightened(job: Job, piece: PieceNow, wrenches: StepsAsk['wrenches']): string[] {
  if (piece.holes.length === 0) return [];
  const { spec } = piece;
  const names = piece.holes.map((h) => h.name);
  const order = sequence(spec, job.upper.kinds, names).tighten;
  const { rounds: all } = rounds(spec, job.upper.kinds, order, names);
  const torque = torqueSaid(job, piece);
  const own = ownTorques(job, piece);
  const stages = all.map(({ name, torque: figure, angle, after, order: holes }) => {
    const which = own.length > 0 && holes.length < names.length ? ` (${holes.join(' ')})` : '';
    const set = wrenchesSaid(wrenches, figure)[0];
    return `${name}${which} ${stageSaid(figure, angle)}${after === null ? '' : ` after ${after}`}${set === undefined ? '' : `, ${set}`}`.trim();
  });
  return [
    ...(names.length > 1 ? [`order ${order.join(' ')}`] : []),
    torque === null ? 'torque not noted' : `torque ${torque}`,
    stages.join('; '),
    // The stages have its figure; how it is printed stands nowhere else.
    ...own.flatMap(({ hole, said }) =>
      said.printed === null ? [] : [`hole ${hole}: ${inWords([said])}`],
    ),
  ];
}

/** mm of a point. */
const POINT = 25.4 / 72;
/** Rows are not parted, so that columns do not fill to their end. */
const FILLED = 0.9;
const SIZES = [11, 10, 9, 8, 7, 6.5, 6, 5.5];

/** The largest letters in which all of it stands on one page in two columns. */
function pointsFor(rows: readonly Row[], sheet: { width: number; height: number }) {
  const fits = (points: number) => {
    const size = points * POINT;
    const most = ((sheet.width - 10) / 2 - 8) / size;
    const lines = rows.reduce((sum, { name, lines: said, cautions }) => {
      const texts = [name, ...said, ...cautions.map((c) => `! ${c}`)];
      return sum + 0.6 + texts.reduce((n, text) => n + wrapped(text, most).length * 1.25, 0);
    }, 0);
    return lines * size <= 2 * (sheet.height - 22) * FILLED;
  };
  const points = SIZES.find(fits);
  return { points: points ?? SIZES.at(-1) ?? 6, fits: points !== undefined };
}
