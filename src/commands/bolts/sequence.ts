/** In which order a piece is tightened and loosened, with its passes, and how evenly that pulls it down. */
import { printQuantity } from '../../bolt/read/units.ts';
import { passDue } from '../../job/judge/marks/pass-due.ts';
import type { Job, PieceNow } from '../../model/types.ts';
import { layout } from '../../piece/map.ts';
import { rounds } from '../../piece/sequence/rounds.ts';
import { type Sequence, sequence } from '../../piece/sequence/sequence.ts';
import { ordinal } from '../../piece/words.ts';
import { answer, type Call, misuse, optionText } from '../base/command.ts';
import { correctedIn, correctedLines } from '../base/corrected.ts';
import { holeWords } from '../base/mark.ts';
import { openPiece } from '../base/open-job.ts';
import { textMap } from '../base/text-map.ts';

export function run(call: Call) {
  const opened = openPiece(call);
  if ('answer' in opened) return opened.answer;
  const { job, key, piece } = opened;
  const names = piece.holes.map((h) => h.name);
  const said = holeWords([optionText(call, 'done') ?? '']);
  const strange = said.find((name) => !names.includes(name));
  if (strange !== undefined) {
    return misuse('no-such-hole', `${piece.spec.name} has no hole ${strange}.`, { hole: strange });
  }
  const done = [...new Set([...said, ...doneInPass(piece, job)])];
  const order = sequence(piece.spec, job.upper.kinds, names, done);
  const plan = rounds(piece.spec, job.upper.kinds, order.tighten, names);
  const passes = plan.rounds.map(({ name, torque, angle, order }) => ({
    name,
    torque: torque && {
      value: torque.value,
      ...(torque.to === null ? {} : { to: torque.to }),
      unit: torque.unit,
    },
    angle,
    order,
  }));
  const { pattern, why, assumed, picture, tighten, loosen, balance } = order;
  const corrections = correctedIn(job, key, ['sequence', 'torque', 'passes']);
  const where = { assumed, picture };
  const json = {
    ...{ piece: key, pattern, why, ...where, tighten, loosen, passes, balance },
    corrections,
  };
  const turns = plan.rounds.map((r) => {
    const torque = r.torque ? ` ${printQuantity(r.torque)}` : '';
    const angle = r.angle === null ? '' : ` ${r.angle}°`;
    const after = r.after === null ? '' : ` after ${r.after}`;
    return `  ${r.name}${torque}${angle}${after}${r.say ? `: ${r.say}` : ''}`;
  });
  const printed = correctedLines(job, corrections);
  return answer(json, told(piece, order, names, [`Passes (${plan.why}):`, ...turns, ...printed]));
}

/** Holes that the diary knows to be done in a pass that has begun; a pass that has not begun has its whole order. */
function doneInPass(piece: PieceNow, job: Job): string[] {
  const pass = passDue(piece, job.upper.kinds);
  if (piece.where !== 'on' || !pass) return [];
  return piece.holes.filter((h) => h.passes.includes(pass.name)).map((h) => h.name);
}

function told(piece: PieceNow, order: Sequence, names: readonly string[], turns: string[]): string {
  if (names.length === 0) return `${piece.spec.name} has no bolts.`;
  const place = (name: string) => order.tighten.indexOf(name) + 1;
  const label = (name: string) =>
    place(name) > 0 ? `${name}: ${ordinal(place(name))}` : `${name}: done`;
  return [
    `${piece.spec.name}: ${order.why}.`,
    ...(order.picture === null ? [] : [drawIt(names.length, order.picture)]),
    '',
    ...textMap(layout(piece.spec, names), label),
    '',
    `Tighten: ${order.tighten.join(' ')}`,
    ...order.tips.tighten,
    `Loosen:  ${order.loosen.join(' ')}`,
    ...order.tips.loosen,
    ...turns,
  ].join('\n');
}

/** A ring was assumed, and it matters whether it is one. */
function drawIt(count: number, matters: string): string {
  return `${count} bolts, and ${matters}: draw where they are (map:) before you go by this order.`;
}
