/** Whether a file has the shape of a job file, told as faults. */

import { didYouMean, near } from '../../model/nearword.ts';
import { TASK_VERBS, VERBS, type Verb } from '../../model/types.ts';
import { PLACES, verbRow } from '../../model/verbs/verbs.ts';
import { collector, type Report } from '../faults/faults.ts';
import { type Plain, plainSpot, type Spot, valueAt, whatIs } from '../yaml/spot.ts';
import { fits } from './fits.ts';
import { helpFor } from './help.ts';
import { shapes } from './shape.late.ts';
import { issues } from './shape-issues.late.ts';
import type { Issue, IssuesIn } from './shape-issues.ts';
import { trees } from './trees.made.ts';

/** The whole file but the single entries of its diary, which have checks of their own. */
export function checkShape(root: Spot | null, report: Report): void {
  if (root !== null && root.is !== 'map') {
    report('not-a-job', root.at, { what: whatIs(root) });
    return;
  }
  const file: Spot = root ?? { is: 'map', at: 0, flow: false, pairs: new Map() };
  const data = plainSpot(file) as Record<string, Plain>;
  const { nodes, upper } = trees();
  if (fits(nodes, upper, data)) return;
  const { error } = shapes().upperShape().safeParse(data);
  const within: IssuesIn = { root: file, base: [], report };
  within.onTask = (name) => checkTask(within, name);
  // The version has checks of its own.
  issues().reportIssues(
    within,
    (error?.issues ?? []).filter((i) => i.path[0] !== 'putback'),
  );
}

function checkTask(within: IssuesIn, name: string): void {
  const { root, report } = within;
  const tasks = valueAt(root, 'tasks');
  const pair = tasks?.is === 'map' ? tasks.pairs.get(name) : undefined;
  if (!pair) return;
  const { value } = pair;
  const verbs = value.is === 'map' ? TASK_VERBS.filter((v) => value.pairs.has(v)) : [];
  const [verb] = verbs;
  if (verb === undefined || verbs.length > 1) {
    const what =
      verbs.length > 1 ? verbs.join(' and ') : value.is === 'text' ? whatIs(value) : 'none';
    report('task-verb', pair.at, { what, like: `${name}: {do: Drain the oil}` });
    return;
  }
  const { error } = shapes().taskShape(verb).safeParse(plainSpot(value));
  const { onTask: _, ...inside } = within;
  issues().reportIssues(inside, error?.issues ?? [], ['tasks', name]);
}

/** One entry that could not be read. */
export function checkEntry(index: number, spot: Spot, report: Report): void {
  if (spot.is !== 'map') {
    const like = '- {at: 2026-04-11T18:25:40+02:00, id: k3Vb9xQe, piece: alternator, removed: all}';
    report('bad-entry', spot.at, { what: whatIs(spot), like });
    return;
  }
  const verbs = VERBS.filter((v) => spot.pairs.has(v));
  const [verb] = verbs;
  if (verb === undefined || verbs.length > 1) {
    const odd = [...spot.pairs.keys()].filter((key) => helpFor('entry', key) === null);
    const word = odd.map((key) => near(key, VERBS)).find((v) => v !== null) ?? null;
    report('entry-verb', spot.pairs.get(verbs[1] ?? '')?.at ?? spot.at, {
      what: verbs.length > 1 ? verbs.join(' and ') : 'none',
      near: didYouMean(word),
      known: VERBS.join(', '),
    });
    return;
  }
  const toldPlaces = checkPlaces(verb, spot, report);
  const rest = collector();
  const within: IssuesIn = { root: spot, base: ['diary', index], report: rest.report };
  const data = plainSpot(spot);
  const tries = shapes()
    .entryShapes(verb)
    .map((shape) => shape.safeParse(data).error?.issues ?? []);
  const [best = []] = tries.sort((a, b) => a.length - b.length);
  issues().reportIssues(
    within,
    best.filter((issue) => !toldPlaces || !isPlaceIssue(issue, spot)),
  );
  for (const { code, at, data: words } of rest.found) report(code, at, words);
}

const PLACE_KEYS: readonly string[] = PLACES;

/** What `checkPlaces` has said already. */
function isPlaceIssue(issue: Issue, spot: Spot): boolean {
  if (issue.code === 'unrecognized_keys') return issue.keys.every((k) => PLACE_KEYS.includes(k));
  const [key] = issue.path;
  return PLACE_KEYS.includes(String(key)) && valueAt(spot, String(key)) === null;
}

/** True when it had something to say. */
function checkPlaces(verb: Verb, spot: Spot & { is: 'map' }, report: Report): boolean {
  const has = PLACE_KEYS.filter((key) => valueAt(spot, key) !== null);
  const sets: readonly (readonly string[])[] = verbRow(verb).about;
  const fits = sets.some(
    (set) =>
      has.every((p) => set.includes(p) || set.includes(`${p}!`)) &&
      set.every((p) => !p.endsWith('!') || has.includes(p.slice(0, -1))),
  );
  if (fits) return false;
  const [set = []] = sets;
  const like = [...set.map((p) => p.replace('!', '')), verb].flatMap(
    (key) => helpFor('entry', key)?.like ?? [],
  );
  report('entry-place', spot.at, {
    verb: `${verb}:`,
    what:
      has.length === 0
        ? 'no place'
        : has.map((key) => (key === 'buy' ? 'a thing to buy' : `a ${key}`)).join(' and '),
    places: sets.map(sayPlaces).join(', or '),
    like: like.join(', '),
  });
  return true;
}

/** `a piece and one of its holes`. */
function sayPlaces(set: readonly string[]): string {
  if (set.length === 0) return 'nothing but itself';
  const [first = '', second] = set;
  const name = first.replace('!', '');
  const place = name === 'buy' ? 'a thing to buy' : `a ${name}`;
  if (second === undefined) return place;
  return second.endsWith('!') ? `${place} and its hole` : `${place}, with its holes if not all`;
}
