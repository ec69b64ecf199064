/** Texts of a key as a job file spells them: one, or a list of them; and a picture of several lines. */
import { isSeq, type Node } from 'yaml';
import { oneLine } from '../../model/safe.ts';
import type { Writable } from '../../model/types.ts';
import { quote } from '../diary/entry.ts';
import { holesIn } from '../truth/figures.ts';
import { plainOf, scalarText, type Value, type YamlStyle } from './doc.ts';
import { wordsOf } from './row.ts';

/** The texts of a key that takes one or several, as the reader takes them; null when there is something else. */
export function textsOfNode(value: Value | undefined): string[] | null {
  if (value === undefined || value === '') return [];
  if (typeof value === 'string') return [oneLine(value).trim()];
  if (!Array.isArray(value) || !value.every((v) => typeof v === 'string')) return null;
  return value.map((v) => oneLine(v).trim());
}

/** The same texts, in any spelling. */
export function sameTexts(a: readonly string[] | null, b: readonly string[] | null): boolean {
  return a !== null && b !== null && a.length === b.length && a.every((text, i) => text === b[i]);
}

/** The one text of a key in the spelling in which it is compared; null when nothing stands there. */
export function oneText(key: Writable, value: Value | undefined): string | null {
  if (key === 'sequence') {
    const all = textsOfNode(value);
    return all === null || all.length === 0 ? null : holesIn(all.join(' ')).join(' ');
  }
  if (key === 'bolts') return (value === undefined ? null : wordsOf(value)?.join(' ')) || null;
  if (typeof value !== 'string' || value === '') return null;
  if (key !== 'map') return oneLine(value).trim();
  return picture(value);
}

/** Lines of words, whatever stands between the words. */
function picture(text: string): string {
  const lines = text.split(/\r\n|\n|\r/).map((line) => line.trim().replace(/\s+/g, ' '));
  return lines.filter((line) => line !== '').join('\n');
}

/** A text on one line; of several lines, in double quotes. */
export function spell(text: string, into: YamlStyle): string {
  return text.includes('\n') ? quote(text) : scalarText(text, into);
}

/** The items of a list, where all are texts on their own. */
export function itemsOf(node: Node): Node[] {
  return isSeq(node) ? (node.items as Node[]) : [];
}

export function textOfNode(node: Node | undefined): string | null {
  const [text, ...more] = node ? (textsOfNode(plainOf(node)) ?? []) : [];
  return more.length > 0 ? null : (text ?? null);
}
