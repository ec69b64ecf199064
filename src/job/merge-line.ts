/** Single lines of a job file that both sides changed: a row word by word, a map on one line pair by pair. */
import { isMap, isScalar, isSeq, type Node, type Pair } from 'yaml';
import { rowWords } from '../piece/row.ts';
import { byText, interleave } from './merge-order.ts';
import { endOfPair, isFail, openDoc, plainOf, rangeOf } from './splice-doc.ts';

/** `bolts: S S M` with as many holes on all sides: each hole by itself. Null when one hole differs, or it is no such line. */
export function mergeWords(base: string, ours: string, theirs: string): string | null {
  const [b, o, t] = [base, ours, theirs].map(rowOf);
  if (!b || !o || !t || o.words.length !== b.words.length || t.words.length !== b.words.length) {
    return null;
  }
  let out = ours;
  for (let i = o.words.length - 1; i >= 0; i--) {
    const [was, mine, yours] = [b, o, t].map((r) => r.words[i]?.word);
    const word = o.words[i];
    if (mine === yours || yours === was || !word || yours === undefined) continue;
    if (mine !== was) return null;
    const at = o.from + word.at;
    out = out.slice(0, at) + yours + out.slice(at + word.word.length);
  }
  return out;
}

function rowOf(line: string): { from: number; words: ReturnType<typeof rowWords> } | null {
  const doc = openDoc(line);
  const map: unknown = isFail(doc) ? null : doc.contents;
  const value = isMap(map) && map.items.length === 1 ? map.items[0]?.value : null;
  if (!isScalar(value) || value.type !== 'PLAIN') return null;
  const [from, to] = rangeOf(value as Node);
  return { from, words: rowWords(line.slice(from, to)) };
}

interface Flow {
  /** Up to the first pair, and from behind the last. */
  open: string;
  close: string;
  pairs: Map<string, string>;
}

/** `cover: {name: Lid, bolts: S S}`: pair by pair. Null when one pair differs, or it is no such line. */
export function mergeFlow(base: string, ours: string, theirs: string): string | null {
  const [b, o, t] = [base, ours, theirs].map(flowOf);
  if (!b || !o || !t) return null;
  const open = three(b.open, o.open, t.open);
  const close = three(b.close, o.close, t.close);
  if (open === null || close === null) return null;
  const parts: string[] = [];
  for (const key of interleave([...o.pairs.keys()], [...t.pairs.keys()], (k) => k, byText)) {
    const pair = three(b.pairs.get(key), o.pairs.get(key), t.pairs.get(key));
    if (pair === null) return null;
    if (pair !== undefined) parts.push(pair);
  }
  return open + parts.join(', ') + close;
}

function three<T>(base: T, ours: T, theirs: T): T | null {
  if (ours === theirs || theirs === base) return ours;
  return ours === base ? theirs : null;
}

function flowOf(line: string): Flow | null {
  const doc = openDoc(line);
  const root: unknown = isFail(doc) ? null : doc.contents;
  const map = isMap(root) && root.items.length === 1 ? root.items[0]?.value : null;
  if (!isMap(map) || !map.flow || line.trimEnd().includes('\n')) return null;
  const items = map.items as Pair<Node, Node | null>[];
  const [first, last] = [items[0], items.at(-1)];
  if (!first || !last || items.some((p) => isSeq(p.key))) return null;
  const pairs = new Map(
    items.map((p) => [String(plainOf(p.key)), line.slice(rangeOf(p.key)[0], endOfPair(p))]),
  );
  return {
    open: line.slice(0, rangeOf(first.key)[0]),
    close: line.slice(endOfPair(last)),
    pairs,
  };
}
