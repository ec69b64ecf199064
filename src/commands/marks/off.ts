/** A piece comes off, goes on, or is moved aside. */
import type { Job, Warning } from '../../model/types.ts';
import { sharesTray } from '../../plan/piece/tray.ts';
import { type Call, optionText } from '../base/command.ts';
import { beside, mark } from '../base/mark.ts';
import { slipOfPiece } from '../base/new-piece.ts';

const SAID = { off: 'off', on: 'on its place', aside: 'aside, still connected' } as const;

/** What lies in one tray gets mixed. */
function sharedSaid(job: Job, key: string): Warning[] {
  const piece = job.pieces.get(key);
  const say = piece ? sharesTray(job, piece) : null;
  return say === null ? [] : [{ code: 'tray-shared', say }];
}

export async function run(call: Call) {
  const piece = call.words[1] ?? '';
  const how = call.name === 'on' || call.name === 'aside' ? call.name : 'off';
  const tray = optionText(call, 'tray');
  const slip = how === 'on' ? null : slipOfPiece(call, piece);
  if (slip) return slip;
  const wish = {
    do: how,
    piece,
    ...(tray === undefined ? {} : { tray }),
    ...beside(call),
  } as const;
  return mark(
    call,
    wish,
    ({ job }) => `${job.pieces.get(piece)?.spec.name} ${SAID[how]}.`,
    {},
    ({ job }) => (how === 'on' ? [] : sharedSaid(job, piece)),
  );
}
