/** Jobs in invented scenarios for the screens. */

/** A cover with eleven holes of three lengths, a clip, a copper washer, a drawn map, the maker's list, cautions and tips. */
export const LEFT_COVER = `putback: 1
job: Left cover weeps oil
machine: Hollin 400 Twin, 1998, 41230 km
bolts:
  S: M6x25 flange, 8 mm
  M: M6x35 flange, 8 mm
  L: M6x55 flange, 8 mm
  P: M6x20 pinch, 5 mm Allen
pieces:
  gear-lever: {bolts: P, marks: dot on the shaft in line with the split}
  sprocket-cover: {bolts: S S S}
  alternator:
    name: Alternator cover
    under: [gear-lever, sprocket-cover]
    bolts: S S S M+clip S S S+copper S S L S
    torque: 10 N·m, manual 2-17
    sequence: [9, 2, 11, 5, 8, 3, 10, 1, 7, 4, 6]
    into: cast aluminium
    joint: new gasket, dry; dowels at 2 and 8
    loose: [2 dowels, thrust washer stays on the shaft]
    caution: {fitting: The magnet pulls the cover in. Keep fingers off the edge.}
    tip: {removal: "Top bolt last, so that the cover hangs."}
    map: |
      .  1  .  2  .
      11 .  .  .  3
      10 .  .  .  4
      .  9  8  7  5
      .  .  .  6  .
    holes:
      7: {note: oil passage}
  hose:
diary:
`;

/** A round lid with so many holes, every seventh of another kind. */
export function lid(holes: number): string {
  const row = Array.from({ length: holes }, (_, i) => (i % 7 === 3 ? 'M+clip' : 'S')).join(' ');
  return `putback: 1
job: Lid of the dividing head
bolts:
  S: M8x30
  M: M8x45
pieces:
  lid: {bolts: ${row}}
diary:
`;
}

/** Pieces whose torques want words: other units, oil and threadlocker, bolts used once, left-hand threads, care. */
export const GRINDER = `putback: 1
job: Wheel guard rattles
machine: Ostrell bench grinder 200
bolts:
  S: M6x25 flange, 8 mm
  R: M6x25 LH flange, 8 mm
  T: M8x30 10.9 once, 13 mm
  U: 10-32 UNF x 1/2, 5/16 in
  V: M5x12, 8 mm
pieces:
  guard:
    bolts: S S R S S S
    torque: 95 lbf·in, manual 4-3
    joint: [new paper gasket, threadlocker on the threads]
  yoke: {name: Steering yoke, care: steering, bolts: T T T T, torque: "25 N·m, manual 6-1"}
  lid: {care: head, bolts: S S S S S S S S, torque: 10 N·m, "passes": [snug, full, final]}
  cap: {name: Bearing cap, care: cap, sequence: [1, 3, 2, 4], bolts: T T T T, torque: 25 N·m, "passes": [snug, full, angle 90°]}
  plate: {name: Spring plate, care: spring, bolts: S S S S}
  tag: {bolts: U V, torque: 70 N·m}
  hub: {care: none, bolts: S S S, torque: 10 N·m, holes: {2: {torque: "8 N·m, manual 4-9"}, 3: {note: oil the threads}}}
diary:
`;
