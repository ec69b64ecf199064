/** The piece as it stands, drawn: its holes, and what can be relied on. */
import { lengthsLine } from '../../bolt/length/lengths-said.ts';
import { isInch } from '../../bolt/read/sizes.ts';
import { heldTorque, sayBreaks, wouldBreak } from '../../job/fold/against.ts';
import { lengthsOf } from '../../job/fold/lengths-of.ts';
import { byNoFigure, noFigureSaid } from '../../job/fold/no-figure.ts';
import { otherFigure, otherFigureSaid } from '../../job/fold/other-figure.ts';
import { isOther, sayDiffers, sayInHole, sayTrouble } from '../../job/fold/say-hole.ts';
import { blockers, stillOver } from '../../job/judge/marks/blocked.ts';
import { ended } from '../../model/safe.ts';
import type { HoleNow, Job, PieceNow } from '../../model/types.ts';
import { inPlace, listNames, listPieces } from '../../model/words.ts';
import { UNKNOWN } from '../../piece/row.ts';
import { wheelOffSaid } from '../../plan/care/still-off.ts';
import { torqueRows } from '../../plan/known/torque-rows.ts';
import { workInWords } from '../../plan/next/next.ts';
import { sayThing } from '../../plan/order/inside.ts';
import { isBack } from '../../plan/order/needed.ts';
import { shouldSaid } from '../../plan/piece/answers.ts';
import { passUnderWay, toSettle } from '../../plan/piece/piece-now.ts';
import { sayTakes, sayWhere } from '../../plan/piece/say-piece.ts';
import { comesAlong, type WayNow } from '../../plan/piece/way.ts';
import { cureSaid, hurrySaid } from '../../plan/seal/sealant.ts';
import { holeNamed } from '../base/moves.ts';
import type { Page } from '../base/page.ts';
import { piecePage } from '../base/piece-page.ts';
import type { State } from '../base/state.ts';
import { wrapStruck } from '../base/struck.ts';
import { both, corrected, flow } from '../kit/both.ts';
import { type Line, line, span, wrap } from '../kit/text.ts';
import { capital, list, many, sayCounts } from '../kit/words.ts';
import { quietLast } from '../last/last-key.ts';
import { lacksSaid } from '../parts-list/missing.ts';
import type { OnHoles } from './step.ts';
import { sayPass, sayPrinted } from './tight-said.ts';
import { restsSaid } from './unmark.ts';

export type OnLook = OnHoles<'look'> & { way: WayNow };

export function drawLook(here: OnLook): Page {
  const { state, job, piece, step, way } = here;
  const lit = step.here;
  const hole = holeNamed(piece, lit);
  return piecePage(
    here,
    (h) => ({
      here: h.name === lit,
      label: sayInHole(h),
      short: isOther(h) ? `${h.holds?.kind}!` : (h.belongs?.kind ?? ''),
    }),
    {
      right: line(sayWhere(piece, job)),
      under: line(piece.spec.torque?.text ?? ''),
      say: hole
        ? [...sayHole(job, hole, piece, state.columns), ...restsSaid(here)]
        : [
            ...sayLacks(state, job, piece),
            ...sayCured(state, job, piece),
            ...sayPiece(job, piece, way, state.columns),
            ...(piece.last === null ? quietLast(state, piece.spec.key) : []),
          ],
    },
  );
}

/** Parts that are missing and without which it cannot go on. */
function sayLacks(state: State, job: Job, piece: PieceNow): Line[] {
  const lacks = piece.away === 'no' ? null : lacksSaid(job, piece.spec.key, state.now);
  return wrap(lacks ?? '', state.columns, LOUD);
}

/** By when its joint must be closed, and what the joint does not bear yet. */
function sayCured({ now, columns }: State, job: Job, piece: PieceNow): Line[] {
  return [
    ...wrap(hurrySaid(job, piece, now), columns, { bold: true }),
    ...wrap(cureSaid(job, piece, now) ?? '', columns, { bold: true }),
  ];
}

