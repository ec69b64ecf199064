/** Random jobs for property tests: pieces under one another, tasks between them, and what could have happened. */
import fc from 'fast-check';
import { boltsOff, boltsOn, done, off, on, type Said } from './make.ts';

export interface Drawn {
  text: string;
  /** Row of bolts by piece; empty for none. */
  rows: ReadonlyMap<string, string>;
  /** What lies over each piece, as the text says of the one or the other. */
  under: ReadonlyMap<string, string[]>;
  tasks: readonly { key: string; before: string[]; after: string[]; while: string[] }[];
}

interface Shape {
  /** `joined`: the pieces over it say that they bridge it, instead of its saying that it lies under them. */
  pieces: { row: string; under: number[]; joined: boolean }[];
  tasks: { verb: string; before: number[]; after: number[]; while: number[] }[];
}

const few = (most: number) => fc.array(fc.nat(), { maxLength: most });

const shape: fc.Arbitrary<Shape> = fc.record({
  pieces: fc.array(
    fc.record({
      row: fc.constantFrom('', '', 'S', 'S S'),
      under: few(2),
      joined: fc.nat({ max: 3 }).map((n) => n === 0),
    }),
    { minLength: 1, maxLength: 8 },
  ),
  tasks: fc.array(
    fc.record({
      verb: fc.constantFrom('do', 'decide', 'adjust', 'test'),
      before: few(1),
      after: few(2),
      while: few(1),
    }),
    { maxLength: 5 },
  ),
});

/** `knots`: pieces may lie under each other in a circle; else only under pieces that stand before them. */
export function drawnJob(knots: boolean): fc.Arbitrary<Drawn> {
  return shape.map(({ pieces, tasks }) => {
    const pick = <T>(from: readonly T[], at: readonly number[]) =>
      from.length === 0 ? [] : [...new Set(at.map((n) => from[n % from.length]!))];
    const names = pieces.map((_, i) => `p${i}`);
    const under = new Map(
      pieces.map((p, i) => [`p${i}`, pick(knots ? names : names.slice(0, i), p.under)]),
    );
    const steps = [
      ...names.flatMap((n) => [`${n} off`, `${n} on`]),
      ...tasks.map((_, i) => `t${i}`),
    ];
    const drawn = tasks.map((t, i) => ({
      key: `t${i}`,
      verb: t.verb,
      before: pick(steps, t.before),
      after: pick(steps, t.after),
      while: pick(
        names.map((n) => `${n} off`),
        t.while,
      ),
    }));
    const list = (words: readonly string[]) => `[${words.join(', ')}]`;
    const joins = (over: string) =>
      names.filter((n, i) => pieces[i]!.joined && under.get(n)!.includes(over));
    const text = [
      'bolts: {S: M6x25}',
      'pieces:',
      ...pieces.map((p, i) => {
        const row = p.row ? `bolts: ${p.row}, ` : '';
        const overs = p.joined ? [] : under.get(`p${i}`)!;
        return `  p${i}: {${row}under: ${list(overs)}, bridges: ${list(joins(`p${i}`))}}`;
      }),
      ...(drawn.length > 0 ? ['tasks:'] : []),
      ...drawn.map(
        (t) =>
          `  ${t.key}: {${t.verb}: It, before: ${list(t.before)}, after: ${list(t.after)}, while: ${list(t.while)}}`,
      ),
    ].join('\n');
    const rows = new Map(pieces.map((p, i) => [`p${i}`, p.row]));
    return { text, rows, under, tasks: drawn };
  });
}

/** The lines that finish a step. */
export function finish(drawn: Drawn, step: string): Said[] {
  const [key = '', way] = step.split(' ');
  if (way === undefined) return [done(key)];
  const row = drawn.rows.get(key) ?? '';
  if (row === '') return [way === 'off' ? off(key) : on(key)];
  return way === 'off' ? boltsOff(key, row) : boltsOn(key, row);
}

/** What must be finished before what, straight from the text. */
export function declared(drawn: Drawn): [string, string][] {
  const pairs: [string, string][] = [...drawn.rows.keys()].map((p) => [`${p} off`, `${p} on`]);
  for (const [piece, overs] of drawn.under) {
    for (const over of overs) {
      pairs.push([`${over} off`, `${piece} off`], [`${piece} on`, `${over} on`]);
    }
  }
  for (const { key, before, after, while: during } of drawn.tasks) {
    for (const step of before) pairs.push([key, step]);
    for (const step of after) pairs.push([step, key]);
    for (const step of during) pairs.push([step, key], [key, step.replace(' off', ' on')]);
  }
  return pairs;
}
