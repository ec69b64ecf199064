/** All that is wrong with a job file, and with its order: what `putback check` tells. */
import { checkJob } from '../job/check.ts';
import { collector } from '../job/faults/faults.ts';
import { toFaults } from '../job/faults/place.ts';
import { readJob } from '../job/read.ts';
import { openYaml } from '../job/yaml/doc.ts';
import { spotAt } from '../job/yaml/spot.ts';
import type { Fault, Upper } from '../model/types.ts';
import { list } from '../model/words.ts';
import { caresOf } from './care.ts';
import { circlesOf } from './relations.ts';
import { checkTrace } from './trace/check-trace.ts';

/** Faults of a text, by line and column; never throws. `file` is only named in them. */
export function checkAll(text: string, file: string): Fault[] {
  const faults = checkJob(text, file);
  const { upper, unreadable } = readJob(text, file);
  // A circle among pieces alone is told where the pieces are read.
  const circles = unreadable
    ? []
    : circlesOf(upper).filter((c) => c.keys.some((key) => upper.tasks.has(key)));
  const guessed = unreadable
    ? []
    : [...upper.pieces.values()].filter((spec) => caresOf(spec).guessed.length > 0);
  if (unreadable || !asksMore(upper, circles.length + guessed.length)) return faults;
  const { found, report } = collector();
  const { root } = openYaml(text);
  checkTrace(upper, root, report);
  for (const { steps, keys } of circles) {
    const task = keys.find((key) => upper.tasks.has(key)) ?? '';
    const at = root ? spotAt(root, ['tasks', task]).key : 0;
    report('circle-steps', at, { value: [...steps, steps[0] ?? ''].join(' → ') });
  }
  for (const spec of guessed) {
    const { care, guessed: names } = caresOf(spec);
    const at = root ? spotAt(root, ['pieces', spec.key]).key : 0;
    const said = (words: readonly string[]) =>
      `care: ${words.length === 1 ? words[0] : `[${words.join(', ')}]`}`;
    const own = care.filter((c) => !names.includes(c));
    const data = {
      name: spec.name,
      what: list(names),
      like: said(care),
      without: said([...own, 'none']),
    };
    report('guessed-care', at, data);
  }
  return [...faults, ...toFaults(found, text, file)].sort(
    (a, b) => a.line - b.line || a.column - b.column,
  );
}

/** Something stands in the file that is looked at by its places: the tree is read once more for it. */
function asksMore({ suspects, checks, tasks }: Upper, told: number): boolean {
  if (told > 0 || suspects.size > 0 || checks.size > 0) return true;
  return [...tasks.values()].some(({ weigh, proves }) => weigh || proves);
}
