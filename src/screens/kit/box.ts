/** The one frame there is: STOP. */
import {
  hanging,
  type Line,
  line,
  pad,
  READ_OUT,
  type Span,
  type Style,
  span,
  wrap,
} from './text.ts';

const LOOK: Style = { colour: 'red', bold: true };
/** Columns of the frame, where the screen has as many. */
const WIDEST = 72;

/** The sentences of a refusal, one by one: each ends in a full stop before a capital, a digit or the end. */
export function sentences(text: string): string[] {
  return text.split(/(?<=[.?!]) +(?=[\p{Lu}\d])/u);
}

/** `marked`: which of several texts is marked; without it no room is left for the sign. */
export function stopBox(texts: readonly string[], columns: number, marked?: number): Line[] {
  if (columns >= READ_OUT)
    return [line('STOP'), ...texts.map((text, i) => line(i === marked && '> ', text))];
  const room = Math.max(10, Math.min(WIDEST, columns - 4) - 6);
  const lines = texts.flatMap((text, i) => {
    if (marked === undefined) return wrap(text, room);
    return hanging(line(i === marked ? '> ' : '  '), text, room);
  });
  const longest = room;
  const edge: Span = span('|', LOOK);
  const head = '+- STOP ';
  return [
    [span(`${head}${'-'.repeat(longest + 6 - head.length - 1)}+`, LOOK)],
    ...lines.map(
      (l): Line => [
        edge,
        span('  '),
        ...pad(
          l.map((s) => ({ ...s, bold: true })),
          longest,
        ),
        span('  '),
        edge,
      ],
    ),
    [span(`+${'-'.repeat(longest + 4)}+`, LOOK)],
  ].map((l) => [span('  '), ...l]);
}
