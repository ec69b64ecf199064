/** What a job file says: figures as printed, and the upper part. */
/** A figure as printed: `10 N·m`, with its range if there is one. `unit` is spelled as the program prints it. */
export interface Quantity {
  value: number;
  /** Upper end where a range is printed (`8..12 N·m`), else null. */
  to: number | null;
  unit: string;
}

/** A torque as the manual prints it, and where: `10 N·m, manual 2-17`. */
export interface Torque {
  /** The whole text of the file. */
  text: string;
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
  with: string[];
}

/** Lengths, depths and turns as they are written, `1/2 in`, where they became mm or a figure. */
export type AsWritten = Partial<Record<'thick' | 'thread' | 'turns' | 'proud', string>>;

export interface HoleSpec {
  name: string;
  asWritten?: AsWritten;
  note: string | null;
  /** Thickness from the seat of the head to the joint face, mm. */
  thick: number | null;
  thread: ThreadDepth | null;
  /** Turns from first bite until the head touches. */
  turns: number | null;
  /** How far the head stands off when the bolt is dropped in and not turned, mm. */
  proud: number | null;
  /** Place in mm, x right, y down, as seen from outside. */
  at: [number, number] | null;
  /** Own torque, where it differs from the piece's. */
  torque: Torque | null;
  /** Material that is tapped, where it differs from the piece's. */
  into: string | null;
  /** The hole opens into oil, fuel or another liquid. */
  wet: boolean;
  /** A group of holes with their own torque or turn in the order. */
  group: string | null;
}

/** Said before or beside a step. A plain text stands for both. */
export interface BeforeStep {
  removal: string[];
  fitting: string[];
}

/** One entry of `passes:`: `snug`, `part 5 N·m`, `full`, `angle 90°`, `final`, `again after 50 km`. */
export interface PassSpec {
  name: string;
  torque: Torque | null;
  /** Degrees, for an angle pass. */
  angle: number | null;
  /** When, for a pass that comes again later. */
  after: string | null;
}

export interface PieceSpec {
  key: string;
  asWritten?: AsWritten;
  /** Shown name: `name:` or the key with a capital and spaces. */
  name: string;
  under: string[];
  /** What belongs in the holes in their order, null when the file says nothing yet. Empty for a piece without bolts. */
  row: RowItem[] | null;
  torque: Torque | null;
  /** Material that the bolts go into. */
  into: string | null;
  thick: number | null;
  thread: ThreadDepth | null;
  joint: string[];
  loose: string[];
  caution: BeforeStep;
  tip: BeforeStep;
  marks: string[];
  routes: string[];
  tray: string | null;
  /** The picture of the holes, lines of cells; null: a ring. */
  map: string | null;
  /** Distance of the map's cells in mm, x and y; null: not measured. */
  pitch: [number, number] | null;
  /** Only what is special; names as texts. */
  holes: Map<string, HoleSpec>;
  /** The maker's order of tightening, as printed. */
  sequence: string[] | null;
  passes: PassSpec[] | null;
  /** What the file says is dangerous about it; `none`: nothing else is to be guessed. Null: it says nothing. */
  care: readonly (Care | 'none')[] | null;
  /** Pieces with which this one comes off, without a step of its own. */
  along: string[];
  /** Pieces between which this one is a bridge: it comes off before any of them. */
  bridges: string[];
  /** How long it takes by hand: `20 min`. */
  takes: string | null;
  /** Holes that come first (dowels, a locating bolt). */
  first: string[];
  note: string | null;
}

/** What can be dangerous about a piece, or wants the maker's order; what follows stands in plan/care. */
export const CARES = [
  'head',
  'case',
  'cap',
  'brake',
  'steering',
  'structure',
  'wheel',
  'suspension',
  'spring',
  'fuel',
  'battery',
  'mains',
  'blade',
  'lift',
  'airbag',
] as const;
export type Care = (typeof CARES)[number];

export type TaskVerb = 'do' | 'wait' | 'adjust' | 'test' | 'decide';

export interface TaskSpec {
  key: string;
  verb: TaskVerb;
  /** What is to be done. */
  say: string;
  /** Steps: `alternator off`, `alternator on`, `drain`. */
  before: string[];
  after: string[];
  while: string[];
  limit: string | null;
  /** When a test or an adjustment is due: `hot`, `next day`, `after 100 km`. */
  when: string | null;
  /** How long it takes by hand: `20 min`. */
  takes: string | null;
  note: string | null;
}

export interface BuySpec {
  key: string;
  what: string;
  /** As written; null when not said. */
  price: string | null;
  count: string | null;
  from: string | null;
  once: boolean;
  /** Steps or pieces it is for. */
  for: string[];
  note: string | null;
}

export interface Upper {
  /** `putback:` of the file; this program writes version 1. */
  version: number;
  job: string;
  machine: string | null;
  /** Its frame number or another name that it alone has. */
  machineId: string | null;
  /** Machines that are the same for what is remembered, as their files name them. */
  like: string[];
  complaint: string | null;
  found: string | null;
  done: string | null;
  kinds: Map<string, Kind>;
  pieces: Map<string, PieceSpec>;
  tasks: Map<string, TaskSpec>;
  buys: Map<string, BuySpec>;
}
