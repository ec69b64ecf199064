/** What people type about a tray: `2 S, M` and `4=12.5, 7=3`. */
import { readLength } from '../../bolt/read/length.ts';
import { list } from '../../model/words.ts';
import { isHoleName } from '../names.ts';
import { readItem, UNKNOWN } from '../row.ts';
import { isDash, noFigure, type Typed, type TypedFault, typed } from '../typed.ts';

/** The letter as the file writes it: `s` is S where there is no other; null when there is no such kind. */
function letterOf(word: string, kinds: readonly string[] | null): string | null {
  const letter = readItem(word)?.kind ?? '';
  if (kinds === null) return letter;
  if (kinds.includes(letter)) return letter;
  const alike = kinds.filter((kind) => kind.toLowerCase() === letter.toLowerCase());
  return alike.length === 1 ? (alike[0] ?? null) : null;
}

const NOTHING = /^\s*(?:|-|–|0|none|nothing)\s*$/i;
const COUNT = /^(\d{1,3})(?:[x×*]?$)/i;
const COUNTED = /^(\d{1,3})[x×*]?(\D.*)$/i;

/**
 * What is left in a tray: `2 S, M`, `2S M`, `2 x S and 1 M+clip`, `S S M`; nothing: `` or `none`. A letter without a
 * number is one bolt; repeated ones add up. `kinds` are the letters there are; null takes any.
 */
export function readLeft(
  text: string,
  kinds: readonly string[] | null = null,
): Typed<Map<string, number>> {
  const left = new Map<string, number>();
  const faults: TypedFault[] = [];
  if (NOTHING.test(text)) return typed(left, faults);
  let waiting: { n: number; at: number; word: string } | null = null;
  const noKind = (at: number, word: string) =>
    faults.push({ code: 'no-kind', at, word, say: `${word} of what? Type it as 2 S.` });
  for (const { 0: word, index: at } of text.matchAll(/[^\s,;&]+/g)) {
    if (/^(?:and|x|×)$/i.test(word) && !(kinds ?? []).includes(word)) continue;
    const bare = COUNT.exec(word);
    if (bare) {
      if (waiting) noKind(waiting.at, waiting.word);
      waiting = { n: Number(bare[1]), at, word };
      continue;
    }
    const [, digits = '', rest = word] = COUNTED.exec(word) ?? [];
    const n: number = digits === '' ? (waiting?.n ?? 1) : Number(digits);
    if (digits !== '' && waiting) noKind(waiting.at, waiting.word);
    waiting = null;
    const kind = letterOf(rest, kinds);
    if (kind === null || kind === '' || kind === UNKNOWN) {
      const known = kinds === null ? '' : ` Kinds here: ${list(kinds)}.`;
      faults.push({
        code: 'unknown-kind',
        at,
        word,
        say: `No kind of bolt is called ${rest}.${known}`,
      });
    } else if (n > 0) {
      left.set(kind, (left.get(kind) ?? 0) + n);
    }
  }
  if (waiting) noKind(waiting.at, waiting.word);
  return typed(left, faults);
}

/** A hole and what follows: a name before `=` or `:`, at the start or behind a comma, semicolon or space. */
const HOLE_IS = /(?<=^|[\s,;])([^\s,;=:]+)\s*[=:]\s*/g;

/**
 * Heights of heads by hole, mm: `4=12.5, 7=3`, `4=12,5 7=3 mm`. A hole with `-` is left out. `holes` are the names there
 * are; null takes any.
 */
export function readProud(
  text: string,
  holes: readonly string[] | null = null,
): Typed<Map<string, number>> {
  const heights = new Map<string, number>();
  const faults: TypedFault[] = [];
  const said = new Set<string>();
  const heads = [...text.matchAll(HOLE_IS)];
  const before = text.slice(0, heads[0]?.index ?? text.length);
  if (before.trim() !== '') {
    const at = before.length - before.trimStart().length;
    const word = before.trim();
    faults.push({
      code: 'no-figure',
      at,
      word,
      say: `Type hole and height as 4=12.5, not ${word}.`,
    });
  }
  for (const [i, head] of heads.entries()) {
    const name = head[1] ?? '';
    const at = head.index + head[0].length;
    const figure = text.slice(at, heads[i + 1]?.index).replace(/[\s,;]+$/, '');
    const height = readLength(figure);
    if (!isHoleName(name) || (holes !== null && !holes.includes(name))) {
      faults.push({
        code: 'unknown-hole',
        at: head.index,
        word: name,
        say: `There is no hole ${name} here.`,
      });
    } else if (said.has(name)) {
      faults.push({
        code: 'twice',
        at: head.index,
        word: name,
        say: `Hole ${name} stands there twice.`,
      });
    } else if (height === null && !isDash(figure)) {
      faults.push(noFigure(at, figure, `hole ${name}`));
    } else if (height !== null) {
      heights.set(name, height);
    }
    said.add(name);
  }
  return typed(heights, faults);
}
