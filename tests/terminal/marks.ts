import { preload } from './world.ts';

/**
 * Marks that a program in the terminal makes for a test to wait for: an operating system command that no terminal
 * knows, so that nothing of it is to be seen (ECMA-48, OSC). The programs beside this file write them.
 */
export const mark = (word: string): string => `\x1b]putback-test;${word}\x1b\\`;

/** How often it has been made so far. */
export const marked = (bytes: string, word: string): number => bytes.split(mark(word)).length - 1;

/** NODE_OPTIONS of a program that, on SIGUSR2, makes the mark `at rest` once it will do nothing more by itself. */
export const AT_REST = preload('at-rest.mjs');
