/** What of a printed torque was not read: what cannot matter is a remark beside the figure, all else is told. */
import { pattern } from '../../model/pattern.ts';
import type { SaidAt } from './one-or-other.ts';
import { smearElsewhere } from './smeared.ts';

/** Words that may hide a figure, a stage or what is done to the thread, and what else a part may hold that is no remark. */
const MATTERS = pattern(
  () =>
    [
      '[\\d½¼¾⅓⅔⅛⅜⅝⅞%°+±<>≤≥?]',
      // Marks of notes.
      '[*†‡§#¶⁰¹²³⁴⁵⁶⁷⁸⁹]',
      'turn|quarter|half|third|degree|tight|torque|loos|slack|back|again|more|further|twice|double|times|repeat',
      'wait|final|angle|until|stretch|max|min|most|least|then|after|before|oil|greas|dry|wet|lub|lock|seal|paste|hot|cold|only',
      'renew|re-?use|discard|\\b(?:used|old)\\b',
      "\\b(?:never|not|don['’]?t|exceed|if|unless|except|flats?|\\w+t(?:een|y))\\b",
      // Of other languages what says that it is turned on, and what is on the thread.
      'dreh|\\bgrad\\b|winkel|viertel|halb|dann|weiter|puis|\\btours?\\b|\\bquart|demi|giro|vuelta|\\bgrados?\\b|\\bgradi\\b',
      'geölt|ölen|\\böl|fett|trocken|huil|graiss|\\bsec\\b|aceit|lubric|engras|\\bseco\\b|asciutt|\\bneue?n?\\b|\\bneuf|nuev|nuov',
      // A letter alone is the mark of a note that stands elsewhere.
      '(?:^|\\s)[a-z]$|(?:^|[\\s(])[a-z]\\)',
    ].join('|'),
  'i',
);

/** Signs that say nothing; any other is the mark of a note, or part of what was not read: `10 N·m*`. */
const NOTHING = /^[\s,;:.()[\]{}"'“”‘’!]*$/;
/** A dash says nothing in front of words; between figures it may make a range of them. */
const DASH = /^[–—-]$/;

function saysNothing(text: string, said: SaidAt): boolean {
  const behind = text.slice(said.at + said.text.length);
  return NOTHING.test(said.text) || (DASH.test(said.text) && !/^\s*[+\d½¼¾]/.test(behind));
}

/** To the end of its part of the text, which ends where a comma or a bracket does; one in front of it ends nothing. */
export function partOf(text: string, at: number): string {
  const left = text.slice(at).replace(/^[\s,;()[\]{}]+/, '');
  const end = left.search(/[,;()[\]{}]/);
  return left.slice(0, end < 0 ? undefined : end).trim();
}

/** What was not read and cannot matter is a remark beside the figure; the rest stays a rest. */
export function withoutRemarks(text: string, rest: readonly SaidAt[], where: string | null) {
  const left: SaidAt[] = [];
  const remarks: string[] = [];
  let end = 0;
  for (const said of rest) {
    if (saysNothing(text, said)) continue;
    const first = partOf(text, said.at);
    // What was not read in one go may go beyond its part.
    const part = said.text.includes(first) ? said.text.trim() : first;
    const matters = MATTERS.test(part) && (/\d/.test(part) || !smearElsewhere(part));
    if (matters || !/\p{L}/u.test(part)) left.push(said);
    else if (said.at >= end) remarks.push(part);
    if (said.at >= end) end = said.at + text.slice(said.at).indexOf(part) + part.length;
  }
  const all = [...(where === null ? [] : [where]), ...remarks];
  return { rest: left, where: all.length === 0 ? null : all.join(', ') };
}

/** What was not read in one go is one rest. */
export function together(text: string, rest: readonly SaidAt[]): SaidAt[] {
  const all: SaidAt[] = [];
  for (const { text: said, at } of rest.toSorted((a, b) => a.at - b.at)) {
    const before = all.at(-1);
    const end = before ? before.at + before.text.length : 0;
    if (before && text.slice(end, at).trim() === '') before.text = text.slice(before.at, at) + said;
    else all.push({ text: said, at });
  }
  return all.map(withoutHalfBrackets);
}

/** A bracket that is not closed in what was not read is no part of it. */
function withoutHalfBrackets({ text, at }: SaidAt): SaidAt {
  const from = /^[([{][^)\]}]*$/.test(text) && text.length > 1 ? 1 : 0;
  return { text: text.slice(from).replace(/^([^([{]+)[)\]}]$/, '$1'), at: at + from };
}
