/**
 * A card for a piece that no file knows: its holes with their numbers, to be filled in with a pen at the machine, in the
 * order in which the row is typed afterwards.
 */
import type { RowItem } from '../model/types.ts';
import { inMm } from '../piece/life-size.ts';
import { layout } from '../piece/map.ts';
import { printItem } from '../piece/row.ts';
import type { Ask, NoPaper, Paper } from './ask.ts';
import { m, t } from './markup.ts';
import { page, within } from './page.ts';
import { proofLine } from './proof.ts';
import { dayOf } from './said.ts';

export interface BlankAsk extends Omit<Ask, 'piece'> {
  /** What is known already, hole by hole; null: nothing of this one. */
  row: readonly (RowItem | null)[];
  /** What the piece is called; empty: a line for it. */
  name: string;
}

/** What a name of a hole can count to. */
const MOST = 999;
const HEIGHT = 92;
const RADIUS = 5;
/** Room for what is written in and beside a hole, mm. */
const APART = 14;

export function blank({ job, now, size, row, name }: BlankAsk): Paper | NoPaper {
  if (row.length === 0 || row.length > MOST) {
    return {
      code: 'how-many',
      wrong: true,
      say: `How many holes? 1 to ${MOST}: --holes 13, or --row 'S S M+clip'.`,
    };
  }
  const names = row.map((_, i) => `${i + 1}`);
  const sheet = within(size);
  const room = { width: sheet.width - 2 * APART, height: HEIGHT - 2 * APART };
  const none = { map: null, pitch: null, holes: new Map() };
  const sized = inMm(layout(none, names), { across: null, apart: APART, ...room });
  const left = (sheet.width - sized.width) / 2;
  const height = sized.height + 2 * APART;
  const holes = sized.places.map(
    ({ name: hole, x, y }) =>
      m`<g class="hole" data-hole="${hole}"><circle cx="${x + left}" cy="${y + APART}" r="${RADIUS}" fill="none" stroke="#000" stroke-width=".25"/><text x="${x + left}" y="${y + APART - RADIUS - 1}" font-size="3" text-anchor="middle">${hole}</text></g>`,
  );
  const rows = row.map(
    (item, i) =>
      m`<tr><td>${names[i] ?? ''}</td><td>${item === null ? '' : t(printItem(item))}</td><td></td><td></td><td></td></tr>`,
  );
  const body = m`<h1>${name === '' ? m`Piece: <span class="fill"></span>` : t(name)}</h1>
<p>${t(job.upper.job)} · ${dayOf(now)} · taken off by <span class="fill short"></span> · tray <span class="fill short"></span></p>
${proofLine(within('a4').width)}
<svg class="holes" width="${sheet.width}mm" height="${height}mm" viewBox="0 0 ${sheet.width} ${height}">${holes}</svg>
<p>From outside, 1 at twelve o’clock, then clockwise; draw the outline, and move a number with an arrow where it lies otherwise. In each ring the kind, one letter for all bolts that are the same.</p>
<table class="fills"><thead><tr><th>Hole</th><th>Kind</th><th>Under the head, from the head down</th><th>Length, mm</th><th>Stuck, rounded, missing …</th></tr></thead><tbody>${rows}</tbody></table>
<p>What the letters are (thread × length under the head, head, tool):</p>
<div class="letters">${Array.from({ length: 4 }, () => m`<p><span class="fill letter"></span>: <span class="fill said"></span></p>`)}</div>
<p>Routes, marks, what was loose: <span class="fill"></span></p>
<p class="quiet">Typed afterwards in this order: the kinds from 1 to ${names.length}, + before what lies under the head, ! for still in, - for none.</p>`;
  return {
    html: page({
      title: `${name === '' ? 'A piece' : name}, to fill in`,
      size,
      body,
      style: STYLE,
    }),
    sheets: null,
    life: false,
    notes: [],
  };
}

const STYLE = `
.fill{display:inline-block;width:110mm;border-bottom:.3mm solid #000;height:6mm}
.fill.short{width:28mm}
.letters{display:grid;grid-template-columns:1fr 1fr;break-inside:avoid}
.letters p{margin:1mm 0}
.fill.letter{width:12mm}
.fill.said{width:68mm}
.fills td{height:6mm}
.fills td:nth-child(1){width:12mm}
.fills td:nth-child(2){width:24mm}
.fills td:nth-child(4){width:24mm}`;
