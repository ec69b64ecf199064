/**
 * What can be dangerous about a piece, or wants the maker's order: one row a word behind `care:`. What is said and asked for
 * each stands in plan/care.
 */

interface Row {
  /** The maker alone can give the order of its bolts, or a spring wants its own way. */
  ordered: boolean;
  /** What it is about, where somebody may be hurt if it fails: no figure weighs that. Common practice, no source. */
  safety: string | null;
}

const ROWS = {
  head: { ordered: true, safety: null },
  case: { ordered: true, safety: null },
  cap: { ordered: true, safety: null },
  brake: { ordered: true, safety: 'the brakes' },
  steering: { ordered: true, safety: 'the steering' },
  structure: { ordered: true, safety: 'what carries the weight' },
  wheel: { ordered: true, safety: 'a wheel' },
  suspension: { ordered: true, safety: 'the suspension' },
  spring: { ordered: true, safety: null },
  fuel: { ordered: false, safety: 'fuel lines and what holds fuel' },
  battery: { ordered: false, safety: null },
  mains: { ordered: false, safety: null },
  blade: { ordered: false, safety: null },
  lift: { ordered: false, safety: 'what lifts or holds up' },
  airbag: { ordered: false, safety: 'an airbag' },
} as const satisfies Record<string, Row>;

export type Care = keyof typeof ROWS;

/** In the order in which they stand in a list. */
export const CARE_WORDS = Object.keys(ROWS) as unknown as readonly [Care, ...Care[]];

export function isOrdered(care: Care): boolean {
  return ROWS[care].ordered;
}

export function safetySaid(care: Care): string | null {
  return ROWS[care].safety;
}
