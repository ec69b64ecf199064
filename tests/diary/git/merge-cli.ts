/** The merge driver alone, as git calls it. */
import { mergeDriver } from '../../../src/diary/git/driver.ts';

const [, base = '', ours = '', theirs = ''] = process.argv.slice(2);
process.exitCode = await mergeDriver(base, ours, theirs);
