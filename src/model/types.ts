/**
 * The words that all rooms share: what a job file says (the upper part), what happened (the diary),
 * and where things stand (the fold of the second over the first).
 */

export { ADDABLE, type Addable, type TextKey, WRITTEN, type Written } from './addable.ts';
export { BESIDE, type Beside } from './beside.ts';
export { BUY_STATES, type BuyState } from './buys.ts';
export { CARE_WORDS, type Care } from './cares.ts';
export { TASK_VERBS, type TaskVerb } from './keys.ts';
export { CORRECTABLE, type Correctable, WRITABLE, type Writable } from './known-keys.ts';
export { HOLE_STATES, type HoleSays, TROUBLES, type Trouble } from './troubles.ts';
export * from './types-job.ts';
export * from './types-upper.ts';
export type * from './types-wish.ts';
export { VERBS, type Verb } from './verbs.ts';
