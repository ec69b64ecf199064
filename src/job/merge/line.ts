/** Keys that both sides changed and that can be looked into: a row hole by hole, a map on one line pair by pair. */
import { isMap, isSeq, type Node, type Pair } from 'yaml';
import { cut, endOfPair, isFail, openDoc, plainOf, rangeOf } from '../edit/doc.ts';
import { rowCuts, wordsOf } from '../edit/row.ts';
import { byText, interleave } from './order.ts';

/** What only one side changed; null when both did, each in its way. */
export function three<T>(base: T | undefined, ours: T, theirs: T): T | null {
  if (ours === theirs || theirs === base) return ours;
  return ours === base ? theirs : null;
}

/** The one pair that a text of a single key holds. */
function onlyPair(text: string): Pair<Node, Node | null> | null {
  const doc = openDoc(text);
  const root: unknown = isFail(doc) ? null : doc.contents;
  return isMap(root) && root.items.length === 1 ? (root.items[0] as Pair<Node, Node | null>) : null;
}

/**
 * `bolts: S S M`, in any spelling, with as many holes on all sides: each hole by itself, in the spelling of ours.
 * Null when one hole differs, or it is no row.
 */
export function mergeRow(base: string, ours: string, theirs: string): string | null {
  const [b, o, t] = [base, ours, theirs].map((text) => {
    const value = onlyPair(text)?.value;
    return value ? wordsOf(plainOf(value)) : null;
  });
  if (!b || !o || !t || o.length !== b.length || t.length !== b.length) return null;
  let out = ours;
  for (const [index, was] of o.entries()) {
    const word = three(b[index] ?? '', was, t[index] ?? '');
    if (word === null) return null;
    if (word === was) continue;
    const row = onlyPair(out)?.value;
    const ways = row ? rowCuts(out, row, { index, was, word }) : [];
    const next = isFail(ways) ? [] : ways.map((cuts) => cut(out, cuts));
    const good = next.find((text) => {
      const value = onlyPair(text)?.value;
      return value && wordsOf(plainOf(value))?.join(' ') === o.with(index, word).join(' ');
    });
    if (good === undefined) return null;
    o[index] = word;
    out = good;
  }
  return out;
}

interface Flow {
  /** Up to the first pair, and from behind the last. */
  open: string;
  close: string;
  pairs: Map<string, string>;
}

/** `cover: {name: Lid, bolts: S S}`: pair by pair. Null when one pair differs, or it is no such line. */
export function mergeFlow(base: string, ours: string, theirs: string): string | null {
  const [o, t] = [ours, theirs].map(flowOf);
  const b = base === '' && o ? { ...o, pairs: new Map<string, string>() } : flowOf(base);
  if (!b || !o || !t) return null;
  const open = three(b.open, o.open, t.open);
  const close = three(b.close, o.close, t.close);
  if (open === null || close === null) return null;
  const parts: string[] = [];
  for (const key of interleave([...o.pairs.keys()], [...t.pairs.keys()], (k) => k, byText)) {
    const [was, mine, yours] = [b, o, t].map((f) => f.pairs.get(key));
    let pair = three(was, mine, yours);
    if (pair === null && key === 'bolts' && was && mine && yours) pair = mergeRow(was, mine, yours);
    if (pair === null) return null;
    if (pair !== undefined) parts.push(pair);
  }
  return open + parts.join(', ') + close;
}

function flowOf(line: string): Flow | null {
  const map = onlyPair(line)?.value;
  if (!isMap(map) || !map.flow || line.trimEnd().includes('\n')) return null;
  const items = map.items as Pair<Node, Node | null>[];
  if (items.some((p) => isSeq(p.key) || isMap(p.key))) return null;
  const [first, last] = [items[0], items.at(-1)];
  const open = first ? rangeOf(first.key)[0] : rangeOf(map)[0] + 1;
  return {
    open: line.slice(0, open),
    close: line.slice(last ? endOfPair(last) : open),
    pairs: new Map(
      items.map((p) => [String(plainOf(p.key)), line.slice(rangeOf(p.key)[0], endOfPair(p))]),
    ),
  };
}
