/** STOP at a gate: all that stops in the one frame, above the rest of the list. */
import { stopsNow } from '../../plan/gates/gate-now.ts';
import type { ItemInWords } from '../../plan/gates/items.ts';
import { sentences, stopBox } from '../kit/box.ts';
import { type Line, line } from '../kit/text.ts';

interface Stopping {
  item: ItemInWords;
}

/** At least so many lines of the list stay under the frame. */
const LEFT = 4;

/**
 * The frame with what stops and a blank line below it; empty where nothing stops. `here` is marked where it is among
 * them. It takes at most `room` lines less some for the list: what has no room is counted.
 */
export function stopFrame(
  items: readonly Stopping[],
  here: string | null,
  columns: number,
  room: number,
): Line[] {
  const stops = items.filter((i) => stopsNow(i.item)).map((i) => i.item);
  if (stops.length === 0) return [];
  const at = stops.findIndex((s) => s.key === here);
  const draw = (from: number, to: number): Line[] => {
    const left = stops.length - (to - from);
    const texts = stops.slice(from, to).map((s) => sentences(s.stop ?? s.say).join(' '));
    return stopBox(left > 0 ? [...texts, `And ${left} more.`] : texts, columns, at - from);
  };
  let [from, to] = [0, stops.length];
  while (to - from > 1 && draw(from, to).length + 1 > room - LEFT) {
    // The marked one stays in sight.
    if (to - 1 > Math.max(at, 0)) to -= 1;
    else from += 1;
  }
  return [...draw(from, to), line('')];
}