const LOUD = { colour: 'red', bold: true } as const;

function sayPiece(job: Job, piece: PieceNow, way: WayNow, columns: number): Line[] {
  const odd = toSettle(piece).map((h) => `${h.name}: ${sayDiffers(h)}.`);
  const bad = piece.holes.flatMap((h) =>
    h.trouble ? [`${h.name}: ${sayTrouble(h.trouble)}.`] : [],
  );
  const next = way === 'done' ? workInWords(job) : null;
  const inside = job.inside.filter((i) => i.piece === piece.spec.key).map(sayThing);
  return [
    ...wrap(inside.length > 0 ? `Inside: ${list(inside)}.` : '', columns, LOUD),
    ...wrap(way === 'done' ? doneSaid(job, piece) : '', columns, { bold: true }),
    ...wrap((isBack(piece) && wheelOffSaid(job, piece)) || '', columns, LOUD),
    ...wrap(wouldBreakSaid(job, piece), columns, LOUD),
    ...wrapStruck(next ? ['Next: ', ...next.words] : [passSaid(job, piece, way)], columns, {
      bold: true,
    }),
    ...corrected(torqueRows(job, piece, null, null), columns),
    ...wrap(`${traySaid(job, piece) ?? boltsSaid(piece)}${order(job, piece, way)}`, columns),
    ...wrap([...bad, ...odd].join(' '), columns, { bold: true }),
  ];
}

/** `Next pass, 2 of 2: full, 10 N·m (manual 2-17).` */
function passSaid(job: Job, piece: PieceNow, way: WayNow): string {
  const now = way === 'tight' ? passUnderWay(piece, job.upper.kinds) : null;
  if (now === null) return '';
  const begun = now.done.length > 0 ? `, ${now.done.length} done` : '';
  const which = `${now.number} of ${now.of}${begun}`;
  return `Next pass, ${which}: ${sayPass(now.pass)}${sayPrinted(piece, now.pass)}.`;
}

/** What should lie in its tray; null when nothing lies in one. */
function traySaid(job: Job, piece: PieceNow): string | null {
  const should = piece.away === 'no' ? null : shouldSaid(job, piece);
  if (should === null) return null;
  return piece.tray === null
    ? should
    : `${capital(inPlace(piece.tray))}: ${should.replace(/^You/, 'you')}`;
}

function boltsSaid(piece: PieceNow): string {
  const n = piece.holes.length;
  const tray =
    piece.away !== 'no' && piece.tray !== null ? ` ${capital(inPlace(piece.tray))}.` : '';
  const belongs = piece.holes.map((h) => h.belongs);
  const unnamed = belongs.every((item) => item === null || item.kind === UNKNOWN);
  const all = unnamed ? '' : `${many(n, 'bolt')}: `;
  if (n > 0) return `${all}${sayCounts(belongs)}.${tray}`;
  if (comesAlong(piece)) return '';
  // Off or back on without a bolt it has none.
  if (piece.away !== 'no' || piece.fitted) return 'No bolts.';
  const none = piece.spec.row === null ? 'Nothing is noted of its bolts yet.' : 'No bolts.';
  return `${none} Look for what holds it before you pull: clips, dowels, a hidden screw.`;
}

/** Said calmly: what can be relied on now. */
function doneSaid(job: Job, piece: PieceNow): string {
  const n = piece.holes.length;
  if (comesAlong(piece)) return `${capital(sayWhere(piece, job))}, without a step of its own.`;
  if (n === 0) return 'Back on.';
  const tight = piece.holes.filter((h) => h.state === 'tight').length;
  if (tight < n) return `${tight} of ${n} are tight.`;
  const unknown = noFigureSaid(piece, byNoFigure(job, piece));
  const said = `${n === 1 ? 'It is tight' : `All ${n} are tight`}${torquesSaid(piece)}.`;
  const other = otherFigureSaid(otherFigure(job, piece));
  return [said, ...[unknown, other].flatMap((t) => (t === null ? [] : `${capital(t)}.`))].join(' ');
}

