/**
 * The list as a table that a spreadsheet opens rightly and safely: every cell quoted, lines ended as RFC 4180 says,
 * and no text that a spreadsheet would run as a formula.
 */
import type { Buy } from './list.ts';

const BUY_COLUMNS = [
  'buy',
  'what',
  'count',
  'price',
  'from',
  'for',
  'state',
  'promised',
  'holds',
  'why',
] as const;

/** A head row and a row for each thing, cells as they are. */
export function buyRows(list: readonly Buy[]): string[][] {
  const rows = list.map((buy) => [
    buy.buy,
    buy.what,
    buy.count ?? '',
    buy.price ?? '',
    buy.from ?? '',
    buy.for.join(', '),
    buy.state,
    buy.promised ?? '',
    buy.holds.join(', '),
    buy.why ?? '',
  ]);
  return [[...BUY_COLUMNS], ...rows];
}

const NUMBER = /^[+-]?(?:\d+(?:[.,]\d+)?|[.,]\d+)(?:[eE][+-]?\d+)?$/;
/** Signs that begin a formula in one spreadsheet or another, in full width too, and what a cell could hide them behind. */
const FORMULA =
  /^[\s\u0000-\u001f\u007f\u00a0\u200b-\u200f\u2060\ufeff]*[=+\-@＝＋－＠]|^[\t\r\n]/u;

/** A cell that shows its text: real numbers stay numbers, what could be a formula has an apostrophe before it. */
export function safeCell(text: string): string {
  return FORMULA.test(text) && !NUMBER.test(text) ? `'${text}` : text;
}

/** `raw` leaves out the apostrophes, for programs that read every cell as text. */
export function printCsv(rows: readonly (readonly string[])[], { raw = false } = {}): string {
  const cell = (text: string) => `"${(raw ? text : safeCell(text)).replaceAll('"', '""')}"`;
  return rows.map((row) => `${row.map(cell).join(',')}\r\n`).join('');
}
