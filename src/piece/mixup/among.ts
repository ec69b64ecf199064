/** Which holes of one kind can hold the wrong bolts of an explanation. */

/** One hole, and what it may hold by what was measured: true for each kind's number; null: anything. */
export interface Candidate {
  name: string;
  may: readonly boolean[] | null;
}

function mayHold(hole: Candidate, kind: number): boolean {
  return hole.may === null || hole.may[kind] === true;
}

/** Finds a hole for wrong bolt `i`, moving others on where need be (Kuhn's augmenting paths). */
function place(
  i: number,
  holds: readonly number[],
  holes: readonly Candidate[],
  inHole: number[],
  tried: Set<number>,
): boolean {
  for (const [h, hole] of holes.entries()) {
    if (tried.has(h) || !mayHold(hole, holds[i] ?? -1)) continue;
    tried.add(h);
    const there = inHole[h] ?? -1;
    if (there < 0 || place(there, holds, holes, inHole, tried)) {
      inHole[h] = i;
      return true;
    }
  }
  return false;
}

/** Whether each of these wrong bolts finds a hole of its own. */
export function allPlaced(holds: readonly number[], holes: readonly Candidate[]): boolean {
  if (holds.length > holes.length) return false;
  if (holes.every((hole) => hole.may === null)) return true;
  const inHole = holes.map(() => -1);
  return holds.every((_, i) => place(i, holds, holes, inHole, new Set()));
}

/** For each kind held, the names of all holes that it can be in while the other wrong bolts find theirs. */
export function among(
  holds: readonly number[],
  holes: readonly Candidate[],
): Map<number, readonly string[]> {
  const free = holes.every((hole) => hole.may === null);
  const everywhere = free ? holes.map((hole) => hole.name) : [];
  const found = new Map<number, readonly string[]>();
  for (const [i, kind] of holds.entries()) {
    if (found.has(kind)) continue;
    const others = holds.filter((_, j) => j !== i);
    const here = (hole: Candidate) =>
      mayHold(hole, kind) &&
      allPlaced(
        others,
        holes.filter((h) => h !== hole),
      );
    found.set(kind, free ? everywhere : holes.filter(here).map((hole) => hole.name));
  }
  return found;
}
