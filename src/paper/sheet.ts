/**
 * The sheet for a second opinion: what somebody must know who sees neither the machine nor the bench. As a page, or as
 * Markdown to paste. Names, places and prices are left out unless they are asked for.
 */

import { livingOf } from '../job/fold/living-of.ts';
import { unreadSaid } from '../job/fold/unread.ts';
import { oneLine } from '../model/safe.ts';
import type { Job, PieceNow } from '../model/types.ts';
import { list } from '../model/words.ts';
import { LOOKS, SHAPES, shapeOf } from '../piece/looks.ts';
import { buyList } from '../plan/buy/list.ts';
import { isHere } from '../plan/buy/state.ts';
import { testList } from '../plan/tests/testlist.ts';
import { looksOf } from '../plan/trace/looks.ts';
import { traceRows } from '../plan/trace/say.ts';
import { checkSaid, traced } from '../plan/trace/traced.ts';
import type { Ask, NoPaper, Paper, Private } from './ask.ts';
import { mapPicture } from './map-picture.ts';
import { m, t } from './markup.ts';
import { page } from './page.ts';
import { belongsSaid, counted, dayOf, kindSaid, ofWhat } from './said.ts';

export interface SheetAsk extends Ask {
  /** What is asked; null: a line to write on. */
  question: string | null;
  /** What is not left out. */
  show: ReadonlySet<Private>;
}

interface Part {
  title: string;
  lines: string[];
}

export function sheet(ask: SheetAsk): Paper | NoPaper {
  const { job, size, question } = ask;
  const maps = mapped(ask).flatMap((piece) => {
    const picture = mapPicture(piece, { width: 120, height: 75 });
    return picture ? [m`<h3>${t(piece.spec.name)}</h3>${picture.svg}${key(job, piece)}`] : [];
  });
  const body = m`<h1>${t(job.upper.job)}</h1>
${partsOf(ask).map(({ title, lines }) => m`<h2>${title}</h2>${lines.length === 1 ? m`<p>${t(lines[0] ?? '')}</p>` : m`<ul>${lines.map((l) => m`<li>${t(l)}</li>`)}</ul>`}`)}
${maps.length === 0 ? null : m`<h2>The holes as they stand</h2>${maps}`}
<h2>Question</h2><p class="question">${question === null ? m`<span class="fill"></span><br><span class="fill"></span>` : t(question)}</p>`;
  return {
    html: page({ title: `A second opinion: ${job.upper.job}`, size, body, style: STYLE }),
    sheets: null,
    life: null,
    notes: [leftOut(ask)],
  };
}

const STYLE = `
.fill{display:inline-block;width:170mm;border-bottom:.3mm solid #000;height:8mm}
.question{font-size:12pt;font-weight:bold}`;

/** The same in plain Markdown, with the holes in words. */
export function sheetText(ask: SheetAsk): string {
  const { job, question } = ask;
  const parts = partsOf(ask).map(
    ({ title, lines }) => `## ${title}\n\n${lines.map((l) => `- ${plain(l)}`).join('\n')}`,
  );
  const maps = mapped(ask).map((piece) => {
    const rows = piece.holes.map((h) => {
      const trouble = h.trouble === null ? '' : `, ${h.trouble}`;
      return `- ${h.name}: ${plain(belongsSaid(h) ?? 'not noted')}, ${LOOKS[shapeOf(h)].say}${trouble}`;
    });
    return `## Holes of ${plain(piece.spec.name)}\n\n${rows.join('\n')}`;
  });
  const asked = `## Question\n\n${question === null ? '' : plain(question)}`;
  return [`# ${plain(job.upper.job)}`, ...parts, ...maps, asked].join('\n\n').trimEnd();
}

