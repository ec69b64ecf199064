/** What a fit is. */

export type FitVerdict =
  | 'right'
  | 'same'
  | 'longer'
  | 'shorter'
  | 'short'
  | 'bottoms'
  | 'through'
  | 'shank'
  | 'wrong-thread'
  | 'wrong-head';

/** What would make it sure; MEASURES in fit-measure.ts says how. */
export type Measure = 'length' | 'thread' | 'head' | 'thick' | 'turns' | 'probe' | 'under' | 'into';

export interface Fit {
  /** Null when too little is known to say anything. */
  verdict: FitVerdict | null;
  /** False where the verdict stands on too little, or on figures that contradict each other. */
  sure: boolean;
  /** Thread that bites: mm, turns, diameters (null for a thread without figures). Null when it is not known. */
  engagement: { mm: number; turns: number | null; d: number | null } | null;
  /** r − b, mm: above 0 it bottoms by so much, below 0 so much is left. Null when not known, and for an open hole. */
  bottomsBy: number | null;
  /** The same of a hole that is open behind: above 0 the bolt sticks out by so much. */
  sticksOut: number | null;
  /** How far the head stands off when dropped in and not turned, mm. */
  proud: number | null;
  /** Length less the length of the bolt that belongs here, mm. */
  byLength: number | null;
  measure: Measure[];
  /** One sentence. */
  why: string;
}
