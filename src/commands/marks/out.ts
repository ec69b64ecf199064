/** Bolts that came out. */
import type { Job, Warning, Wish } from '../../model/types.ts';
import { cautionsFor } from '../../plan/care/cautions.ts';
import { gate } from '../../plan/gates/gate.ts';
import { nowHere } from '../../world.ts';
import { type Call, misuse, optionText } from '../base/command.ts';
import { beside, countSaid, mark, whichHoles } from '../base/mark.ts';
import { slipOfPiece } from '../base/new-piece.ts';
import { openJob } from '../base/open-job.ts';

export async function run(call: Call) {
  const row = optionText(call, 'row');
  const kind = optionText(call, 'kind');
  if (row !== undefined && kind !== undefined)
    return misuse('usage', 'Say --row or --kind, not both.');
  const which = whichHoles(call, row !== undefined);
  if ('answer' in which) return which.answer;
  const piece = call.words[1] ?? '';
  const slip = slipOfPiece(call, piece);
  if (slip) return slip;
  const tray = optionText(call, 'tray');
  const said = row ?? kind;
  const wish: Wish = {
    do: 'out',
    piece,
    ...which,
    ...(said === undefined ? {} : { row: said }),
    ...(tray === undefined ? {} : { tray }),
    ...beside(call),
  };
  const opened = openJob(call.words[0] ?? '', call.world);
  const where = 'answer' in opened ? 'home' : (opened.job.pieces.get(piece)?.where ?? 'home');
  return mark(
    call,
    wish,
    ({ job }) => countSaid(job.pieces.get(piece), 'out'),
    {},
    ({ job }) => (where === 'off' ? [] : notMadeSafe(job, piece, nowHere(call.world))),
  );
}

/** With its first bolt: what can hurt somebody at it, by its care, its name or the file's own cautions, not seen to yet. */
function notMadeSafe(job: Job, key: string, now: string): Warning[] {
  const piece = job.pieces.get(key);
  if (!piece) return [];
  const { items } = gate(job, 'loosening', key, now);
  const open = items.filter((i) => i.loud && !i.done).map(({ say }) => say);
  // Where nothing is to be made safe there is no list, and what is only to be read is said by itself.
  const read = items.length === 0 ? cautionsFor(piece.spec, 'off').map(({ say }) => say) : [];
  return [...open, ...read].map((say) => ({
    code: 'before-first-bolt',
    say: `Before its first bolt: ${say}`,
  }));
}
