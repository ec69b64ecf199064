/**
 * What is left in the tray, and which bolts in wrong holes would have left just that.
 *
 * Two bolts swapped for each other leave the tray as it should be; so an explanation is given only where something is
 * over and something missing, or where a height or a mark shows a wrong bolt.
 */
import { allPlaced } from './among.ts';
import { checks } from './checks.ts';
import { countFault, countsByKind } from './count.ts';
import { byRank, explainer, type Sure } from './explain.ts';
import { irreducibleFlows, MOST_FLOWS } from './flows.ts';
import { invisible } from './invisible.ts';
import { type SureHole, type Tray, trayOf } from './tray.ts';
import type { Explanation, Mixup, TrayInput } from './types.ts';

/** However few bolts are over, chains of so many wrong holes are thought of. */
const DEEP = 3;

/** Every choice of what the certainly wrong holes hold; more than these are nobody's tray. */
const MOST_CHOICES = 256;

function choices(sure: readonly SureHole[]): { choices: Sure[][]; complete: boolean } {
  let all: Sure[][] = [[]];
  let complete = true;
  for (const hole of sure) {
    all = all.flatMap((before) => hole.holds.map((kind) => [...before, { ...hole, kind }]));
    complete &&= all.length <= MOST_CHOICES;
    all = all.slice(0, MOST_CHOICES);
  }
  return { choices: all, complete };
}

function overAfter(tray: Tray, sure: readonly Sure[]): number[] {
  const over = [...tray.over];
  for (const hole of sure) {
    over[hole.from] = (over[hole.from] ?? 0) - 1;
    if (!hole.outside) over[hole.kind] = (over[hole.kind] ?? 0) + 1;
  }
  return over;
}

/** Every explanation, best first. */
function explanations(tray: Tray, input: TrayInput): Pick<Mixup, 'explanations' | 'complete'> {
  const room = (from: number, holds: readonly number[]) => allPlaced(holds, tray.full[from] ?? []);
  const explain = explainer(tray, input);
  const certain = choices(tray.sure);
  let { complete } = certain;
  const list: Explanation[] = [];
  for (const sure of certain.choices) {
    if (list.length >= MOST_FLOWS) {
      complete = false;
      break;
    }
    const over = overAfter(tray, sure);
    const surplus = over.reduce((sum, n) => sum + Math.max(0, n), 0);
    const found = irreducibleFlows({ over, bound: Math.max(surplus, DEEP), room });
    complete &&= found.complete;
    list.push(...found.flows.map((flow) => explain(sure, flow)));
  }
  return { explanations: list.filter((e) => e.wrong > 0).sort(byRank), complete };
}

/**
 * Compares a tray with what the empty holes take. `explanations` holds every irreducible one of up to max(D, 3) wrong
 * holes, D being the bolts over, beyond those holes that a mark or a height shows to be wrong. Pure and total; neither
 * the order of holes nor that of kinds changes the answer.
 */
export function mixup(input: TrayInput): Mixup {
  const tray = trayOf(input);
  const found = explanations(tray, input);
  const count = countFault(tray, input.kinds, found.explanations.length > 0 || !found.complete);
  const list = count === null ? found.explanations : [];
  return {
    surplus: countsByKind(tray, 1),
    missing: countsByKind(tray, -1),
    count,
    explanations: list,
    complete: count !== null || found.complete,
    check: checks(tray, list, count),
    invisible: invisible(tray, input.kinds),
    unknown: tray.unknown,
  };
}
