/** Where the head rubs: the ring between the clearance hole and the edge of the head's seat. mm. */
import type { Thread } from '../thread/threads.ts';

/**
 * d → least outside diameter of the seat, dw, of hexagon heads (ISO 4014) and near enough of socket heads (ISO 4762),
 * and the medium clearance hole dh (ISO 273). From memory; the published tests hold the torques that follow.
 */
const SEATS: ReadonlyMap<number, readonly [number, number]> = new Map([
  [3, [4.6, 3.4]],
  [4, [5.9, 4.5]],
  [5, [6.9, 5.5]],
  [6, [8.9, 6.6]],
  [7, [9.6, 7.6]],
  [8, [11.6, 9]],
  [10, [14.6, 11]],
  [12, [16.6, 13.5]],
  [14, [19.6, 15.5]],
  [16, [22.5, 17.5]],
  [18, [25.3, 20]],
  [20, [28.2, 22]],
  [22, [30, 24]],
  [24, [33.6, 26]],
]);

/**
 * Effective diameter of friction under the head, DKm = (dw + dh)/2 (VDI 2230). Where no table is at hand, and for inch
 * threads, 1.25 d, the mean collar diameter of Shigley's Mechanical Engineering Design.
 */
export function frictionDiameter(t: Thread): number {
  const seat = t.system === 'metric' ? SEATS.get(t.d) : undefined;
  return seat ? (seat[0] + seat[1]) / 2 : 1.25 * t.d;
}