/** `, 10 N·m, manual 2-17`; where holes have their own, `: 1 and 2 at 40 lbf·ft; 3 at 11 N·m`. */
function torquesSaid({ spec, holes }: PieceNow): string {
  const text = (name: string) => (spec.holes.get(name)?.torque ?? spec.torque)?.text ?? '';
  const each = [...Map.groupBy(holes, (h) => text(h.name))];
  const [only] = each;
  if (each.length < 2) return only?.[0] ? `, ${only[0]}` : '';
  const at = each.map(([torque, of]) => {
    const which = listNames(of);
    return torque === '' ? `${which} by no figure` : `${which} at ${torque}`;
  });
  return `: ${at.join('; ')}`;
}

/** What has to come off before it, or go back before it. */
function order(job: Job, piece: PieceNow, way: WayNow): string {
  const comes = way === 'out' || way === 'row' || way === 'remove' || way === 'count';
  const before = comes ? stillOver(job, piece) : way === 'done' ? [] : blockers(job, piece);
  if (before.length === 0) return '';
  const which = listPieces(before);
  return comes ? ` Over it, and still on: ${which}.` : ` To be back on before it: ${which}.`;
}

/** Its torque against it: loud where it would break something, and told why where that cannot be said. */
function againstHole(job: Job, hole: HoleNow, piece: PieceNow, columns: number): Line[] {
  const held = heldTorque(piece, hole, job.upper.kinds);
  if (held === null) return [];
  const breaks = wouldBreak(held);
  const { verdict, why } = held.against;
  const said = verdict === 'cannot say' ? `Does it stand the torque? ${why}` : why;
  return wrap(breaks ? `STOP. ${sayBreaks(held)}` : said, columns, breaks ? LOUD : {});
}

/** Which lengths may go in it, where that is known. */
function lengthsSaid(job: Job, hole: HoleNow, piece: PieceNow): string {
  const lengths = lengthsOf(piece, hole, job.upper.kinds);
  const thread = job.upper.kinds.get(hole.belongs?.kind ?? '')?.thread ?? null;
  return (lengths && lengthsLine(lengths, isInch(thread))) ?? '';
}

/** The first torque that would break something here. */
function wouldBreakSaid(job: Job, piece: PieceNow): string {
  for (const hole of piece.holes) {
    const held = heldTorque(piece, hole, job.upper.kinds);
    if (held && wouldBreak(held)) return `STOP. ${hole.name}: ${sayBreaks(held)}`;
  }
  return '';
}

/** The way to mend it begins with saying so. */
const STRIPPED = 'Thread stripped? - then p says so. Then h: how it is mended; m: it is mended.';

/** All that is known of one hole. */
function sayHole(job: Job, hole: HoleNow, piece: PieceNow, columns: number): Line[] {
  const takes = `${hole.name} takes ${sayTakes(job, hole.belongs)}.`;
  const bad = hole.trouble ? ` ${capital(sayTrouble(hole.trouble))}.` : '';
  const odd = hole.unsettled || hole.conflict ? ` ${capital(sayDiffers(hole))}.` : '';
  const note = piece.spec.holes.get(hole.name)?.note ?? null;
  const said = note === null ? [] : both(ended(capital(note.text)), note.printed);
  return [
    ...wrap(takes, columns, { bold: true }),
    ...flow([...said, span(`${bad}${odd}`)], columns),
    ...corrected(torqueRows(job, piece, null, hole.name), columns),
    ...againstHole(job, hole, piece, columns),
    ...wrap(lengthsSaid(job, hole, piece), columns),
    ...wrap(hole.trouble === null ? STRIPPED : '', columns),
  ];
}
