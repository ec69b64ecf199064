import { setFlagsFromString } from 'node:v8';

/** Versions of V8 that were seen to know the flag; one that does not would say so on the terminal. */
const KNOWS = [12, 13, 14];

/**
 * For reading thousands of files one by one: each is garbage when the next is read, and V8 would let 60 MB of it lie
 * before it looks. Costs no time that was measured. Where it is not known, nothing happens.
 */
export function leaveLittleGarbage(): void {
  const [major = ''] = process.versions.v8.split('.');
  if (KNOWS.includes(Number(major))) setFlagsFromString('--semi-space-growth-factor=1');
}
