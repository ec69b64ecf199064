/**
 * From what zod says to what a person can use: the branch of a union that was meant, the place in the file, the
 * nearest key, and an example of what belongs there.
 */
import type * as z from 'zod';
import { didYouMean, near } from '../../model/nearword.ts';
import { slug } from '../../model/slug.ts';
import type { Report } from '../faults/faults.ts';
import { type Spot, spotAt, whatIs } from '../yaml/spot.ts';
import { calledOf, helpFor, keysOf, OWNERS, type Owner } from './help.ts';

export type Issue = z.core.$ZodIssue;
type Path = readonly PropertyKey[];

/** Where issues are looked up, and what the root of their paths is. */
export interface IssuesIn {
  root: Spot;
  /** Path of `root` in the file: `['diary', 3]` for an entry. */
  base: Path;
  report: Report;
  /** Says what is wrong with a task as a whole. */
  onTask?: (name: string) => void;
}

export function reportIssues(within: IssuesIn, issues: readonly Issue[], path: Path = []): void {
  for (const issue of issues) reportIssue(within, issue, [...path, ...issue.path]);
}

function reportIssue(within: IssuesIn, issue: Issue, path: Path): void {
  const isTask = path.length === 2 && path[0] === 'tasks' && issue.code !== 'invalid_key';
  if (isTask && within.onTask) within.onTask(String(path[1]));
  else if (issue.code === 'invalid_union') reportUnion(within, issue, path);
  else if (issue.code === 'unrecognized_keys') {
    for (const key of issue.keys) unknownKey(within, path, key);
  } else if (issue.code === 'invalid_key') badName(within, path);
  else if (issue.code === 'invalid_format') badText(within, path);
  else wrongValue(within, path, choicesOf(issue));
}

type Union = Extract<Issue, { code: 'invalid_union' }>;

/** The branch that was meant is the one whose kind of value is there, and of these the one with least wrong. */
function reportUnion(within: IssuesIn, issue: Union, path: Path): void {
  const branches = issue.errors.filter((branch) => !branch.some(isOtherKind));
  const [best] = branches.sort((a, b) => weight(a) - weight(b));
  if (best) reportIssues(within, best, path);
  else wrongValue(within, path, issue.errors.flat().flatMap(choicesOf));
}

/** Another kind of value altogether: a text where a mapping belongs. */
function isOtherKind(issue: Issue): boolean {
  if (issue.path.length > 0) return false;
  if (issue.code === 'invalid_union') return issue.errors.every((b) => b.some(isOtherKind));
  return issue.code === 'invalid_type' || issue.code === 'invalid_value';
}

function weight(issues: readonly Issue[]): number {
  return issues.reduce(
    (sum, i) => sum + (i.code === 'unrecognized_keys' ? 2 * i.keys.length : 1 + i.path.length),
    0,
  );
}

function choicesOf(issue: Issue): string[] {
  return issue.code === 'invalid_value'
    ? issue.values.filter((v) => typeof v === 'string')
    : issue.code === 'invalid_union'
      ? issue.errors.flat().flatMap(choicesOf)
      : [];
}

function unknownKey({ root, base, report }: IssuesIn, path: Path, key: string): void {
  const owner = ownerOf([...base, ...path]);
  const known = keysOf(owner);
  const word = only(owner, key) || didYouMean(near(key, known));
  const where = elsewhere(key);
  report('unknown-key', spotAt(root, [...path, key]).key, {
    key,
    owner: calledOf(owner),
    near: word || where,
    // Where one word is meant, the whole list would only hide it; that it is a word of the diary leads nowhere.
    known:
      word === '' && (where === '' || where === OF_THE_DIARY)
        ? `Known here: ${known.join(', ')}.`
        : '',
  });
}

/** A key that only some mappings of its sort have. */
function only(owner: Owner, key: string): string {
  if (owner === 'cost' && helpFor('risk', key) !== null) return 'It belongs to harm:. ';
  return helpFor(owner, key) === null ? '' : 'Only a question to decide has it. ';
}

const OF_THE_DIARY = 'It belongs to an entry of the diary. ';

/** `It belongs to a piece or a hole.`, where the key is known there and its meaning is not everywhere another. */
function elsewhere(key: string): string {
  const owners = new Set(OWNERS.filter((owner) => helpFor(owner, key)).map(calledOf));
  if (owners.size === 0 || owners.size > 3) return '';
  return `It belongs to ${[...owners].join(' or ')}. `;
}

