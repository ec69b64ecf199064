/**
 * The words that all rooms share: what a job file says (the upper part), what happened (the diary),
 * and where things stand (the fold of the second over the first).
 */

export { ADDABLE, type Addable, WRITTEN } from './keys/addable.ts';
export { TASK_VERBS, type TaskVerb } from './keys/keys.ts';
export { CORRECTABLE, type Correctable, WRITABLE, type Writable } from './keys/known-keys.ts';
export { BUY_STATES, type BuyState } from './states/buys.ts';
export { CARE_WORDS, type Care } from './states/cares.ts';
export { HOLE_STATES, type HoleSays, TROUBLES, type Trouble } from './states/troubles.ts';
export * from './types/job.ts';
export * from './types/upper.ts';
export type * from './types/wish.ts';
export { BESIDE, type Beside } from './verbs/beside.ts';
export { VERBS, type Verb } from './verbs/verbs.ts';
