/** A pulled thread and its ways out, in the trade's order: a list to tick. Common practice where no source is named. */
import type { Kind } from '../../model/types.ts';
import { withLength } from '../read/kind.ts';
import { mm, printNumber } from '../read/numbers.ts';
import { insertHole } from '../thread/insert.ts';
import { materialOf } from '../thread/materials.ts';
import { type Thread, threadOf } from '../thread/threads.ts';
import { type Place, reachOf } from './reach.ts';

export interface RepairStep {
  do: string;
  /** Why, or what to heed; null where it speaks for itself. */
  why: string | null;
}

export interface RepairInput {
  place: Place;
  /** From the middle of the hole to the nearest edge of the metal, mm; null: not measured. */
  edge?: number | null;
}

/** Wall beside an insert that the trade wants at least, in diameters of the bolt (common practice, no source). */
const WALL = 0.5;
/** Steps in which bolts are made, mm: 5, and a quarter of an inch. */
const STEP = { metric: 5, inch: 6.35 };

const step = (what: string, why: string | null = null): RepairStep => ({ do: what, why });

/** Sound thread below the pulled turns: how much, and the bolt that reaches it without bottoming. */
function deeper(kind: Kind, place: Place, atLeast: number, t: Thread): RepairStep {
  const probe = step(
    'Probe the hole: is there sound thread below the pulled turns?',
    'A longer bolt that bites deeper is the whole repair. Depth first, bolt afterwards: too long, and it bottoms.',
  );
  const { x, depth } = reachOf(kind, place.takes?.with ?? [], place);
  if (x === null || depth === null || kind.length === null) return probe;
  const left = depth - x;
  const more = Math.floor(left / STEP[t.system]) * STEP[t.system];
  if (more < Math.min(atLeast * t.d, x)) {
    return step(
      'A longer bolt is no way out here.',
      left <= 0
        ? 'The bolt already reaches the end of the thread.'
        : `Only ${mm(left)} of thread lies below the pulled turns.`,
    );
  }
  const text = withLength(kind, kind.length + more).text;
  return step(
    `Try a longer bolt: ${text}.`,
    `${mm(left)} of thread lies below the pulled turns. Probe it first, and turn the bolt in by fingers: it must not bottom.`,
  );
}

function insertSteps(
  t: Thread,
  diameters: number,
  edge: number | null,
  chips: RepairStep,
): RepairStep[] {
  const h = insertHole(t, diameters);
  const outside = `the insert is ${mm(h.outside)} outside`;
  const wall =
    edge === null
      ? step(
          'Measure from the middle of the hole to the nearest edge.',
          `${outside}; half of that must leave ${mm(WALL * t.d)} of wall.`,
        )
      : step(
          edge - h.outside / 2 >= WALL * t.d
            ? `Wall left beside an insert: ${mm(edge - h.outside / 2)}, enough.`
            : `Wall left beside an insert: ${mm(edge - h.outside / 2)}, too little.`,
          `At least ${mm(WALL * t.d)} is wanted; ${outside}.`,
        );
  return [
    wall,
    step(
      `Wire insert for ${t.name}, ${printNumber(diameters)} d long (${mm(h.length)}): drill ${mm(h.drill)}, square, ${mm(h.depth)} deep.`,
      'It has a tap drill and a tap of its own: the tap for the bolt is too small. Measure what is behind before drilling so deep.',
    ),
    step('Tap with the tap of the insert, oiled, half a turn back for each turn.'),
    chips,
    step('Turn the insert in until it lies a quarter to half a turn below the face.'),
    step(
      'Break its tang off, take it out, and count it.',
      'A tang left inside goes round with whatever turns there.',
    ),
  ];
}

/**
 * What to do about a pulled thread. Empty where nothing is known of the thread. Never a way round the maker: brakes,
 * steering, suspension and pressure parts are renewed, or mended by those who may.
 */
export function repair({ place, edge = null }: RepairInput): RepairStep[] {
  const kind = place.takes?.kind ?? null;
  const t = threadOf(kind?.thread ?? null);
  if (!kind || !t) return [];
  const material = materialOf((place.hole?.into ?? place.piece?.into)?.text ?? null);
  const soft = material !== null && !['iron', 'steel'].includes(material.name);
  const chips = soft
    ? step(
        'Chips out with grease on the drill and a pick, then suck: no magnet holds them.',
        'Never blow into an open case.',
      )
    : step(
        'Chips out with grease on the drill, a magnet and a pick.',
        'Never blow into an open case.',
      );
  return [
    step(
      'Brakes, steering, suspension, lifting gear: not by this list.',
      'The maker says whether such a thread may be mended at all, and a licensed mechanic does it.',
    ),
    deeper(kind, place, material?.atLeast ?? 1.5, t),
    step('Shut every opening with rag, and count the rags in.'),
    ...insertSteps(t, soft ? 1.5 : 1, edge, chips),
    step(
      'No wall or no hold for a wire insert: solid insert, or the next size up.',
      'Oversize means a larger hole in the piece too, and a bolt that looks like no other: mark it.',
    ),
    step('Count the rags out. Turn the bolt in by fingers all the way before it sees a wrench.'),
  ];
}
