/** What a job file says in one place: a figure as printed, a kind of bolts, what a hole takes, a pass. */

/** A text of the file that a manual can have wrong: what counts here, and how it is printed where that is something else. */
export interface TextSaid {
  text: string;
  printed: string | null;
}

/** A figure as printed: `10 N·m`, with its range if there is one. `unit` is spelled as the program prints it. */
export interface Quantity {
  value: number;
  /** Upper end where a range is printed (`8..12 N·m`), else null. */
  to: number | null;
  unit: string;
}

/** A torque as the manual prints it, and where: `10 N·m, manual 2-17`. */
export interface Torque extends TextSaid {
  /** Null when the figure could not be read (`see manual`). */
  quantity: Quantity | null;
  /** Where it is printed, or null. */
  where: string | null;
}

/** Usable thread below the joint face, mm: from > 0 where the hole is counterbored; `to` null when only the start is known. */
export interface ThreadDepth {
  from: number;
  to: number | null;
}

/** A kind of bolt of this job: one letter for all bolts that are the same. */
export interface Kind {
  letter: string;
  /** As one would say it: `M6x25 flange, 8 mm`. */
  text: string;
  /** Thread name as written: `M6`, `M6x1`, `1/4-20`, `10-32 UNF`; null when not said. */
  thread: string | null;
  /** Length under the head in mm (inches converted), null when not said. */
  length: number | null;
  /** Length as written, with its unit if not mm: `25`, `1-1/2 in`. */
  lengthText: string | null;
  head: string | null;
  tool: string | null;
  /** Property class or grade as marked on the head: `8.8`, `A2-70`, `grade 5`. */
  class: string | null;
  /** Length of the threaded end in mm, null when not said (then taken as threaded all along). */
  threaded: number | null;
  leftHand: boolean;
  /** Never used twice (stretch bolts, precoated bolts). */
  once: boolean;
  note: string | null;
}

/** What one hole takes: the letter of a kind, and what lies under the head, from the head down. */
export interface RowItem {
  kind: string;
  with: readonly string[];
}

/** Said before or beside a step. A plain text stands for both. */
export interface BeforeStep {
  removal: TextSaid[];
  fitting: TextSaid[];
}

/** One entry of `passes:`: `snug`, `part 5 N·m`, `full`, `angle 90°`, `final`, `again after 50 km`. */
export interface PassSpec {
  name: string;
  torque: Torque | null;
  /** Degrees, for an angle pass. */
  angle: number | null;
  /** When, for a pass that comes again later. */
  after: string | null;
  /** How the file has it, where that is not so here. */
  printed: string | null;
}
