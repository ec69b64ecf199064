/**
 * The card of a piece: its holes to poke the bolts through, the bolts at true length to lay them on, the order and the
 * torques. At life size where the holes were measured, else as drawn and said so.
 */
import { MAKER_FIRST } from '../bolt/torque/cautions.ts';
import { sayUnder } from '../job/fold/say-hole.ts';
import { inWords } from '../job/truth/said.ts';
import type { HoleNow, Job, Kind, PieceNow } from '../model/types.ts';
import { capital, many } from '../model/words.ts';
import { type Box, inMm, type Sized } from '../piece/life-size.ts';
import { layout } from '../piece/map.ts';
import { rounds } from '../piece/sequence/rounds.ts';
import { sequence } from '../piece/sequence/sequence.ts';
import type { Ask, NoPaper, Paper } from './ask.ts';
import { boltHeight, drawBolt, headRoom, sizeOf } from './bolt.ts';
import { around, type Lettered, type WrittenLabel, writeBeside } from './labels-at.ts';
import { joined, type Markup, m, t } from './markup.ts';
import { wrapped } from './measure.ts';
import { page, within } from './page.ts';
import { proofLine } from './proof.ts';
import {
  belongsSaid,
  cautionsOn,
  dayOf,
  kindSaid,
  ownTorques,
  stageSaid,
  texts,
  torqueSaid,
  unreadOn,
} from './said.ts';
import { drawMark, holdsBox, isIn, layingSaid, sheetsOf, type Tiles, tilesOf } from './tiles.ts';

export interface CardAsk extends Ask {
  piece: PieceNow;
  /** From the leftmost hole to the rightmost as somebody measured it, mm; null: nobody did. */
  across: number | null;
}

/** Height of what stands over and under the drawing on its sheet, mm. */
const HEAD = 26;
const PAD = 2;
/** Height between the outermost holes that nobody measured: the rest of the sheet is for what is said, mm. */
const DRAWN = 90;
/** Least distance of holes that nobody measured. */
const APART = 17;
/** Nobody glues more of them; a drawing that wants more has a slip in its figures. */
const MOST_SHEETS = 60;

/** No longer text than this stands at a hole; a longer one is told below. */
const LONGEST = 12;
const UNKNOWN_RADIUS = 3;

export function card(ask: CardAsk): Paper | NoPaper {
  const { job, piece, size } = ask;
  if (piece.holes.length === 0) {
    return { code: 'no-bolts', say: `${piece.spec.name} has no bolts: there is nothing to draw.` };
  }
  const sheet = within(size);
  const room = { width: sheet.width - 2 * PAD, height: sheet.height - HEAD };
  const drawn = drawHoles(ask, room);
  const overlap = Math.min(drawn.largest + 4, room.width / 2);
  const sheets = sheetsOf(drawn.box, room, overlap);
  if (!(sheets <= MOST_SHEETS)) {
    const [w, h] = [drawn.box.width, drawn.box.height].map((mm) => `${Math.round(mm)} mm`);
    const say = `At life size ${piece.spec.name} is ${w} by ${h}, more than ${MOST_SHEETS} sheets. Look at its figures (at:, pitch:, --width): are they mm?`;
    return { code: 'too-large', say };
  }
  const tiles = tilesOf(drawn.box, room, overlap);
  const laying = layingSaid(tiles);
  const notes = [sizeSaid(ask, drawn.sized), ...missingSaid(drawn.sized)];
  const pictures = tiles.tiles.map(
    (
      tile,
    ) => m`<section class="${tiles.tiles.length > 1 ? 'sheet' : 'first'}">${headOf(ask, tiles, tile.number, notes[0] ?? '')}
<svg class="holes" width="${tile.width}mm" height="${tile.height}mm" viewBox="${tile.x} ${tile.y} ${tile.width} ${tile.height}" data-life="${drawn.sized.life ? 'yes' : 'no'}">${drawn.holes.filter((h) => holdsBox(tile, h.box)).map((h) => h.markup)}${tiles.marks.filter((k) => isIn(tile, k.x, k.y)).map(drawMark)}</svg>
</section>`,
  );
  const body = m`${pictures}
<section>
${unreadOn(job)}${whole(ask)}${laying === '' ? null : m`<p>${laying}</p>`}${notes.slice(1).map((n) => m`<p class="loud">${n}</p>`)}${drawn.told.map((line) => m`<p class="quiet">${line}</p>`)}
${lengthLines(job, piece, sheet.width)}
${listOf('Under the heads', underHeads(piece))}${listOf('Trouble', troublesSaid(piece))}
${order(job, piece)}
</section>`;
  return {
    html: page({ title: `${piece.spec.name}: ${job.upper.job}`, size, body, style: CARD_STYLE }),
    sheets: tiles.tiles.length,
    life: drawn.sized.life,
    notes: [...notes, ...(laying === '' ? [] : [laying])],
  };
}

