/**
 * What can be dangerous about a piece, or wants the maker's order: one row a word behind `care:`. What is said and asked for
 * each stands in plan/care.
 */

interface Row {
  /** The maker alone can give the order of its bolts, or a spring wants its own way. */
  ordered: boolean;
}

const ROWS = {
  head: { ordered: true },
  case: { ordered: true },
  cap: { ordered: true },
  brake: { ordered: true },
  steering: { ordered: true },
  structure: { ordered: true },
  wheel: { ordered: true },
  suspension: { ordered: true },
  spring: { ordered: true },
  fuel: { ordered: false },
  battery: { ordered: false },
  mains: { ordered: false },
  blade: { ordered: false },
  lift: { ordered: false },
  airbag: { ordered: false },
} as const satisfies Record<string, Row>;

export type Care = keyof typeof ROWS;

/** In the order in which they stand in a list. */
export const CARE_WORDS = Object.keys(ROWS) as unknown as readonly [Care, ...Care[]];

export function isOrdered(care: Care): boolean {
  return ROWS[care].ordered;
}
