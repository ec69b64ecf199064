/** Which machines are one, or of one model: their jobs know each other. */

import { withoutReading } from '../bolt/read/counter.ts';
import { pattern } from '../model/pattern.ts';
import type { Upper } from '../model/types.ts';

export type Machine = Pick<Upper, 'machine' | 'machineId' | 'like'>;

/** `id`: this very machine. `like`: a file says so. `name`: what it is called, without case, year, distance and blanks. */
export type Same = 'id' | 'like' | 'name';

const YEAR = pattern(() => /(?<![\p{L}\d.,-])(?:18|19|20)\d\d(?![\p{L}\d.,-]*\d)/gu);

/** What two names of one model have in common: `hollin400twin`. Empty where nothing is left. */
export function machineKey(text: string | null): string {
  if (text === null) return '';
  const plain = text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();
  const key = (said: string) => said.replace(/[\s,;]+/g, '');
  const bare = key(withoutReading(plain).replace(YEAR.made, ' '));
  return bare === '' ? key(plain) : bare;
}

export const idOf = (text: string | null): string => (text ?? '').replace(/\s+/g, '').toLowerCase();

/** How the two are the same; null: they are not, as far as the files say. */
export function sameMachine(a: Machine, b: Machine): Same | null {
  const [idA, idB] = [idOf(a.machineId), idOf(b.machineId)];
  if (idA !== '' && idA === idB) return 'id';
  if (isLike(a, b) || isLike(b, a) || a.like.some((x) => b.like.some((y) => called(x, y))))
    return 'like';
  const [nameA, nameB] = [machineKey(a.machine), machineKey(b.machine)];
  return nameA !== '' && nameA === nameB ? 'name' : null;
}

const called = (x: string, y: string): boolean =>
  machineKey(x) !== '' && machineKey(x) === machineKey(y);

function isLike({ like }: Machine, other: Machine): boolean {
  const id = idOf(other.machineId);
  return like.some((said) => called(said, other.machine ?? '') || (id !== '' && idOf(said) === id));
}
