/**
 * The least peaks known for layouts of 17 to 60 holes, family and number of holes, each from the seed of that
 * number. Found by annealing, written apart from the program, and by the program's own search a hundred times as
 * wide (tests/figures/best-known.ts, some five minutes); rounded up in the fourth digit.
 */
export const BEST_KNOWN: [family: string, n: number, peak: number][] = [
  ['scattered', 17, 0.5063],
  ['scattered', 24, 0.5012],
  ['scattered', 40, 0.5014],
  ['scattered', 60, 0.5006],
  ['an uneven rim', 17, 0.5053],
  ['an uneven rim', 24, 0.5013],
  ['an uneven rim', 40, 0.5013],
  ['an uneven rim', 60, 0.502],
  ['a circle, unevenly spaced', 17, 0.8309],
  ['a circle, unevenly spaced', 24, 0.7954],
  ['a circle, unevenly spaced', 40, 0.646],
  ['a circle, unevenly spaced', 60, 0.7968],
  ['extremal, shaken', 17, 1.0018],
  ['extremal, shaken', 24, 0.9615],
  ['extremal, shaken', 40, 0.9526],
  ['extremal, shaken', 60, 0.9515],
  ['on a grid', 17, 0.5076],
  ['on a grid', 24, 0.5118],
  ['on a grid', 40, 0.5043],
  ['on a grid', 60, 0.5055],
  ['three corners', 17, 0.8822],
  ['three corners', 24, 0.9131],
  ['three corners', 40, 0.884],
  ['three corners', 60, 0.914],
  ['three far out', 17, 0.5002],
  ['three far out', 24, 0.5006],
  ['three far out', 40, 0.5003],
  ['three far out', 60, 0.5002],
];
