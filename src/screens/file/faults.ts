/** A file that cannot be opened as a job, and a mark that could not be saved. */
import type { Fault } from '../../model/types.ts';
import { toBench } from '../base/from-file.ts';
import { GO } from '../base/key.ts';
import { requestMark } from '../base/moves.ts';
import type { Page } from '../base/page.ts';
import { screen, screenOver } from '../base/screen.ts';
import type { State, View } from '../base/state.ts';
import { bold, hanging, type Line, line, span, wrap } from '../kit/text.ts';
import { many } from '../kit/words.ts';

interface On<V> {
  state: State;
  view: V;
}
type FaultsView = Extract<View, { screen: 'faults' }>;
type UnsavedView = Extract<View, { screen: 'unsaved' }>;

export const faultsScreen = screen({
  here: (state: State, view: FaultsView): On<FaultsView> => ({ state, view }),
  keys: [
    {
      id: 'again',
      presses: GO,
      label: 'read it again',
      help: 'read the file again, once it is mended',
      does: ({ state, view: { file } }) => ({
        state: { ...state, waiting: { for: 'file', file } },
        effects: [{ do: 'open', file }],
      }),
    },
  ],
  draw: drawFaults,
  back: toBench,
});

function drawFaults({ state, view: { read, file } }: On<FaultsView>): Page {
  return {
    kind: 'page',
    left: line(bold('This job cannot be read')),
    right: line('faults' in read ? many(read.faults.length, 'fault') : ''),
    middle: (columns) => [
      [],
      ...('faults' in read
        ? read.faults.flatMap((f) => faultLines(f, columns))
        : [...wrap(read.unread.say, columns, { bold: true }), ...wrap(read.unread.fix, columns)]),
    ],
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

export const unsavedScreen = screenOver({
  here: (state: State, view: UnsavedView): On<UnsavedView> => ({ state, view }),
  keys: [
    {
      id: 'retry',
      presses: GO,
      label: 'save it again',
      help: 'try to save this mark again',
      does: ({ state, view }) => requestMark({ ...state, view: view.under }, view.wish),
    },
  ],
  draw: drawUnsaved,
  called: { back: 'give it up' },
});

function drawUnsaved({ view: { why } }: On<UnsavedView>): Page {
  return {
    kind: 'plain',
    left: line(bold('Not saved')),
    middle: (columns) => [
      [],
      ...wrap(why.say, columns, { bold: true, colour: 'red' }),
      ...wrap(why.fix, columns),
      [],
      ...wrap('The mark is not on disk. The file is as it was.', columns),
      ...wrap('It is kept here, and tried again every few seconds.', columns),
    ],
  };
}
