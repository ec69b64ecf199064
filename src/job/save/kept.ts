/**
 * A copy of a job in the user's own folder from its first mark in a sitting to the end of that: what was shown as
 * done outlives a kill of the program, even if the next instant somebody saves an older text over the file.
 */
import { dropOwn, keepOwn, readOwn } from './own.ts';

/** `file`: the real path of the job. Where there is no folder for it nothing is kept. */
export const keepCopy = (file: string, text: string): boolean => keepOwn(file, 'kept', text);

/** The copy that an earlier run left, and when, RFC 3339; null: there is none of this user's. */
export const copyOf = (file: string): { text: string; at: string } | null => readOwn(file, 'kept');

/** The sitting is over, or its marks are elsewhere. */
export const dropCopy = (file: string): void => dropOwn(file, 'kept');
