/** The input with its names looked up: what each check shows, and what means nothing. */
import type { Check, Cover, Suspect, TraceFault, TraceInput, TraceMark } from './types.ts';

/** A check with all that it shows. */
export interface TraceShown {
  name: string;
  takes: number | null;
  shows: ReadonlySet<string>;
  behind: readonly string[];
}

export interface TraceRead {
  suspects: Suspect[];
  checks: TraceShown[];
  covers: Cover[];
  marks: TraceMark[];
  faults: TraceFault[];
}

/** Suspects, checks and covers that are read, each: a list that a person looks through has dozens. */
export const MOST_LISTED = 500;

/** What cannot be used is left out, each with its fault; nothing is thrown. */
export function readTrace(input: TraceInput): TraceRead {
  const faults: TraceFault[] = [];
  const tell = (code: TraceFault['code'], at: string, says: string) =>
    faults.push({ code, at, says });
  const listed = <T extends { name: string }>(all: readonly T[]): Map<string, T> => {
    const names = new Map<string, T>();
    for (const [i, one] of all.entries()) {
      if (i >= MOST_LISTED) tell('too-many', one.name, `${MOST_LISTED}`);
      else if (names.has(one.name)) tell('twice', one.name, one.name);
      else names.set(one.name, one);
    }
    return names;
  };
  const suspects = listed(input.suspects);
  const checks = listed(input.checks);
  const covers = listed(input.covers);

  const knownOnly = (check: Check): Check => {
    const suspect = (name: string) =>
      suspects.has(name) || !tell('unknown-suspect', check.name, name);
    return {
      ...check,
      bad: check.bad.filter(suspect),
      along: check.along.filter((name) => checks.has(name) || suspect(name)),
      behind: check.behind.filter(
        (name) => covers.has(name) || !tell('unknown-cover', check.name, name),
      ),
    };
  };
  const known = new Map([...checks].map(([name, check]) => [name, knownOnly(check)]));
  const shown = shownBy(known, (name) => suspects.has(name), tell);
  for (const { name, likely } of suspects.values()) {
    if (typeof likely === 'number' && !isWeight(likely)) tell('weight', name, `${likely}`);
  }
  return {
    suspects: [...suspects.values()],
    checks: shown,
    covers: [...covers.values()],
    marks: input.marks.filter(
      ({ check }) => checks.has(check) || !tell('unknown-check', check, check),
    ),
    faults,
  };
}

export const isWeight = (likely: number): boolean => likely > 0 && Number.isFinite(likely);

/** Every check with what it shows, the ways of the checks that it names included. */
function shownBy(
  checks: ReadonlyMap<string, Check>,
  isSuspect: (name: string) => boolean,
  tell: (code: TraceFault['code'], at: string, says: string) => void,
): TraceShown[] {
  const named = ({ along }: Check) => along.filter((name) => !isSuspect(name));
  /** All checks on the way to one; itself only if the way leads round to it. */
  const wayTo = (name: string): Set<string> => {
    const way = new Set<string>();
    const ahead = [name];
    for (let at = ahead.pop(); at !== undefined; at = ahead.pop()) {
      const check = checks.get(at);
      for (const next of check ? named(check) : []) {
        if (way.has(next)) continue;
        way.add(next);
        ahead.push(next);
      }
    }
    return way;
  };
  const told = new Set<string>();
  return [...checks.values()].map((check) => {
    const { name, takes, behind } = check;
    const way = wayTo(name);
    if (way.has(name) && !told.has(name)) {
      const circle = [...way].filter((other) => wayTo(other).has(name));
      for (const other of circle) told.add(other);
      tell('circle', name, circle.join(', '));
    }
    const shows = new Set<string>();
    for (const part of [check, ...[...way].flatMap((other) => checks.get(other) ?? [])]) {
      for (const suspect of [...part.bad, ...part.along.filter(isSuspect)]) shows.add(suspect);
    }
    if (shows.size === 0) tell('shows-nothing', name, name);
    return { name, takes, shows, behind: [...new Set(behind)] };
  });
}
