/**
 * What is left in the tray, and which bolts in wrong holes would have left just that.
 *
 * Two bolts swapped for each other leave the tray as it should be; so an explanation is given only where something is
 * over and something missing, or where a height or a mark shows a wrong bolt.
 */
import type { Fit } from '../../bolt/fit.ts';
import { allPlaced, among, type Candidate } from './among.ts';
import { checks } from './checks.ts';
import { countFault, countsOf } from './count.ts';
import { alongArrows, type Flow, irreducibleFlows } from './flows.ts';
import { hardToMiss, longerBy } from './hard.ts';
import { invisible } from './invisible.ts';
import { look } from './look.ts';
import { type SureHole, type Tray, trayOf } from './tray.ts';
import type { Explanation, Mixup, TrayInput, WrongHole } from './types.ts';
import { byLetter, mm } from './words.ts';

/** However few bolts are over, chains of so many wrong holes are thought of. */
export const DEEP = 3;

/** A wrong hole that is certain, with one kind that it can hold. */
type Sure = SureHole & { kind: number };

/** Every choice of what the certainly wrong holes hold; more than these are nobody's tray. */
const MOST_CHOICES = 256;

function choices(sure: readonly SureHole[]): { choices: Sure[][]; complete: boolean } {
  let all: Sure[][] = [[]];
  for (const hole of sure) {
    all = all.flatMap((before) => hole.holds.map((kind) => [...before, { ...hole, kind }]));
    if (all.length > MOST_CHOICES) return { choices: all.slice(0, MOST_CHOICES), complete: false };
  }
  return { choices: all, complete: true };
}

function overAfter(tray: Tray, sure: readonly Sure[]): number[] {
  const over = [...tray.over];
  for (const hole of sure) {
    over[hole.from] = (over[hole.from] ?? 0) - 1;
    if (!hole.outside) over[hole.kind] = (over[hole.kind] ?? 0) + 1;
  }
  return over;
}

/** Words and figures for a wrong bolt, each worked out once. */
interface Arrow {
  hard: number;
  difference: number;
  look: string;
}

function arrowsOf(tray: Tray, input: TrayInput): (from: number, to: number) => Arrow {
  const made = new Map<number, Arrow>();
  const { letters } = tray;
  return (from, to) => {
    const id = from * letters.length + to;
    const there = made.get(id);
    if (there) return there;
    const [a = '', b = ''] = [letters[from], letters[to]];
    const [takes, holds] = [input.kinds.get(a), input.kinds.get(b)];
    const names = [...(tray.full[from] ?? []), ...tray.sure.filter((h) => h.from === from)];
    const fits: Fit[] = names.flatMap((hole) => input.fitOf?.(b, hole.name) ?? []);
    const hard = takes && holds ? (input.hard ?? hardToMiss)(takes, holds, fits) : 1;
    const by = takes && holds ? longerBy(holds, takes) : null;
    const arrow = { hard, difference: Math.abs(by ?? 0), look: look(takes, holds, fits) };
    made.set(id, arrow);
    return arrow;
  };
}

function saySure(hole: Sure, told: string): string {
  if (hole.mm === null) return 'Marked so when it went in.';
  return `It stands ${mm(hole.mm)} off. ${told}`;
}

/** One explanation out of what is certain and a flow; the sort key breaks ties by letter and hole. */
interface Ranked extends Explanation {
  key: string;
}

function explain(
  sure: readonly Sure[],
  flow: Flow,
  tray: Tray,
  arrow: ReturnType<typeof arrowsOf>,
  amongOf: (from: number, holds: readonly number[]) => ReadonlyMap<number, readonly string[]>,
): Ranked {
  const holes: WrongHole[] = [];
  let [hard, difference] = [0, 0];
  const add = (
    from: number,
    to: number,
    names: readonly string[],
    say: (told: string) => string,
  ) => {
    const it = arrow(from, to);
    hard += it.hard;
    difference += it.difference;
    const [takes = '', holds = ''] = [tray.letters[from], tray.letters[to]];
    holes.push({ takes, holds, among: names, look: say(it.look) });
  };
  for (const hole of sure) add(hole.from, hole.kind, [hole.name], (told) => saySure(hole, told));
  for (const from of alongArrows(flow)) {
    const holds = flow[from] ?? [];
    const where = amongOf(from, holds);
    for (const to of holds) add(from, to, where.get(to) ?? [], (told) => told);
  }
  const key = holes.map((h) => `${h.takes} ${h.holds} ${h.among[0]}`).join(';');
  return { wrong: holes.length, holes, hard, difference, key };
}

function byRank(a: Ranked, b: Ranked): number {
  return (
    a.wrong - b.wrong || a.hard - b.hard || a.difference - b.difference || byLetter(a.key, b.key)
  );
}

/** `among` with a memory: most explanations of a large tray share their parts. */
function remembered(full: readonly (readonly Candidate[])[]) {
  const found = new Map<string, Map<number, readonly string[]>>();
  return (from: number, holds: readonly number[]) => {
    const key = `${from}:${holds.join()}`;
    const there = found.get(key) ?? among(holds, full[from] ?? []);
    found.set(key, there);
    return there;
  };
}

/** Every explanation, best first: fewest wrong holes, hardest to see, smallest difference in length. */
function explanations(tray: Tray, input: TrayInput): Pick<Mixup, 'explanations' | 'complete'> {
  const arrow = arrowsOf(tray, input);
  const amongOf = remembered(tray.full);
  const room = (from: number, holds: readonly number[]) => allPlaced(holds, tray.full[from] ?? []);
  const certain = choices(tray.sure);
  let { complete } = certain;
  const ranked: Ranked[] = [];
  for (const sure of certain.choices) {
    const over = overAfter(tray, sure);
    const surplus = over.reduce((sum, n) => sum + Math.max(0, n), 0);
    const found = irreducibleFlows({ over, bound: Math.max(surplus, DEEP), room });
    complete &&= found.complete;
    for (const flow of found.flows) ranked.push(explain(sure, flow, tray, arrow, amongOf));
  }
  const best = ranked.filter((e) => e.wrong > 0).sort(byRank);
  return { explanations: best.map(({ key: _, ...explanation }) => explanation), complete };
}

/**
 * Compares a tray with what the empty holes take. `explanations` holds every irreducible one of up to max(D, 3) wrong
 * holes, D being the bolts over, beyond those holes that a mark or a height shows to be wrong. Pure and total; neither
 * the order of holes nor that of kinds changes the answer.
 */
export function mixup(input: TrayInput): Mixup {
  const tray = trayOf(input);
  const found = explanations(tray, input);
  const count = countFault(tray, input.kinds, found.explanations.length > 0);
  const list = count === null ? found.explanations : [];
  return {
    surplus: countsOf(tray, 1),
    missing: countsOf(tray, -1),
    count,
    explanations: list,
    complete: count !== null || found.complete,
    check: checks(tray, list, count),
    invisible: invisible(tray, input.kinds),
    unknown: tray.unknown,
  };
}
