/** Bolts that came out. */
import type { Job, Warning, Wish } from '../../model/types.ts';
import { caresOf } from '../../plan/care/care.ts';
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

/** With its first bolt: what it is called can hurt somebody, and nobody said that it was made safe. */
function notMadeSafe(job: Job, key: string, now: string): Warning[] {
  const piece = job.pieces.get(key);
  if (!piece || caresOf(piece.spec).care.length === 0) return [];
  const open = gate(job, 'loosening', key, now).items.filter((i) => i.loud && !i.done);
  return open.map(({ say }) => ({
    code: 'before-first-bolt',
    say: `Before its first bolt: ${say}`,
  }));
}
