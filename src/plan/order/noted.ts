/** When and with what words something was noted, as the diary has it. */
import type { HoleNow, PieceNow } from '../../model/types.ts';
import type { DiaryLine, Lines } from './lines.ts';

/** The line that noted the trouble that a hole has now. */
export function troubleLine(
  { all }: Lines,
  { spec }: PieceNow,
  { name, trouble }: HoleNow,
): DiaryLine | undefined {
  return all.findLast(
    (line) =>
      line.piece === spec.key &&
      line.verb === 'state' &&
      line.value === trouble &&
      (line.hole === undefined || line.hole.includes(name)),
  );
}

/** The last line that put a bolt into one of these holes. */
export function putInLine({ all }: Lines, { spec }: PieceNow, holes: readonly string[]) {
  return all.findLast(
    (line) =>
      line.piece === spec.key &&
      line.verb === 'in' &&
      (line.hole === undefined || line.hole.some((h) => holes.includes(h))),
  );
}
