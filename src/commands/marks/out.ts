/** Bolts that came out. */
import type { Wish } from '../../model/types.ts';
import { type Call, misuse, optionText } from '../base/command.ts';
import { beside, countSaid, mark, whichHoles } from '../base/mark.ts';

export async function run(call: Call) {
  const row = optionText(call, 'row');
  const kind = optionText(call, 'kind');
  if (row !== undefined && kind !== undefined)
    return misuse('usage', 'Say --row or --kind, not both.');
  const which = whichHoles(call, row !== undefined);
  if ('answer' in which) return which.answer;
  const piece = call.words[1] ?? '';
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
  return mark(call, wish, ({ job }) => countSaid(job.pieces.get(piece), 'out'));
}
