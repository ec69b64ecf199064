/** The first and the last line of the form: `putback:` on top, `diary:` at the end. */
import type { Report } from '../faults/faults.ts';
import { type Spot, valueAt, whatIs } from '../yaml/spot.ts';
import { readVersion, textAt } from './read-fields.ts';

/** The form this program writes. */
const VERSION = 1;

/** True when the file's form is one this program knows. */
export function checkVersion(root: Spot | null, report: Report): boolean {
  if (root !== null && root.is !== 'map') return true;
  const keys = root ? [...root.pairs.values()] : [];
  const index = keys.findIndex((pair) => pair.key === 'putback');
  const pair = keys[index];
  if (!pair || valueAt(root, 'putback') === null) {
    report('no-version', pair?.at ?? root?.at ?? 0);
    return true;
  }
  if (index > 0) report('late-version', pair.at);
  const { value } = pair;
  if (value.is !== 'text' || !/^[1-9][0-9]{0,8}$/.test(value.text)) {
    report('bad-version', value.at, { value: whatIs(value) });
    return true;
  }
  if (readVersion(textAt(root, 'putback') ?? '') <= VERSION) return true;
  report('newer-version', value.at, { value: value.text });
  return false;
}

/** Marks are added at the end of the file, and only a diary that stands there is read line by line. */
export function checkDiaryLast(root: Spot | null, report: Report): void {
  if (root?.is !== 'map' || root.flow) return;
  const keys = [...root.pairs.values()];
  const index = keys.findIndex((pair) => pair.key === 'diary');
  const below = keys[index + 1];
  if (index >= 0 && below) report('diary-not-last', below.at);
}
