/** Which of file and find is true for a hole. */
import type { Call } from '../base/command.ts';
import { beside, mark } from '../base/mark.ts';

export async function run(call: Call) {
  const [, piece = '', hole = '', kind = ''] = call.words;
  return mark(call, { do: 'settle', piece, hole, kind, ...beside(call) }, ({ job, entry }) => {
    const name = job.pieces.get(piece)?.spec.name;
    return `${name}, ${hole}: ${entry?.value} belongs there.`;
  });
}
