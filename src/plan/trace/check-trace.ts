/** What is wrong with suspects, checks and figures to weigh, each at its place in the file. */

import type { Data, Report } from '../../job/faults/faults.ts';
import { firstNames } from '../../job/form/read-cross.ts';
import { textSpotsOf } from '../../job/form/read-fields.ts';
import { pairsOf } from '../../job/form/read-keys.ts';
import { readAmount, readHarm } from '../../job/form/typed-figures.ts';
import { type Spot, spotAt, valueAt } from '../../job/yaml/spot.ts';
import { didYouMean, near } from '../../model/nearword.ts';
import type { Upper } from '../../model/types.ts';
import { MOST_LISTED, readTrace } from '../../trace/read.ts';
import { readChance } from '../../trace/weigh/chance.ts';
import { checksOf, minutesIn, suspectsOf } from './input.ts';
import { moneyIn } from './money.ts';

export function checkTrace(upper: Upper, root: Spot | null, report: Report): void {
  checkNames(upper, root, report);
  checkShown(upper, root, report);
  checkFigures(root, report);
}

function unknown(value: string, names: Iterable<string>): () => Data {
  return () => {
    const all = [...names];
    return { value, near: didYouMean(near(value, all)), known: firstNames(all) };
  };
}

/** Names under a key of a section's items that are none of these. */
function checkNames({ suspects, checks, pieces }: Upper, root: Spot | null, report: Report): void {
  const look = (
    section: string,
    key: string,
    known: readonly ReadonlyMap<string, unknown>[],
    code: 'unknown-suspect' | 'unknown-check' | 'unknown-piece',
  ): void => {
    for (const { value } of pairsOf(valueAt(root, section))) {
      for (const { text, at } of textSpotsOf(valueAt(value, key))) {
        const name = text.trim();
        if (known.some((names) => names.has(name))) continue;
        report(
          code,
          at,
          unknown(
            name,
            known.flatMap((names) => [...names.keys()]),
          ),
        );
      }
    }
  };
  look('checks', 'bad', [suspects], 'unknown-suspect');
  look('checks', 'along', [suspects, checks], 'unknown-suspect');
  look('checks', 'under', [pieces], 'unknown-piece');
  look('suspects', 'piece', [pieces], 'unknown-piece');
  look('tasks', 'proves', [checks], 'unknown-check');
}

/** Circles, and checks that could show nothing; what names nobody is told by the name. */
function checkShown(upper: Upper, root: Spot | null, report: Report): void {
  if (upper.checks.size === 0 && upper.suspects.size <= MOST_LISTED) return;
  const covers = [...upper.pieces.keys()].map((name) => ({ name, takes: null }));
  const input = { suspects: suspectsOf(upper), checks: checksOf(upper), covers, marks: [] };
  const { faults } = readTrace(input);
  const named = new Set(faults.filter((f) => f.code.startsWith('unknown')).map((f) => f.at));
  const like = [...upper.suspects.keys()].slice(0, 2).join(', ') || 'coil, plug';
  const place = (path: string[]) => (root ? spotAt(root, path).key : 0);
  const [tooMany] = faults.filter((f) => f.code === 'too-many');
  if (tooMany) {
    const section = upper.suspects.has(tooMany.at) ? 'suspects' : 'checks';
    report('too-many-traced', place([section, tooMany.at]), { most: MOST_LISTED });
  }
  for (const { code, at, says } of faults) {
    if (code === 'circle') report('circle-along', place(['checks', at]), { value: says });
    // Before anything is suspected it is only not said yet.
    if (code !== 'shows-nothing' || named.has(at) || upper.suspects.size === 0) continue;
    const name = upper.checks.get(at)?.check ?? at;
    report('shows-nothing', place(['checks', at]), { name, like });
  }
}

/** Times, prices and chances that were not read: they count as unknown, and that is told. */
function checkFigures(root: Spot | null, report: Report): void {
  const tell = (spot: Spot | null, key: string): void => {
    const [text] = textSpotsOf(valueAt(spot, key));
    if (!text) return;
    const data = { value: text.text, like: `${key}: 20 min` };
    if (key === 'takes' && minutesIn(text.text) === null) report('unread-takes', text.at, data);
    if (key === 'price' && moneyIn(text.text) === null) report('unread-price', text.at, data);
    if (key === 'chance' && !readChance(text.text)) report('unread-chance', text.at, data);
  };
  for (const section of ['suspects', 'checks', 'pieces', 'tasks']) {
    for (const { value } of pairsOf(valueAt(root, section))) tell(value, 'takes');
  }
  for (const { value } of pairsOf(valueAt(root, 'buy'))) tell(value, 'price');
  for (const { value: task } of pairsOf(valueAt(root, 'tasks'))) {
    if (valueAt(task, 'decide') === null) continue;
    tell(task, 'chance');
    for (const key of ['now', 'later', 'harm']) {
      const value = valueAt(task, key);
      for (const figure of ['price', 'takes', 'chance']) tell(value, figure);
      if (value?.is !== 'text') continue;
      const { text, at } = value;
      const { price, takes, chance } =
        key === 'harm' ? readHarm(text) : { ...readAmount(text), chance: null };
      if (price !== null && moneyIn(price) === null) report('unread-price', at, { value: price });
      if (takes !== null && minutesIn(takes) === null)
        report('unread-takes', at, { value: takes, like: `${key}: 12.50, 40 min` });
      if (chance !== null && !readChance(chance)) report('unread-chance', at, { value: chance });
    }
  }
}
