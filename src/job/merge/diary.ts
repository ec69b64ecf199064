/** Two diaries united: by id where they have one, each line's bytes as they are. */
import { parseEntryLine } from '../diary/entry.ts';
import { isFail, openDoc, plainOf } from '../edit/doc.ts';
import { byText, byTime, interleave } from './order.ts';

/** An entry, in as many lines as it is written in, with the comments and blank lines below it. */
export interface Item {
  /** Its lines, each with a line feed; empty for what stands above the first entry. */
  text: string;
  below: string[];
  id: string | null;
  /** Its time; where it has none, that of the entry above it. */
  at: string | null;
  /** Same for the same entry on both sides; unique on each. */
  key: string;
}

/** The items of a diary's lines, the first one being what stands above the entries. `column`: of the dashes. */
export function diaryItems(block: string, column: number): Item[] {
  const items: { text: string; below: string[] }[] = [{ text: '', below: [] }];
  for (const line of block.split(/(?<=\n)/)) {
    const indent = line.search(/[^ ]/);
    const last = items.at(-1);
    if (line.trim() !== '' && indent === column && /^-\s/.test(line.slice(indent))) {
      items.push({ text: line, below: [] });
    } else if (last && last.text !== '' && line.trim() !== '' && indent > column) {
      last.text += last.below.join('') + line;
      last.below = [];
    } else if (line !== '') last?.below.push(line);
  }
  return keyed(items.map((item) => ({ ...item, ...named(item.text, column) })));
}

function named(text: string, column: number): { id: string | null; at: string | null } {
  const entry = parseEntryLine(text.trimEnd());
  if (entry || text === '') return { id: entry?.id ?? null, at: entry?.at ?? null };
  const doc = openDoc(text.replace(new RegExp(`^ {${column}}`, 'gm'), ''));
  const list = isFail(doc) ? [] : plainOf(doc.contents);
  const map = Array.isArray(list) ? list[0] : undefined;
  const say = (key: string) => {
    const value = map instanceof Map ? map.get(key) : undefined;
    return typeof value === 'string' && value !== '' ? value : null;
  };
  return { id: say('id'), at: say('at') };
}

/** Keys: the id, else the text; and which one of those with the same. */
function keyed(items: readonly Omit<Item, 'key'>[]): Item[] {
  const seen = new Map<string, number>();
  let above: string | null = null;
  return items.map((item) => {
    const base = item.id === null ? `text ${item.text.trim()}` : `id ${item.id}`;
    const n = (seen.get(base) ?? 0) + 1;
    seen.set(base, n);
    above = item.at ?? above;
    return { ...item, at: above, key: n === 1 ? base : `${base} ${n}` };
  });
}

const compare = (a: Item, b: Item): number =>
  byTime(a.at, b.at) || byText(a.key, b.key) || byText(a.text, b.text);

/**
 * All items of both sides, each side's order kept and interleaved by time. An entry whose text was changed on one
 * side has the changed text; changed on both, it stands twice, and the fold heeds the first.
 * Nothing is dropped, even if one side took it out: a diary only grows.
 */
export function uniteItems(
  base: readonly Item[],
  ours: readonly Item[],
  theirs: readonly Item[],
): Item[] {
  const [was, mine, yours] = [base, ours, theirs].map((s) => new Map(s.map((i) => [i.key, i])));
  const settle = (item: Item, other: Item | undefined): Item => {
    if (!other) return item;
    const old = was?.get(item.key);
    const below = belowBoth(old?.below ?? null, item.below, other.below);
    if (other.text === item.text || old?.text === other.text) return { ...item, below };
    if (old?.text === item.text) return { ...other, below };
    return { ...item, key: `${item.key}\n${item.text}` };
  };
  return interleave(
    ours.map((i) => settle(i, yours?.get(i.key))),
    theirs.map((i) => settle(i, mine?.get(i.key))),
    (i) => i.key,
    compare,
  );
}

/** Comments below an entry: those of the side that changed them; of both, where both did. */
function belowBoth(base: string[] | null, a: string[], b: string[]): string[] {
  const same = (x: string[] | null, y: string[]) => x !== null && x.join('') === y.join('');
  if (same(a, b) || same(base, b)) return a;
  if (same(base, a)) return b;
  const counted = (lines: string[]) => {
    const seen = new Map<string, number>();
    return lines.map((line) => {
      const n = (seen.get(line) ?? 0) + 1;
      seen.set(line, n);
      return { line, key: `${n} ${line}` };
    });
  };
  const both = interleave(
    counted(a),
    counted(b),
    (l) => l.key,
    (x, y) => byText(x.key, y.key),
  );
  return both.map((l) => l.line);
}
