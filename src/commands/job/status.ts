/** Where a job stands, and what is next. */

import { noFigureSaid } from '../../job/fold/no-figure.ts';
import { otherFigure, otherFigureSaid } from '../../job/fold/other-figure.ts';
import { carrierOf } from '../../job/fold/overs.ts';
import { safe } from '../../model/safe.ts';
import type { HoleState, Job, PieceNow } from '../../model/types.ts';
import { caresOf } from '../../plan/care/care.ts';
import { wheelOffSaid } from '../../plan/care/still-off.ts';
import { type Back, backAfter } from '../../plan/next/back.ts';
import { nextStep } from '../../plan/next/next.ts';
import { nextOnJob } from '../../plan/next/next-on-job.ts';
import { noteRows } from '../../plan/next/note.ts';
import { nothingNext } from '../../plan/next/nothing-next.ts';
import { isBack } from '../../plan/order/needed.ts';
import { sayWhere } from '../../plan/piece/say-piece.ts';
import { torqueUnknown } from '../../plan/piece/torque-unknown.ts';
import { plan } from '../../plan/plan.ts';
import { curesNow } from '../../plan/seal/cure.ts';
import { openTimes, sayOpenTimeOf } from '../../plan/seal/open-time.ts';
import { nowHere } from '../../world.ts';
import { benchOf } from '../base/bench-of.ts';
import { answer, type Call } from '../base/command.ts';
import { correctedIn, correctedLines, lostLines } from '../base/corrected.ts';
import { openJob } from '../base/open-job.ts';
import { nothingSaid } from '../base/unread.ts';

export function run(call: Call) {
  const opened = openJob(call.words[0] ?? '', call.world);
  if ('answer' in opened) return opened.answer;
  const { job } = opened;
  const pieces = [...job.pieces.values()];
  const now = nowHere(call.world);
  const { hours = null } = benchOf(call.world, opened.file) ?? {};
  const back = backAfter(job, now, hours);
  const cures = curesNow(job, now);
  const open = openTimes(job, now);
  const exact = nextStep(job);
  const first = nextOnJob(job, { plan: plan(job, now, hours), cures, now });
  const json = () => ({
    job: job.upper.job,
    machine: job.upper.machine,
    pieces: pieces.map((piece) => jsonOf(job, piece)),
    next: exact,
    nextOnJob: first,
    cures: cures.map(({ piece, says, until }) => ({ piece, says, until })),
    open,
    corrections: job.corrections,
    back,
  });
  // Where a bolt is next, it is named.
  const named = exact !== null && exact.piece === first?.piece && !first.waits;
  const next = named ? exact.say : first?.say;
  const lines = [
    ...titleLines(job),
    ...block(pieceLines(job, pieces)),
    ...block(open.map((time) => sayOpenTimeOf(time, now))),
    ...block(noteLines(job, back, now)),
    next === undefined ? nothingSaid(job, nothingNext(job, back, now)) : `Next: ${safe(next)}`,
    ...back.dont.map(safe),
    ...correctedLines(job, correctedIn(job)).map(safe),
    ...lostLines(job).map(safe),
  ];
  return answer(call.options.json ? json() : {}, lines.join('\n'));
}

function jsonOf(job: Job, piece: PieceNow): object {
  const cares = caresOf(piece.spec);
  return {
    piece: piece.spec.key,
    name: piece.spec.name,
    where: piece.where,
    care: cares.care,
    guessed: cares.guessed.length > 0,
    offWith: carrierOf(job, piece)?.spec.key ?? null,
    round: piece.round,
    holes: piece.holes.length,
    out: count(piece, 'out'),
    in: count(piece, 'in'),
    tight: count(piece, 'tight'),
    torqueUnknown: torqueUnknown(job, piece),
    torqueOther: otherFigure(job, piece),
    trouble: piece.holes.flatMap((h) => (h.trouble ? [{ hole: h.name, trouble: h.trouble }] : [])),
    conflicts: piece.holes.flatMap((h) =>
      h.conflict ? [{ hole: h.name, say: h.conflict.say, ids: h.conflict.ids }] : [],
    ),
  };
}

function count(piece: PieceNow, state: HoleState): number {
  return piece.holes.filter((h) => h.state === state).length;
}

function titleLines({ upper }: Job): string[] {
  const said = [upper.job, upper.machine].filter((t) => t !== null);
  return [said.map(safe).join('   '), ''];
}

function pieceLines(job: Job, pieces: readonly PieceNow[]): string[] {
  const width = Math.max(0, ...pieces.map((p) => safe(p.spec.name).length));
  return pieces.map((p) => `${safe(p.spec.name).padEnd(width)}   ${pieceSaid(job, p)}`);
}

/** Lines with a blank one behind them; nothing for none. */
function block(lines: readonly string[]): string[] {
  return lines.length === 0 ? [] : [...lines.map(safe), ''];
}

/** What the pieces do not say of themselves. */
const OF_THE_PIECES: readonly string[] = ['Off', 'Aside', 'Coming off'];

function noteLines(job: Job, back: Back, now: string): string[] {
  const rows = noteRows(job, back, now).filter((row) => {
    const none = row.label === 'Finger-tight' && !row.loud;
    return !none && !OF_THE_PIECES.includes(row.label);
  });
  const width = Math.max(0, ...rows.map((row) => row.label.length));
  return rows.flatMap(({ label, texts }) =>
    texts.map((text, i) => `${(i === 0 ? label : '').padEnd(width)}   ${text}`),
  );
}

/** `coming off, 10 of 11 out; 9 is stuck`: where it stands, and what is the matter with its bolts. */
function pieceSaid(job: Job, piece: PieceNow): string {
  const parts = [sayWhere(piece, job)];
  for (const h of piece.holes) {
    if (h.trouble) parts.push(`${h.name} ${h.trouble}`);
    if (h.conflict) parts.push(`${h.name} in conflict: ${h.conflict.say}`);
  }
  const early = isBack(piece) ? wheelOffSaid(job, piece) : null;
  if (early !== null) parts.push(early);
  const unknown = noFigureSaid(piece, torqueUnknown(job, piece));
  if (unknown !== null) parts.push(unknown);
  const other = otherFigureSaid(otherFigure(job, piece));
  if (other !== null) parts.push(other);
  return parts.join('; ');
}
