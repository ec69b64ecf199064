/** Which bolts lie in holes of another kind, as numbers from kind to kind: types only. */

/** For each kind, by its number, what its wrong holes hold: numbers of kinds, ascending, one for each wrong hole. */
export type Flow = readonly (readonly number[])[];

export interface FlowProblem {
  /** For each kind how many more lie in the tray than belong there; negative: fewer. Adds up to 0. */
  over: readonly number[];
  /** Most wrong holes. */
  bound: number;
  /** Whether so many holes for `from` can hold these; what is false stays false when more are added. */
  room(from: number, holds: readonly number[]): boolean;
}

/** Flows, and whether they are all: false when a limit was met. */
export interface Flows {
  flows: Flow[];
  complete: boolean;
}