const CARD_STYLE = `
.head{height:15mm;font-size:8.5pt;line-height:4.6mm}
.head b{font-size:11pt}
.head span{display:block;white-space:nowrap}
.first{break-inside:avoid}
section>h2{margin-top:3.5mm}
section>:is(p,ol){margin:.5mm 0}
section>.quiet:last-child{break-before:avoid}
.lengths{display:flex;flex-wrap:wrap;gap:1mm 6mm}
.lengths figure{margin:0;break-inside:avoid}
.lengths figcaption{font-size:8.5pt}`;

/** Three lines of the sheet's own width: what is longer is told whole below the drawing. */
function headOf(
  { job, piece, now, size: paper }: CardAsk,
  { tiles }: Tiles,
  n: number,
  size: string,
): Markup {
  const of = tiles.length > 1 ? `, sheet ${n} of ${tiles.length}` : '';
  const { width } = within(paper);
  const name = shortened(piece.spec.name, width - 75, NAME);
  const about = shortened(aboutSaid(job), width - 25, ABOUT);
  return m`<div class="head"><span><b>${t(name)}</b>${of}, as seen from outside</span><span>${t(about)} · ${dayOf(now)}</span><span>${size}</span></div>${proofLine(within('a4').width)}`;
}

/** mm: sizes of the letters in the head. */
const NAME = 3.9;
const ABOUT = 3;

function aboutSaid({ upper }: Job): string {
  return [upper.job, upper.machine].filter((s) => s !== null).join(' · ');
}

function shortened(text: string, width: number, size: number): string {
  const [first = '', ...rest] = wrapped(text, width / size);
  return rest.length === 0 ? first : `${first} …`;
}

/** The name and the job where the head had no room for them. */
function whole({ job, piece, size }: CardAsk): Markup | null {
  const { width } = within(size);
  const long = [
    shortened(piece.spec.name, width - 75, NAME) === piece.spec.name ? '' : piece.spec.name,
    shortened(aboutSaid(job), width - 25, ABOUT) === aboutSaid(job) ? '' : aboutSaid(job),
  ].filter((s) => s !== '');
  return long.length === 0 ? null : m`${long.map((text) => m`<p>${t(text)}</p>`)}`;
}

function sizeSaid({ piece }: CardAsk, { by, width }: Sized): string {
  const least = piece.holes.length;
  switch (by) {
    case 'at':
      return 'Life size: the holes lie as they were measured, hole by hole.';
    case 'pitch':
      return 'Life size: the picture of the holes, with the pitch that was measured.';
    case 'width':
      return `Life size by one measure, ${width} mm across all holes; between them as drawn.`;
    case 'drawn':
      return piece.spec.map === null
        ? 'NOT as they lie: nobody drew or measured the holes. A ring is assumed.'
        : 'NOT life size: nobody measured the holes. They lie as drawn.';
    case 'rows':
      return `NOT as they lie: nothing says where the ${least} holes are. In rows, in their order.`;
  }
}

