/** A file that cannot be opened as a job, and a mark that could not be saved. */
import type { Fault } from '../../model/types.ts';
import type { Page } from '../base/page.ts';
import type { State } from '../base/state.ts';
import { scrolled } from '../kit/scroll.ts';
import { bold, hanging, type Line, line, span, wrap } from '../kit/text.ts';
import { many } from '../kit/words.ts';

export function drawFaults(state: State): Page {
  const { view } = state;
  if (view.screen !== 'faults') return { left: [], middle: () => [] };
  const { read, file } = view;
  return {
    left: line(bold('This job cannot be read')),
    right: line('faults' in read ? many(read.faults.length, 'fault') : ''),
    middle: (columns, rows) => {
      const lines =
        'faults' in read
          ? read.faults.flatMap((f) => faultLines(f, columns))
          : [...wrap(read.unread.say, columns, { bold: true }), ...wrap(read.unread.fix, columns)];
      return scrolled([[], ...lines], view.top, rows);
    },
    say: wrap(`${file}: nothing in it was changed.`, state.columns),
  };
}

function faultLines(fault: Fault, columns: number): Line[] {
  const place = `${fault.line}:${fault.column}  `;
  const style = fault.severity === 'error' ? { bold: true } : {};
  return [
    ...hanging(line(span(place, style)), fault.say, columns, style),
    ...hanging(line(' '.repeat(place.length)), fault.fix, columns),
    ...fault.excerpt.split('\n').map((l) => line(' '.repeat(place.length), l)),
    [],
  ];
}

export function drawUnsaved(state: State): Page {
  const { view } = state;
  if (view.screen !== 'unsaved') return { left: [], middle: () => [] };
  return {
    left: line(bold('Not saved')),
    middle: (columns) => [
      [],
      ...wrap(view.why.say, columns, { bold: true, colour: 'red' }),
      ...wrap(view.why.fix, columns),
      [],
      ...wrap('The mark is not on disk. The file is as it was.', columns),
      ...wrap('It is kept here, and tried again every few seconds.', columns),
    ],
  };
}