function badName({ root, base, report }: IssuesIn, path: Path): void {
  const value = String(path.at(-1) ?? '');
  const at = spotAt(root, path).key;
  const section = String([...base, ...path].at(-2) ?? '');
  if (section === 'bolts') report('bad-kind', at, { value });
  else if (section === 'holes') report('bad-hole', at, { value });
  else {
    const names: Record<string, [string, string]> = {
      pieces: ['a piece', 'name'],
      tasks: ['a task', 'do'],
      buy: ['a thing to buy', 'what'],
      suspects: ['a suspect', 'what'],
      checks: ['a check', 'check'],
    };
    const [owner, shown] = names[section] ?? ['this', 'name'];
    report('bad-name', at, { value, owner, shown, like: slug(value) || 'gear-lever' });
  }
}

function badText(within: IssuesIn, path: Path): void {
  const { root, report } = within;
  const key = keyOf(path);
  const { spot } = spotAt(root, path);
  const value = spot.is === 'text' ? spot.text : whatIs(spot);
  if (key === 'at') report('bad-time', spot.at, { value });
  else if (key === 'id' || key === 'undo') report('bad-id', spot.at, { value });
  else if (key === 'hole') report('bad-hole', spot.at, { value });
  else
    report('bad-name', spot.at, {
      value,
      owner: key,
      like: slug(value) || 'gear-lever',
      shown: 'name',
    });
}

function wrongValue(within: IssuesIn, path: Path, choices: readonly string[]): void {
  const { root, base, report } = within;
  const full = [...base, ...path];
  const key = keyOf(path);
  const { spot, key: keyAt } = spotAt(root, path);
  const help = helpFor(ownerOf(full.slice(0, lastWord(full))), key) ?? helpForNamed(full);
  if (spot.is === 'nothing' || isAbsent(root, path)) {
    report(full.length === 1 ? 'missing' : 'lacks', keyAt, {
      key,
      like: help?.like ?? `${key}: …`,
    });
  } else if (spot.is === 'text' && choices.length > 0) {
    const known = [...new Set(choices)];
    const word = didYouMean(near(spot.text, known));
    report('bad-choice', spot.at, { value: spot.text, key, near: word, known: known.join(', ') });
  } else {
    report('wrong-type', spot.at, {
      key: `${key}:`,
      takes: help?.takes ?? 'something else',
      what: whatIs(spot),
      like: help?.like ?? '',
    });
  }
}

function isAbsent(root: Spot, path: Path): boolean {
  const parent = spotAt(root, path.slice(0, -1)).spot;
  return parent.is === 'map' && !parent.pairs.has(String(path.at(-1)));
}

/** The last step of a path that is a key. */
function keyOf(path: Path): string {
  return String(path[lastWord(path)] ?? '');
}

function lastWord(path: Path): number {
  return path.findLastIndex((step) => typeof step === 'string');
}

/** A piece, a hole, a kind that is no mapping: what its section holds. */
function helpForNamed(path: Path): { takes: string; like: string } | null {
  const owner = ownerOf(path);
  const name = String(path.at(-1) ?? '');
  const inside: Partial<Record<Owner, [string, string]>> = {
    kind: ['a text or a mapping', `${name}: M6x25 flange, 8 mm`],
    piece: ['a mapping', `${name}: {bolts: S S S}`],
    hole: ['a mapping', `${name}: {note: oil passage}`],
    task: ['a mapping', `${name}: {do: Drain the oil}`],
    buy: ['a text or a mapping', `${name}: {what: Cover gasket, once: true}`],
    suspect: ['a text or a mapping', `${name}: {what: Float needle leaks, likely: often}`],
    check: ['a text or a mapping', `${name}: {check: Blue spark, bad: [coil, plug]}`],
  };
  const found = inside[owner];
  return found ? { takes: found[0], like: found[1] } : null;
}

/** What the mapping at a path of the file is. */
function ownerOf(path: Path): Owner {
  const [section, , third, fourth] = path;
  if (path.length < 2) return 'file';
  if (section === 'bolts') return 'kind';
  if (section === 'tasks') return path.length > 2 ? (costOf(third) ?? 'task') : 'task';
  if (section === 'suspects') return 'suspect';
  if (section === 'checks') return 'check';
  if (section === 'buy') return 'buy';
  if (section === 'diary') return 'entry';
  if (path.length < 4) return third === 'caution' || third === 'tip' ? 'steps' : 'piece';
  if (third === 'holes') return 'hole';
  if (third === 'bolts' && typeof fourth === 'number') return 'item';
  if (third === 'passes' && typeof fourth === 'number') return 'pass';
  return third === 'caution' || third === 'tip' ? 'steps' : 'piece';
}

function costOf(key: PropertyKey | undefined): Owner | null {
  if (key === 'harm') return 'risk';
  return key === 'now' || key === 'later' ? 'cost' : null;
}
