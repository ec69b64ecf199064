/** Sentences in which what is printed and not so is struck. */
import { cutAtPrinted, type Words } from '../../job/truth/said.ts';
import { flow } from '../kit/both.ts';
import { type Line, type Style, span } from '../kit/text.ts';

/** A sentence of the plan, wrapped; what it says of print that is not so is struck in it. */
export function wrapStruck(words: Words, columns: number, style: Style = {}): Line[] {
  const spans = cutAtPrinted(words).map(({ text, struck }) =>
    span(text, struck ? { ...style, struck: true } : style),
  );
  return flow(spans, columns);
}
