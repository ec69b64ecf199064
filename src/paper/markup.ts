/**
 * Text of a page, put together so that nothing from a file can be anything but text: whatever is set into a template is
 * escaped, unless it came out of a template itself.
 */
import { safe } from '../model/safe.ts';

export class Markup {
  readonly text: string;
  constructor(text: string) {
    this.text = text;
  }
}

export type Part = string | number | Markup | null | false | readonly Part[];

/** HTML or SVG. Null and false are nothing, lists stand one after the other. */
export function m(strings: TemplateStringsArray, ...parts: Part[]): Markup {
  return new Markup(
    strings.map((fixed, i) => fixed + (i < parts.length ? partOf(parts[i] ?? null) : '')).join(''),
  );
}

function partOf(part: Part): string {
  if (part === null || part === false) return '';
  if (part instanceof Markup) return part.text;
  if (typeof part === 'number') return mm(part);
  if (typeof part === 'string') return escaped(part);
  return part.map(partOf).join('');
}

/** A text of a file where running text stands: what it does to the direction of writing ends with it. */
export function t(text: string): Markup {
  return m`<bdi>${text}</bdi>`;
}

/** With a separator between. */
export function joined(parts: readonly Part[], between: Part): Markup {
  return m`${parts.flatMap((part, i) => (i === 0 ? [part] : [between, part]))}`;
}

/** A length as it stands in a page: no more than a hundred thousandth of a mm off, and never in powers of ten. */
function mm(value: number): string {
  if (!Number.isFinite(value)) return '0';
  return `${Number(value.toFixed(5))}`.includes('e') ? '0' : `${Number(value.toFixed(5))}`;
}

const NAMED: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Some scripts are not written right without these two, and on paper they hide nothing. */
const JOINERS = /([\u200c\u200d])/;

function escaped(text: string): string {
  const shown = text.split(JOINERS).map((part, i) => (i % 2 === 1 ? part : safe(part)));
  return shown.join('').replace(/[&<>"']/g, (c) => NAMED[c] ?? c);
}
