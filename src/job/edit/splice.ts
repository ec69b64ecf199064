/**
 * Puts what happened, and small changes of the person's part, into the text of a job file. Only the bytes that
 * say the new thing change: the YAML library tells where things stand, its printer is never used on a file.
 */
export { appendEntry, findDiary } from './diary.ts';
export { type Fail, isFail } from './doc.ts';
export { addEntry } from './mark.ts';
export { emptier, saysSame, standsBare } from './same-said.ts';
export { applyEdits } from './upper.ts';
