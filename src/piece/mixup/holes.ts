/** The holes of a piece as its tray sees them. */
import { troubleOf } from '../../model/states/troubles.ts';
import type { HoleNow } from '../../model/types.ts';
import type { TrayHole } from './types.ts';

/**
 * Holes for `mixup` and `shouldHave`. What came out of an empty hole is what its tray should hold, whatever the file
 * claims; a full one should hold what belongs there. `proud`: heights of heads as they stand now, dropped in and not
 * turned, by name, mm.
 */
export function trayHoles(
  holes: readonly HoleNow[],
  proud: ReadonlyMap<string, number> = new Map(),
): TrayHole[] {
  return holes
    .filter(
      (hole) => hole.state !== 'out' || hole.trouble === null || troubleOf(hole.trouble).inTray,
    )
    .map(({ name, state, belongs, found, holds }) => ({
      ...{ name, holds },
      // Where a head stands a bolt was dropped in, noted or not.
      state: proud.has(name) && (state === 'out' || state === 'home') ? ('in' as const) : state,
      takes: state === 'out' ? (found ?? belongs) : belongs,
      proud: proud.get(name) ?? null,
    }));
}
