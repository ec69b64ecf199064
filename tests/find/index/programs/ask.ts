/**
 * Asks the index of a folder again and again, and says of each answer whether a plain scan gives the same: where a
 * file was changed between the two, both are asked once more.
 */
import { findIn, scanFolder } from '../../../../src/find/index/find.ts';
import { filesOf } from '../../../../src/find/index/folder.ts';
import { bestFirst, question } from '../../../../src/find/question.ts';

// An hour later: what was just changed would be read each time.
const clock = Date.now;
Date.now = () => clock() + 3_600_000;

const folder = process.argv[2] ?? '';
const ask = question(['zebra']);

const stamps = () => JSON.stringify(filesOf(folder));

while (ask !== null) {
  const before = stamps();
  const one = findIn(folder, ask, () => {}).held.sort(bestFirst);
  const other = scanFolder(folder, ask).held.sort(bestFirst);
  if (stamps() !== before) continue;
  process.send?.({ same: JSON.stringify(one) === JSON.stringify(other) });
  await new Promise((done) => setImmediate(done));
}
