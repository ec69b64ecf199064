/** Where a job stands, and what is next. */
import { carrierOf } from '../job/overs.ts';
import { safe } from '../job/safe.ts';
import type { HoleState, Job, PieceNow } from '../job/types.ts';
import { curesNow, sayCureOf } from '../plan/cure.ts';
import { nextStep } from '../plan/next.ts';
import { openTimes, sayOpenTime } from '../plan/open-time.ts';
import { answer, type Call } from './command.ts';
import { correctedIn, correctedLines } from './corrected.ts';
import { openJob } from './open-job.ts';

export function run(call: Call) {
  const opened = openJob(call.words[0] ?? '', call.world);
  if ('answer' in opened) return opened.answer;
  const { job } = opened;
  const pieces = [...job.pieces.values()];
  const now = call.world.now();
  const cures = curesNow(job, now);
  const open = openTimes(job, now);
  const pieceJson = (piece: PieceNow) => jsonOf(job, piece);
  const json = {
    job: job.upper.job,
    machine: job.upper.machine,
    pieces: pieces.map(pieceJson),
    next: nextStep(job),
    cures: cures.map(({ piece, says, until }) => ({ piece, says, until })),
    open,
    corrections: job.corrections,
  };
  const sealed = [
    ...open.map((time) => `${time.name}, ${sayOpenTime(time, now)}.`),
    ...cures.map((cure) => sayCureOf(cure, now)),
  ];
  return answer(json, statusText(job, pieces, sealed));
}

function jsonOf(job: Job, piece: PieceNow): object {
  return {
    piece: piece.spec.key,
    name: piece.spec.name,
    where: piece.where,
    offWith: carrierOf(job, piece)?.spec.key ?? null,
    round: piece.round,
    holes: piece.holes.length,
    out: count(piece, 'out'),
    in: count(piece, 'in'),
    tight: count(piece, 'tight'),
    trouble: piece.holes.flatMap((h) => (h.trouble ? [{ hole: h.name, trouble: h.trouble }] : [])),
    conflicts: piece.holes.flatMap((h) =>
      h.conflict ? [{ hole: h.name, say: h.conflict.say, ids: h.conflict.ids }] : [],
    ),
  };
}

function count(piece: PieceNow, state: HoleState): number {
  return piece.holes.filter((h) => h.state === state).length;
}

/** `sealed`: what must be closed by a time, and what cures. */
function statusText(job: Job, pieces: readonly PieceNow[], sealed: readonly string[]): string {
  const title = [job.upper.job, job.upper.machine]
    .filter((t) => t !== null)
    .map(safe)
    .join('   ');
  const width = Math.max(0, ...pieces.map((p) => safe(p.spec.name).length));
  const lines = pieces.map(
    (p) => `${safe(p.spec.name).padEnd(width)}   ${safe(pieceSaid(job, p))}`,
  );
  const next = nextStep(job);
  return [
    title,
    '',
    ...lines,
    ...(lines.length > 0 ? [''] : []),
    ...(sealed.length > 0 ? [...sealed.map(safe), ''] : []),
    next ? `Next: ${safe(next.say)}` : 'Nothing is next.',
    ...correctedLines(job, correctedIn(job)).map(safe),
  ].join('\n');
}

/** `off: 10 of 11 out (cup 2); 9 stuck`. */
function pieceSaid(job: Job, piece: PieceNow): string {
  const carrier = carrierOf(job, piece);
  if (carrier) return `off with ${carrier.spec.name}`;
  const holes = piece.holes.length;
  const parts: string[] = [];
  const out = count(piece, 'out');
  const back = count(piece, 'in') + count(piece, 'tight');
  if (holes > 0 && (piece.where === 'off' || piece.where === 'open')) {
    parts.push(`${out} of ${holes} out${piece.tray ? ` (${piece.tray})` : ''}`);
  }
  if (piece.where === 'on' && holes > 0) {
    parts.push(`${back} of ${holes} in, ${count(piece, 'tight')} tight`);
  }
  if (piece.away === 'aside') parts.push('aside');
  for (const h of piece.holes) if (h.trouble) parts.push(`${h.name} ${h.trouble}`);
  for (const h of piece.holes)
    if (h.conflict) parts.push(`${h.name} in conflict: ${h.conflict.say}`);
  const round = piece.round > 1 ? `, round ${piece.round}` : '';
  return `${piece.where}${round}${parts.length > 0 ? `: ${parts.join('; ')}` : ''}`;
}