function missingSaid({ missing }: Sized): string[] {
  if (missing.length === 0) return [];
  const [is, it] = missing.length === 1 ? ['lies', 'Its place'] : ['lie', 'Their places'];
  return [`${missing.join(', ')} ${is} where there was room. ${it} nobody noted.`];
}

interface DrawnHole {
  box: Box;
  markup: Markup;
}

/** All holes with what stands beside them, the room they take, and the longer texts, told apart. */
function drawHoles({ job, piece, across }: CardAsk, room: { width: number; height: number }) {
  const { kinds } = job.upper;
  const names = piece.holes.map((h) => h.name);
  const free = { width: room.width - 2 * APART, height: DRAWN };
  const sized = inMm(layout(piece.spec, names), { across, apart: APART, ...free });
  const told: string[] = [];
  const lettered = piece.holes.map((hole, i): Lettered & { d: number | null } => {
    const { x = 0, y = 0 } = sized.places[i] ?? {};
    const d = diameter(kinds, hole);
    const lines = linesAt(hole, told);
    return { x, y, radius: d === null ? UNKNOWN_RADIUS : d / 2, lines, d };
  });
  const written = writeBeside(lettered);
  const holes = lettered.map((hole, i): DrawnHole => {
    const text = written[i] ?? { lines: [], box: { x: hole.x, y: hole.y, width: 0, height: 0 } };
    return { box: text.box, markup: drawHole(names[i] ?? '', hole, text) };
  });
  const box = around(
    holes.map((h) => h.box),
    PAD,
  );
  const largest = Math.max(...holes.map((h) => Math.max(h.box.width, h.box.height)));
  return { sized, holes, box, largest, told };
}

function diameter(kinds: ReadonlyMap<string, Kind>, { belongs }: HoleNow): number | null {
  const kind = belongs === null ? undefined : kinds.get(belongs.kind);
  return kind ? sizeOf(kind).d : null;
}

/** Its number and kind, what goes under the head, its trouble; what is too long goes to `told`. */
function linesAt(hole: HoleNow, told: string[]): string[] {
  const under = hole.unsettled ? [] : (hole.belongs?.with ?? []);
  const kind = hole.unsettled
    ? `${hole.claim?.kind ?? '-'}/${hole.found?.kind ?? '-'}?`
    : (hole.belongs?.kind ?? '?');
  if (hole.unsettled) told.push(`${hole.name}: ${belongsSaid(hole)} Not settled.`);
  const short = under.every((word) => word.length <= LONGEST) && under.length < 3;
  if (!short) told.push(`${hole.name}: under the head, from the head down: ${under.join(', ')}.`);
  return [
    `${hole.name} ${kind}`,
    ...(short ? under.map((word) => `+ ${word}`) : ['+ see below']),
    ...(hole.trouble === null ? [] : [hole.trouble]),
    ...(hole.conflict === null ? [] : ['two marks differ']),
  ];
}

function drawHole(
  name: string,
  { x, y, radius, d }: Lettered & { d: number | null },
  written: WrittenLabel,
) {
  const arm = 1.2;
  return m`<g class="hole" data-hole="${name}"><circle class="ring" cx="${x}" cy="${y}" r="${radius}" fill="none" stroke="#000" stroke-width=".25"${d === null ? m` stroke-dasharray=".8 .8"` : null}/><path fill="none" stroke="#000" stroke-width=".15" d="M${x - arm} ${y}H${x + arm}M${x} ${y - arm}V${y + arm}"/>${written.lines.map((l) => m`<text x="${l.x}" y="${l.y}" font-size="${l.size}"${l.bold ? m` font-weight="bold"` : null}>${l.text}</text>`)}</g>`;
}

