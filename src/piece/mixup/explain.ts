/** A flow as an explanation: holes by name, how one look settles each, and its rank. */

import type { Fit } from '../../bolt/fit/fit.ts';
import { mm } from '../../bolt/read/numbers.ts';
import { kept } from '../../model/kept.ts';
import { hardToMiss, longerBy } from '../hard.ts';
import { byLetter } from '../words.ts';
import { among } from './among.ts';
import type { Flow } from './flow.ts';
import { alongArrows } from './flows.ts';
import { lookAtTray } from './look.ts';
import type { SureHole, Tray } from './tray.ts';
import type { Explanation, TrayInput, WrongHole } from './types.ts';

/** A wrong hole that is certain, with one kind that it can hold. */
export type Sure = SureHole & { kind: number };

/** Wrong holes of one kind; explanations of one tray share them. */
type Part = Omit<Explanation, 'wrong'>;

/** Figures and words for a wrong bolt. */
interface Arrow {
  hard: number;
  difference: number;
  look: string;
}

function arrow(tray: Tray, input: TrayInput, from: number, to: number): Arrow {
  const [a = '', b = ''] = [tray.letters[from], tray.letters[to]];
  const [takes, holds] = [input.kinds.get(a), input.kinds.get(b)];
  const names = [...(tray.full[from] ?? []), ...tray.sure.filter((h) => h.from === from)];
  const fits: Fit[] = names.flatMap((hole) => input.fitOf?.(b, hole.name) ?? []);
  const hard = takes && holds ? (input.hard ?? hardToMiss)(takes, holds, fits) : 1;
  const by = takes && holds ? longerBy(holds, takes) : null;
  return { hard, difference: Math.abs(by ?? 0), look: lookAtTray(takes, holds, fits) };
}

function saySure(hole: Sure, told: string): string {
  if (hole.mm === null) return 'Marked so when it went in.';
  return `It stands ${mm(hole.mm)} off. ${told}`;
}

/** Makes explanations of one tray out of what is certain and a flow. */
export function explainer(
  tray: Tray,
  input: TrayInput,
): (sure: readonly Sure[], flow: Flow) => Explanation {
  const letter = (kind: number) => tray.letters[kind] ?? '';
  const arrowOf = (from: number, to: number) =>
    kept(tray, `arrow ${from},${to}`, () => arrow(tray, input, from, to), input);
  const wrong = (from: number, to: number, names: readonly string[]): WrongHole => ({
    ...{ takes: letter(from), holds: letter(to), among: names },
    look: arrowOf(from, to).look,
  });
  const sum = (from: number, holds: readonly number[], by: 'hard' | 'difference') =>
    holds.reduce((total, to) => total + arrowOf(from, to)[by], 0);
  const part = (from: number, holds: readonly number[], holes: WrongHole[]): Part => ({
    ...{ holes, hard: sum(from, holds, 'hard'), difference: sum(from, holds, 'difference') },
  });
  const made = (from: number, holds: readonly number[]): Part => {
    const where = among(holds, tray.full[from] ?? []);
    const each = new Map([...where].map(([to, names]) => [to, wrong(from, to, names)]));
    const holes = holds.flatMap((to) => each.get(to) ?? []);
    return part(from, holds, holes);
  };
  // The flows of a table share their rows: one is asked for hundreds of times, and would be worked out for 100 times as long.
  const partOf = (from: number, holds: readonly number[]): Part =>
    kept(tray, `part ${from},${holds.join()}`, () => made(from, holds), input);
  const surePart = (hole: Sure): Part => {
    const it = wrong(hole.from, hole.kind, [hole.name]);
    return part(hole.from, [hole.kind], [{ ...it, look: saySure(hole, it.look) }]);
  };
  return (sure, flow) => {
    const all = [
      ...sure.map(surePart),
      ...alongArrows(flow).map((from) => partOf(from, flow[from] ?? [])),
    ];
    const holes = all.flatMap((p) => p.holes);
    return {
      ...{ wrong: holes.length, holes },
      hard: all.reduce((total, p) => total + p.hard, 0),
      difference: all.reduce((total, p) => total + p.difference, 0),
    };
  };
}

function byHoles(a: Explanation, b: Explanation): number {
  for (const [i, h] of a.holes.entries()) {
    const other = b.holes[i];
    if (!other || h === other) continue;
    const first = byLetter(h.takes, other.takes) || byLetter(h.holds, other.holds);
    const differ = first || byLetter(h.among[0] ?? '', other.among[0] ?? '');
    if (differ !== 0) return differ;
  }
  return 0;
}

/** Fewest wrong holes, then the hardest to see, then the smallest difference in length; then by letter, to be the same every time. */
export function byRank(a: Explanation, b: Explanation): number {
  return a.wrong - b.wrong || a.hard - b.hard || a.difference - b.difference || byHoles(a, b);
}
