/** Orders of pieces, kept in the user's cache folder beside compiled code and as carefully: one file an order. */
import { readdirSync, rmSync, statSync } from 'node:fs';
import { keep, readKept } from './compiled.ts';
import type { Elsewhere } from './piece/sequence/memory.ts';

/** Shorter keys are of pieces with few holes: worked out as fast as read. */
const SHORTEST = 1000;
/** Files. */
const MOST = 200;

/** Names a file; whether it is the right one its own key says. FNV-1a by four bytes, twice from different seeds. */
function nameOf(key: string): string {
  const words = new Uint32Array(Math.ceil(key.length / 4));
  Buffer.from(words.buffer).write(key, 'latin1');
  let one = 0x811c9dc5;
  let other = 0x5bd1e995;
  for (const word of words) {
    one = Math.imul(one ^ word, 0x01000193);
    other = Math.imul(other ^ word, 0x01000193);
  }
  return `order-${[one, other].map((n) => (n >>> 0).toString(16).padStart(8, '0')).join('')}`;
}

/** Text of a value that comes back from it as it is; null for one that would not. */
function textOf(value: unknown): string | null {
  let whole = true;
  const text = JSON.stringify(value, (_key, part: unknown) => {
    if (part === undefined || (typeof part === 'number' && !Number.isFinite(part))) whole = false;
    if (part instanceof Map || part instanceof Set || Object.is(part, -0)) whole = false;
    return part;
  });
  return whole ? text : null;
}

/** `version` names the program and its Node: what another worked out is not asked. */
export function keptOrders(folder: string, version: string): Elsewhere {
  const own = `${folder}/${version}`;
  return {
    get(key) {
      if (key.length < SHORTEST) return null;
      try {
        const text = readKept(`${own}/${nameOf(key)}`)?.toString('utf8') ?? 'null';
        const said = JSON.parse(text) as [string, unknown] | null;
        return said?.[0] === key ? said[1] : null;
      } catch {
        return null;
      }
    },
    put(key, made) {
      const text = key.length < SHORTEST ? null : textOf([key, made]);
      if (text === null) return;
      keep(folder, version, nameOf(key), Buffer.from(text));
      try {
        const all = readdirSync(own).filter((name) => name.startsWith('order-'));
        if (all.length <= MOST) return;
        const byAge = all.map((name) => ({ name, at: statSync(`${own}/${name}`).mtimeMs }));
        const old = byAge.sort((a, b) => a.at - b.at).slice(0, MOST / 2);
        for (const { name } of old) rmSync(`${own}/${name}`, { force: true });
      } catch {
        // There may be more of them than needed.
      }
    },
  };
}