/** A figure for each kind that belongs on the piece: at true length. Longer than the sheet is told, not drawn. */
function lengthLines(job: Job, piece: PieceNow, width: number): Markup {
  const items = piece.holes.flatMap((h) => h.belongs ?? []);
  const count = new Map<string, number>();
  for (const { kind } of items) count.set(kind, (count.get(kind) ?? 0) + 1);
  const figures = [...count].map(([letter, n]) => {
    const kind = job.upper.kinds.get(letter);
    const said = m`${n} × ${t(kindSaid(job.upper.kinds, letter))}`;
    const size = kind ? sizeOf(kind) : null;
    if (size === null || size.length === null) {
      return m`<figure><figcaption>${said}: its length is not noted.</figcaption></figure>`;
    }
    const head = headRoom(size) + 1;
    const all = head + size.length + 2;
    if (all > width) {
      return m`<figure><figcaption>${said}: ${size.length} mm, longer than this sheet. Lay it on a rule.</figcaption></figure>`;
    }
    const half = boltHeight(size) / 2 + 0.5;
    const height = 2 * half + 4;
    return m`<figure><svg width="${all}mm" height="${height}mm" viewBox="0 0 ${all} ${height}">${drawBolt(size, letter, head, half, 2 * half + 2)}</svg><figcaption>${said}</figcaption></figure>`;
  });
  const alone = piece.holes.filter((h) => h.belongs === null).length;
  const unknown =
    alone === 0
      ? null
      : m`<p class="quiet">${many(alone, 'hole')} of which nobody noted what belongs there.</p>`;
  if (figures.length === 0) return m`${unknown}`;
  return m`<h2>Lay the bolt on its line: true length under the head</h2><div class="lengths">${figures}</div>${unknown}
<p class="quiet">Countersunk screws, studs and grub screws are measured over all.</p>`;
}

/** `2 × copper washer (3, 7)`: what is laid beside the bolts, with its holes. */
function underHeads({ holes }: PieceNow): string[] {
  const at = holes.flatMap(({ name, belongs }) =>
    (belongs?.with ?? []).map((word) => ({ word, name })),
  );
  return [...Map.groupBy(at, ({ word }) => word)].map(
    ([word, all]) => `${all.length} × ${sayUnder(word)} (${all.map((a) => a.name).join(', ')})`,
  );
}

/** `9 stuck, its bolt still in`. */
function troublesSaid({ holes }: PieceNow): string[] {
  return holes.flatMap(({ name, trouble, state }) => {
    if (trouble === null) return [];
    return [`${name} ${trouble}${state === 'home' ? ', its bolt still in' : ''}`];
  });
}

function order(job: Job, piece: PieceNow): Markup {
  const { spec } = piece;
  const names = piece.holes.map((h) => h.name);
  const { kinds } = job.upper;
  const found = sequence(spec, kinds, names);
  const plan = rounds(spec, kinds, found.tighten, names);
  const torque = torqueSaid(piece);
  return m`<h2>Tighten</h2>
<p>${t(capital(found.why))}.</p>
<p class="order"><b>${joined(found.tighten, ' ')}</b></p>
<p class="quiet">Loosen: ${joined(found.loosen, ' ')}</p>
${[...found.tips.tighten, ...found.tips.loosen].map((tip) => m`<p>${tip}</p>`)}
<p>Torque: ${torque === null ? 'not noted. Ask the manual.' : t(torque)}</p>
<ol>${plan.rounds.map((r) => m`<li>${t([r.name, stageSaid(r.torque, r.angle), r.after === null ? '' : `after ${r.after}`].filter((s) => s !== '').join(' '))}${r.say === '' ? null : m`: ${r.say}`}</li>`)}</ol>
${ownTorques(piece).map(({ hole, said }) => m`<p>${t(`Hole ${hole}: ${inWords([said])}`)}</p>`)}
${listOf('Joint', texts(spec.joint))}${listOf('Loose', texts(spec.loose))}
${cautionsOn(piece).map((say) => m`<p class="loud">${t(say)}</p>`)}
<p class="quiet">${MAKER_FIRST}</p>`;
}

function listOf(name: string, all: readonly string[]): Markup | null {
  return all.length === 0 ? null : m`<p>${name}: ${joined(all.map(t), '; ')}</p>`;
}
