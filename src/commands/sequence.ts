/** In which order a piece is tightened and loosened, with its passes, and how evenly that pulls it down. */
import { printQuantity } from '../bolt/units.ts';
import type { PieceNow } from '../job/types.ts';
import { layout } from '../piece/map.ts';
import { passes } from '../piece/passes.ts';
import { type Sequence, sequence } from '../piece/sequence/sequence.ts';
import { answer, type Call, misuse, optionText } from './command.ts';
import { holeWords } from './mark.ts';
import { openJob, unknownPiece } from './open-job.ts';
import { textMap } from './text-map.ts';

export function run(call: Call) {
  const opened = openJob(call.words[0] ?? '', call.world);
  if ('answer' in opened) return opened.answer;
  const key = call.words[1] ?? '';
  const piece = opened.job.pieces.get(key);
  if (!piece) return unknownPiece(key, opened.job);
  const names = piece.holes.map((h) => h.name);
  const done = holeWords([optionText(call, 'done') ?? '']);
  const strange = done.find((name) => !names.includes(name));
  if (strange !== undefined) {
    return misuse('no-such-hole', `${piece.spec.name} has no hole ${strange}.`, { hole: strange });
  }
  const order = sequence(piece.spec, opened.job.upper.kinds, names, done);
  const plan = passes(piece.spec, opened.job.upper.kinds, order.tighten, names);
  const rounds = plan.rounds.map(({ name, torque, angle, order }) => ({
    name,
    torque: torque ? { value: torque.value, unit: torque.unit } : null,
    angle,
    order,
  }));
  const { pattern, why, tighten, loosen, balance } = order;
  const json = { piece: key, pattern, why, tighten, loosen, passes: rounds, balance };
  const turns = plan.rounds.map((r) => {
    const torque = r.torque ? ` ${printQuantity(r.torque)}` : '';
    const angle = r.angle === null ? '' : ` ${r.angle}°`;
    const after = r.after === null ? '' : ` after ${r.after}`;
    return `  ${r.name}${torque}${angle}${after}${r.say ? `: ${r.say}` : ''}`;
  });
  return answer(json, said(piece, order, names, [`Passes (${plan.why}):`, ...turns]));
}

function said(piece: PieceNow, order: Sequence, names: readonly string[], turns: string[]): string {
  if (names.length === 0) return `${piece.spec.name} has no bolts.`;
  const place = (name: string) => order.tighten.indexOf(name) + 1;
  const label = (name: string) =>
    place(name) > 0 ? `${name}: ${ordinal(place(name))}` : `${name}: done`;
  return [
    `${piece.spec.name}: ${order.why}.`,
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

/** `1st`, `2nd`, `3rd`, `4th`, `11th`. */
function ordinal(n: number): string {
  const teen = n % 100 > 10 && n % 100 < 14;
  const end = teen ? 'th' : (['th', 'st', 'nd', 'rd'][n % 10] ?? 'th');
  return `${n}${end}`;
}