/** A text in Markdown that is nothing but text. */
function plain(text: string): string {
  return oneLine(text)
    .replace(/[\\`*_{}[\]<>#|~!$&]/g, '\\$&')
    .replace(/^(\s*\d*)([-+.)])(?=\s)/, '$1\\$2');
}

export function leftOut({ show }: SheetAsk): string {
  const out = (['names', 'places', 'prices'] as const).filter((p) => !show.has(p));
  const said = out.length === 0 ? 'Nothing is left out.' : `Left out: ${list(out)}.`;
  return `${said} What stands in the texts of the file stands here too: read it before you hand it on.`;
}

function mapped({ job, piece }: SheetAsk): PieceNow[] {
  if (piece) return piece.holes.length > 0 ? [piece] : [];
  return [...job.pieces.values()].filter((p) => p.where !== 'home' && p.holes.length > 1);
}

function key(job: Job, piece: PieceNow) {
  const said = counted(piece.holes.flatMap((h) => h.belongs ?? [])).map(
    ({ count, said: item, kind }) =>
      `${count} × ${item}${kindSaid(job.upper.kinds, kind).slice(kind.length)}`,
  );
  return said.length === 0 ? null : m`<p class="quiet">${t(said.join('; '))}</p>`;
}

function partsOf(ask: SheetAsk): Part[] {
  const { job } = ask;
  const { machine, complaint, found, done } = job.upper;
  const one = (title: string, text: string | null): Part[] =>
    text === null ? [] : [{ title, lines: [text] }];
  const many = (title: string, lines: string[]): Part[] =>
    lines.length === 0 ? [] : [{ title, lines }];
  return [
    ...one('Not read', unreadSaid(job)),
    ...one('Machine', machine),
    ...one('Complaint', complaint),
    ...one('Found so far', found),
    ...many('Readings', readings(ask)),
    ...many('What it may be, what is cleared and by what', cleared(ask)),
    ...many('What was changed', changed(ask)),
    ...one('Done', done),
    ...many(
      'Not so as printed',
      job.corrections.map((c) => `${ofWhat(job, c)}, ${c.what}: ${c.says} (printed: ${c.printed})`),
    ),
    ...many('Notes', notes(ask)),
  ];
}

const CAME_OUT = { good: 'good', bad: 'bad', unclear: 'told nothing' };

/** Each look for the fault, the bad ones too: what is cleared follows from them. Then what was measured and tested. */
function readings({ job }: SheetAsk): string[] {
  const looks = looksOf(job).looks.map(({ at, check, limit, reading, says }) => {
    const within = limit === null ? '' : ` (limit ${limit})`;
    const read = [reading, CAME_OUT[says]].filter((s) => s !== null).join(', ');
    return `${checkSaid(job, check)}${within}: ${read} (${dayOf(at)})`;
  });
  const tasks = [...job.tasks.values()].flatMap(({ spec, was, set, result, done }) => {
    const read = [
      was === null ? null : `before ${was}`,
      set === null ? null : `set to ${set}`,
      result,
      done === 'passed' || done === 'failed' ? done : null,
    ].filter((s) => s !== null);
    if (read.length === 0) return [];
    const limit = spec.limit === null ? '' : ` (limit ${spec.limit.text})`;
    return [`${spec.say.text}${limit}: ${read.join(', ')}`];
  });
  return [...looks, ...tasks];
}

/** Suspects that a look speaks against, those that are left, and what a test that was passed speaks for. */
function cleared({ job, now }: SheetAsk): string[] {
  const suspects = traceRows(job, traced(job)).map(({ what, share, by }) =>
    by === null ? `${what}: ${share}, not cleared` : `${what}: ${share}, ${by}`,
  );
  const tests = testList(job, now)
    .filter((item) => item.state === 'passed' && item.pieces.length > 0)
    .map((item) => {
      const pieces = item.pieces.map((key) => job.pieces.get(key)?.spec.name ?? key);
      return `${list(pieces)}: ${item.say}, passed`;
    });
  return [...suspects, ...tests];
}

function changed({ job, now, show }: SheetAsk): string[] {
  const off = [...job.pieces.values()].filter((p) => p.where !== 'home');
  const states = off.map((p) => {
    const counts = SHAPES.flatMap((s) => {
      const n = p.holes.filter((h) => shapeOf(h) === s).length;
      return n === 0 ? [] : [`${n} ${LOOKS[s].say}`];
    });
    const where = p.away === 'aside' ? 'aside' : p.away === 'removed' ? 'off' : 'on its place';
    const tray = show.has('places') && p.tray !== null ? `, in ${p.tray}` : '';
    return `${p.spec.name}: ${where}${counts.length === 0 ? '' : ` (${counts.join(', ')})`}${tray}`;
  });
  const parts = buyList(job, now)
    .filter((b) => isHere(b.state))
    .map((b) => {
      const price = show.has('prices') && b.price !== null ? `, ${b.price}` : '';
      const from = show.has('names') && b.from !== null ? `, from ${b.from}` : '';
      return `${b.what}: ${b.state === 'fitted' ? 'new' : b.wentIn ? 'here, not noted as fitted' : 'here, not fitted'}${price}${from}`;
    });
  const tasks = [...job.tasks.values()]
    .filter(({ spec, done }) => done !== null && spec.verb === 'do')
    .map(({ spec }) => `${spec.say.text}: done`);
  return [...states, ...tasks, ...parts];
}

/** Notes are where people and places stand. */
function notes({ job, show }: SheetAsk): string[] {
  if (!show.has('names')) return [];
  return livingOf(job).flatMap((e) => (e.verb === 'note' ? [`${dayOf(e.at)}: ${e.value}`] : []));
}
