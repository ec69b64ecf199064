/** A mark in words, for taking it back. */
import type { Entry } from '../../job/types.ts';
import { list } from './words.ts';

/** `4 out, M clip`, `9 stuck`, `all tight, full`, `the piece off`. */
export function sayEntry(entry: Entry): string {
  const holes = entry.hole ? list(entry.hole) : 'all';
  switch (entry.verb) {
    case 'out':
    case 'in':
    case 'tight':
      return `${holes} ${entry.verb}, ${entry.value}`;
    case 'state':
      return `${holes} ${entry.value}`;
    case 'settle':
      return `${holes} takes ${entry.value}`;
    case 'removed':
      return entry.value === 'aside' ? 'the piece aside' : 'the piece off';
    case 'fitted':
      return 'the piece on';
    default:
      return `${entry.verb}: ${entry.value}`;
  }
}
