/** Counts and lists as one says them. */

export { sayItem, sayUnder } from '../../job/fold/say-hole.ts';
export { capital, list, many } from '../../model/words.ts';
export { sayCounts } from '../../piece/words.ts';
