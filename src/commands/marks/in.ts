/** Bolts that went in, turned by fingers. What is in the hand must be said. */
import { readLength } from '../../bolt/read/length.ts';
import type { Hand, PieceNow, Warning } from '../../model/types.ts';
import { leftOver } from '../../plan/piece/tray.ts';
import { type Answer, type Call, misuse, optionText } from '../base/command.ts';
import { beside, countSaid, mark, whichHoles } from '../base/mark.ts';
import { early } from './tight.ts';

/** How a hole is marked whose bolt takes something under the head. */
const ALONE = 'name the hole alone';

export async function run(call: Call) {
  const hand = inHand(call);
  if ('exit' in hand) return hand;
  const which = whichHoles(call);
  if ('answer' in which) return which.answer;
  const piece = call.words[1] ?? '';
  const one = which.holes?.length === 1;
  return mark(
    call,
    { do: 'in', piece, ...which, hand, ...(one ? {} : { spares: ALONE }), ...beside(call) },
    ({ job }) => countSaid(job.pieces.get(piece), 'in'),
    {},
    ({ job }) => [...early(job, piece), ...overSaid(job.pieces.get(piece), call.words[0] ?? '')],
  );
}

/** Every hole is full, and something still lies there. */
function overSaid(piece: PieceNow | undefined, file: string): Warning[] {
  const over = piece && leftOver(piece);
  if (!piece || !over) return [];
  const where = `mixup ${file} ${piece.spec.key} --left "${over.typed}" says where to look.`;
  return [{ code: 'left-over', say: [over.say, over.why, where].filter(Boolean).join(' ') }];
}

function inHand(call: Call): Hand | Answer {
  const kind = optionText(call, 'kind');
  const length = optionText(call, 'length');
  if ((kind === undefined) === (length === undefined)) {
    return misuse('usage', 'Say what is in your hand: --kind S, or --length 25.');
  }
  if (kind !== undefined) return { kind };
  const mm = readLength(length ?? '');
  return mm === null
    ? misuse('bad-length', `--length ${length} is no length: 25, 1-1/2 in.`)
    : { length: mm };
}
