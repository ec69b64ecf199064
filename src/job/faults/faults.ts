/** A fault where it was found, and the words that fill its text. */
import { safeLine } from '../../model/safe.ts';
import type { FAULTS } from './table.ts';

export { printFault } from './print.ts';

export type Code = keyof typeof FAULTS;

/** What fills the braces of the table; made when the fault is shown, if it costs something. */
export type Data = Readonly<Record<string, string | number>>;
export type LazyData = Data | (() => Data);

/** A fault where it was found: its place as an offset into the text of the file. */
export interface Found {
  code: Code;
  at: number;
  data: LazyData;
  /** What fills braces with the number of another line: offsets in that line. */
  lines?: Readonly<Record<string, number>>;
}

/** Collects faults while a file is read. */
export type Report = (code: Code, at: number, data?: LazyData, lines?: Found['lines']) => void;

/** A list of faults, and what adds to it. */
export function collector(): { found: Found[]; report: Report } {
  const found: Found[] = [];
  const report: Report = (code, at, data = {}, lines) => {
    found.push(lines ? { code, at, data, lines } : { code, at, data });
  };
  return { found, report };
}

/** A text of the table with its braces filled; what comes from the file is made harmless and kept short. */
export function fillText(text: string, data: Data): string {
  return text.replace(/\{(\w+)\}/g, (_, key: string) => {
    const words = short(String(data[key] ?? ''));
    return words === '' && key === 'value' ? '""' : words;
  });
}

const LONGEST = 160;

function short(text: string): string {
  const line = safeLine(text);
  return line.length > LONGEST ? `${line.slice(0, LONGEST - 1)}…` : line;
}
