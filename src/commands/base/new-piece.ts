/** A piece that is not in the file yet: a new one, or a known one with a slip of the pen in its name. */
import { meant } from '../../job/judge/base/verdict.ts';
import { slipOf } from '../../model/nearword.ts';
import { type Answer, type Call, misuse } from './command.ts';
import { openJob } from './open-job.ts';

/** The answer where the name is most likely a slip; null where the mark may be made. */
export function slipOfPiece(call: Call, piece: string): Answer | null {
  if (call.options.new === true) return null;
  const opened = openJob(call.words[0] ?? '', call.world);
  // What is wrong with the file is told by the mark.
  if ('answer' in opened || opened.job.pieces.has(piece)) return null;
  const known = [...opened.job.pieces.keys()];
  const close = slipOf(piece, known);
  if (close === null) return null;
  const say = `No piece ${piece} in this job.${meant(piece, [close])} If it is another one, --new makes it.`;
  return misuse('no-such-piece', say, { piece, meant: close });
}
