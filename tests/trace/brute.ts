/** The least expected minutes of all ways there are, by trying every check at every turn: nothing is remembered. */
import type { Check, TraceInput, TraceWay } from '../../src/trace/types.ts';

const LIKELY = { often: 4, 'now and then': 2, rarely: 1 };

/** For inputs in which every weight and time is known, without marks and ways. */
export function bruteMinutes({ suspects, checks, covers }: TraceInput): number {
  const weight = new Map(
    suspects.map(({ name, likely }) => [
      name,
      typeof likely === 'string' ? LIKELY[likely] : (likely ?? Number.NaN),
    ]),
  );
  const price = new Map(covers.map(({ name, takes }) => [name, takes ?? Number.NaN]));
  const total = (left: readonly string[]) =>
    left.reduce((sum, name) => sum + (weight.get(name) ?? 0), 0);

  const cost = ({ takes, behind }: Check, off: ReadonlySet<string>) =>
    behind.reduce((sum, c) => sum + (off.has(c) ? 0 : (price.get(c) ?? 0)), takes ?? Number.NaN);

  const least = (left: readonly string[], off: ReadonlySet<string>): number => {
    const all = checks.flatMap((check): number[] => {
      const bad = left.filter((name) => check.bad.includes(name));
      const good = left.filter((name) => !check.bad.includes(name));
      if (bad.length === 0 || good.length === 0) return [];
      const after = new Set([...off, ...check.behind]);
      return [cost(check, off) * total(left) + least(bad, after) + least(good, after)];
    });
    return all.length > 0 ? Math.min(...all) : 0;
  };
  const names = suspects.map(({ name }) => name);
  return least(names, new Set()) / total(names);
}

/** What a way takes in the mean, walked for each suspect. */
export function minutesOfWay(way: TraceWay | null, { suspects, checks }: TraceInput): number {
  let [sum, total] = [0, 0];
  for (const { name, likely } of suspects) {
    const weight = typeof likely === 'string' ? LIKELY[likely] : (likely ?? Number.NaN);
    let spent = 0;
    let at: TraceWay | string[] | null = way;
    while (at && !Array.isArray(at)) {
      const { check, minutes, bad, good }: TraceWay = at;
      spent += minutes;
      at = checks.find((one) => one.name === check)?.bad.includes(name) ? bad : good;
    }
    sum += weight * spent;
    total += weight;
  }
  return sum / total;
}
