/** A whole job file in its short spelling, an invented machine; every key of the form stands in it or in FULL. */
export const EXAMPLE = `putback: 1                                       # version of this file's form
job: Left cover weeps oil
machine: Hollin 400 Twin, 1998, 41230 km
complaint: Oil along the bottom edge of the left cover after a run.

bolts:                                           # thread x length under the head, head, tool
  S: M6x25 flange, 8 mm
  M: M6x35 flange, 8 mm
  L: M6x55 flange, 8 mm
  P: M6x20 pinch, 5 mm Allen

pieces:
  gear-lever: {bolts: P, marks: dot on the shaft in line with the split}
  sprocket-cover: {bolts: S S S}
  breather-hose:
  alternator:
    name: Alternator cover
    under: [gear-lever, sprocket-cover]
    bolts: S S S M+clip S S S+copper S S L S
    torque: 10 N·m, manual 2-17                  # as printed, and where
    into: cast aluminium
    joint: new gasket, dry; dowels at 2 and 8
    loose: [2 dowels, thrust washer stays on the shaft]
    caution: {fitting: The magnet pulls the cover in. Keep fingers off the edge.}
    tip: {removal: "Top bolt last, so that the cover hangs."}
    map: |                                       # a picture, if one is wanted; without it a ring
      .  1  .  2  .
      11 .  .  .  3
      10 .  .  .  4
      .  9  8  7  5
      .  .  .  6  .
    holes:                                       # only what is special
      7: {note: oil passage}
      10: {turns: 15}                            # or thick: 40, thread: 3..19; at: [84, 31] in mm

tasks:
  drain:  {do: Drain the oil, before: alternator off}
  scrape: {do: Scrape both faces, while: alternator off}
  fill:   {do: Fill with 1.9 l of oil, after: alternator on}
  chain:  {adjust: Chain slack, limit: 20..30 mm, after: sprocket-cover on}
  weep:   {test: Five minutes at idle, limit: no oil at the bottom edge, after: fill}
  seal:   {decide: Renew the shaft seal while it is open?, while: alternator off}

buy:
  gasket: {what: HL-1142 cover gasket, price: 14.20, once: true, for: alternator on}

diary:
  - {at: 2026-04-11T18:25:40+02:00, id: k3Vb9xQe, piece: alternator, out: "S S S M+clip S S S+copper S ! L S"}
  - {at: 2026-04-11T18:26:10+02:00, id: Qe81mTd2, piece: alternator, hole: 9, state: stuck, says: "soaking, heat tomorrow"}
  - {at: 2026-04-11T18:52:31+02:00, id: w0PzLr5n, piece: alternator, removed: all, tray: cup 2}
  - {at: 2026-05-02T10:11:05+02:00, id: 7Hn2XcPa, piece: alternator, hole: 4, in: M+clip}
  - {at: 2026-05-02T10:20:10+02:00, id: bZ4yK1uW, piece: alternator, hole: 4, tight: full, set: 10 N·m}
  - {at: 2026-05-02T10:20:40+02:00, id: tA9q0vRf, undo: bZ4yK1uW}
`;

/** The keys that the example leaves out, and the full spellings. */
export const FULL = `putback: "1"
job: Right cover
found: Gasket torn at hole 3
done: >
  New gasket,
  faces cleaned
bolts:
  S: {thread: M6, length: 25, head: flange, tool: 8 mm, class: 8.8, threaded: 18}
  X: {thread: M8x1, length: 30 mm, lh: true, once: true, note: two of them are new}
pieces:
  cover:
    bolts:
      - S
      - {kind: S, with: [clip, washer]}
      - {kind: X, with: bracket}
      - S
    thick: 12
    thread: 3..19
    routes: [behind the frame tube, under the clip]
    tray: cup 2
    pitch: [20, 25]
    passes: [snug, {name: part, torque: 5 N·m}, full, {name: angle, angle: 90}, again after 50 km]
    sequence: [1, 3, 2, 4]
    care: case
    first: [1, 3]
    note: edge was bent before
    caution: Keep fingers off the edge.
    tip: [Top bolt last., Two hands.]
    holes:
      1: {at: [0, 0], thick: 40, thread: 19, proud: 16.5, torque: 12 N·m, into: steel insert}
      2: {at: [84, -31], wet: true, group: inner}
  lever:
    bolts: []
    under: cover
tasks:
  cure: {wait: "Sealant cures, 12 h", after: [cover on], note: at 20 degrees}
  spark-again: {test: Blue spark at the plug, proves: [spark]}
  seal:
    decide: Renew the shaft seal?
    now: {price: 12.50, takes: 40 min}
    later: {price: 12.50, takes: 3 h}
    chance: 1 in 6
    harm: {chance: 1 in 20, price: 60.00, takes: 2 h}
  bearing: {decide: Renew the bearing?, now: 30, harm: rarely}
suspects:
  float: {what: Float needle leaks, likely: often, piece: cover, part: washer, takes: 30 min}
  coil: Ignition coil open
  switch: {what: Stop switch corroded, likely: 0.5, note: was painted over}
checks:
  spark: {check: Blue spark at the plug, bad: [coil, switch], takes: 3 min, needs: [in the dark]}
  primary: {check: Coil primary, limit: 0.8..1.2 ohm, bad: coil, takes: 5 min, under: cover}
  bowl: {check: Runs into the bowl, along: [float], caution: Fuel wiped up., note: with the tap on}
buy:
  oil: Engine oil
  washer: {what: Copper washer, count: 2, from: the dealer, for: [cover on, cover], note: M6}
diary:
`;
