/**
 * The tag to hang on the machine: that it is not to be started, why, since when, and who can be asked. What it says is
 * what the gate before the start says, and nothing of its own.
 */
import { daysBetween } from '../model/time.ts';
import { capital, listPieces } from '../model/words.ts';
import { gate, isPassed } from '../plan/gates/gate.ts';
import type { GateItem } from '../plan/gates/items.ts';
import { movingOf } from '../plan/next/dont.ts';
import { isBack } from '../plan/order/needed.ts';
import { type Standing, standingOf } from '../plan/order/standing.ts';
import { sayDate, sayDays } from '../plan/time/days.ts';
import type { Ask, NoPaper, Paper } from './ask.ts';
import { followsLater } from './follow.ts';
import { type Markup, m, t } from './markup.ts';
import { page, within } from './page.ts';

export interface TagAsk extends Omit<Ask, 'piece'> {
  /** Who can be asked; null: a line to write on. */
  who: string | null;
}

export interface TagSays {
  /** `DO NOT START`, or `SAFE TO MOVE, NOT TO START` … */
  moving: string;
  /** What stops, the gate's own sentences. */
  stops: string[];
  /** What else is known to be open. */
  open: string[];
  /** What nobody has looked at yet. */
  unseen: string[];
  /** RFC 3339; null where nothing was undone. */
  since: string | null;
}

/** Null: all that is asked before the start was seen to. */
export function tagSays(job: TagAsk['job'], now: string): TagSays | null {
  const found = gate(job, 'start', null, now);
  if (isPassed(found)) return null;
  const standing = standingOf(job, now);
  const left = found.items.filter((item) => !item.done);
  const isKnown = (item: GateItem) => item.loud || KNOWN.test(item.key);
  const others = left.filter((item) => !item.stops);
  return {
    moving: movingSaid(standing),
    stops: left.filter((item) => item.stops).map((item) => item.stop ?? item.say),
    open: others.filter((item) => isKnown(item) && !ALWAYS.has(item.key)).map((item) => item.say),
    unseen: others.filter((item) => !isKnown(item) || ALWAYS.has(item.key)).map((i) => i.say),
    since: sinceWhen(standing),
  };
}

/** Items that the job itself knows to be open. */
const KNOWN = /^(?:off$|trouble-|part-back-|adjust-|task-|fill-|wait-|cure-)/;
/** Asked before each first start, whatever was done. */
const ALWAYS = new Set(['air', 'stand', 'near', 'levels']);

function movingSaid(standing: Standing): string {
  const { say, safe, unsaid, untested } = movingOf(standing);
  if (say.length > 0) return say.join(' ');
  if (safe) return 'Safe to move, not to start.';
  if (untested.length > 0) {
    const back = listPieces(untested);
    return `Don’t move it yet: ${back} ${untested.length === 1 ? 'is' : 'are'} back, and not tested.`;
  }
  if (unsaid.length === 0) return 'Ask before you move it: nobody noted what is undone on it.';
  const names = listPieces(unsaid);
  return `Ask before you move it: nobody noted whether it may stand or roll without ${names}.`;
}

/** Since the first of what is not back came off, or what was let out ran out. */
function sinceWhen({ job, lines }: Standing): string | null {
  const undone = [...job.pieces.values()].filter((p) => p.where !== 'home' && !isBack(p));
  const offs = undone.flatMap((p) => lines.off.get(p.spec.key)?.at ?? []);
  const first = lines.all.find((line) => offs.includes(line.at))?.at;
  return (
    first ?? lines.all.find((line) => line.verb === 'done' && line.task !== undefined)?.at ?? null
  );
}

/** Width and height that the two large words take, mm: letters 30 mm high are read from three metres and farther. */
const WORD = { height: 42, size: 42 };

/** What the frame takes of the width, mm. */
const FRAME = 10;

export function tag(ask: TagAsk): Paper | NoPaper {
  const { job, now, size, who } = ask;
  const says = tagSays(job, now);
  if (says === null) {
    return {
      code: 'nothing-open',
      say: 'All that is asked before the start was seen to: there is nothing to hang on it.',
    };
  }
  const width = within(size).width - FRAME;
  const since = says.since === null ? null : sinceSaid(says.since, now);
  const body = m`<section class="tag">
${word('DO NOT', width)}
${word('START', width)}
<p class="moving">${t(says.moving)}</p>
${reasons('Why', [...says.stops, ...says.open])}
${reasons('Not ticked yet', says.unseen)}
${reasons('After the start', followsLater(job))}
<dl><dt>Machine</dt><dd>${t(job.upper.machine ?? job.upper.job)}</dd>
<dt>Since</dt><dd>${since ?? m`<span class="fill"></span>`}</dd>
<dt>Ask</dt><dd>${who === null ? m`<span class="fill"></span>` : t(who)}</dd></dl>
<p class="quiet">${sayDate(now, '')}. Nobody but who hung it here takes it off. The maker’s manual and a licensed mechanic go before this sheet.</p>
</section>`;
  return {
    html: page({
      title: `Do not start: ${job.upper.machine ?? job.upper.job}`,
      size,
      body,
      style: STYLE,
    }),
    sheets: null,
    life: null,
    notes: [...says.stops, ...says.open],
  };
}

function sinceSaid(since: string, now: string): string {
  const days = daysBetween(since, now);
  return `${sayDate(since, now)}${days === 0 ? ', today' : ` (${sayDays(days)})`}`;
}

/** Stretched to the width of the sheet, whatever font is there. */
function word(text: string, width: number): Markup {
  const { height, size } = WORD;
  return m`<svg class="word" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}"><text x="${width / 2}" y="${height - 4}" font-size="${size}" font-weight="bold" text-anchor="middle" textLength="${width - 6}" lengthAdjust="spacingAndGlyphs">${text}</text></svg>`;
}

function reasons(name: string, all: readonly string[]): Markup | null {
  if (all.length === 0) return null;
  return m`<h2>${name}</h2><ul>${all.map((say) => m`<li>${t(capital(say))}</li>`)}</ul>`;
}

const STYLE = `
.word{overflow:visible}
.tag{border:1.2mm solid #000;padding:3mm 2mm}

.tag h2{font-size:15pt;margin:3mm 3mm 1mm}
.tag ul{font-size:14pt;line-height:1.3;margin:1mm 3mm}
.moving{font-size:17pt;font-weight:bold;margin:2mm 3mm}
.tag dl{display:grid;grid-template-columns:28mm 1fr;font-size:14pt;margin:3mm}
.tag dt{font-weight:bold}.tag dd{margin:0}
.tag .quiet{margin:0 3mm}
.fill{display:inline-block;width:80mm;border-bottom:.4mm solid #000;height:8mm}`;
