/** The merge driver alone, as git calls it. */
import { mergeDriver } from '../../../src/diary/git/driver.ts';

const [, base = '', ours = '', theirs = ''] = process.argv.slice(2);
const { as } = await mergeDriver(base, ours, theirs);
process.exitCode = { merged: 0, open: 1, undone: 2 }[as];
