/**
 * The way down and up: pieces in the order in which they come off, what lies under another one below it and moved
 * in; tasks where they come; then what comes on the way up.
 */
import { oversOf } from '../job/fold/overs.ts';
import type { Job, PieceNow, TaskNow } from '../model/types.ts';
import { taskName } from './ladder-names.ts';
import { planNow } from './plan.ts';
import { atTime } from './time/at-time.ts';

export interface Rung {
  /** The piece's key, or the task's behind a colon. */
  name: string;
  piece: PieceNow | null;
  task: TaskNow | null;
  /** How deep it lies: 0 for what lies free. */
  depth: number;
  /** Only on the way up. */
  up: boolean;
}

export function ladder(job: Job, now: string): Rung[] {
  return atTime(job, now, 'ladder', () => climb(job, now));
}

function climb(job: Job, now: string): Rung[] {
  const { steps } = planNow(job, now);
  const lastOff = steps.findLastIndex((s) => s.kind === 'off');
  const turn = steps.findIndex((s, i) => i > lastOff && s.kind === 'on');
  const depth = depths(job);
  const rungs: Rung[] = [];
  let deep = 0;
  const add = (piece: PieceNow): void => {
    deep = depth.get(piece.spec.key) ?? 0;
    rungs.push({ name: piece.spec.key, piece, task: null, depth: deep, up: false });
  };
  for (const [i, { step, kind }] of steps.entries()) {
    if (kind === 'on') continue;
    const piece = kind === 'off' ? job.pieces.get(step.replace(/ off$/, '')) : undefined;
    const task = job.tasks.get(step);
    if (piece) add(piece);
    else if (task) {
      const up = turn >= 0 && i > turn;
      // Done while a piece is off: below that piece.
      const behind = task.spec.while.flatMap(
        (said) => depth.get(said.trim().split(/\s+/)[0] ?? '') ?? [],
      );
      rungs.push({
        name: taskName(step),
        piece: null,
        task,
        depth: up ? 0 : behind.length > 0 ? Math.max(...behind) + 1 : deep,
        up,
      });
    }
  }
  // Pieces that turned out not to be in the way are listed all the same: they belong to the job.
  const known = new Set(rungs.map((r) => r.name));
  const others = [...job.pieces.values()].filter((p) => !known.has(p.spec.key));
  const rest = rungs.splice(rungs.findIndex((r) => r.up) >>> 0);
  for (const piece of others) add(piece);
  return [...rungs, ...rest];
}

/** Pieces that lie over each other, counted from the top. */
function depths(job: Job): Map<string, number> {
  const overs = oversOf([...job.pieces.values()].map((p) => p.spec));
  const found = new Map<string, number>();
  const visit = (key: string, path: ReadonlySet<string>): number => {
    const known = found.get(key);
    if (known !== undefined || path.has(key)) return known ?? 0;
    const further = new Set([...path, key]);
    const above = [...(overs.get(key) ?? [])].map((over) => visit(over, further) + 1);
    const deep = Math.max(0, ...above);
    found.set(key, deep);
    return deep;
  };
  for (const key of overs.keys()) visit(key, new Set());
  return found;
}
