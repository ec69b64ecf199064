/** A file that cannot be opened as a job, and a mark that could not be saved. */
import type { Fault } from '../../model/types.ts';
import { sayWish } from '../../plan/say-wish.ts';
import { LEFT, toBench } from '../base/from-file.ts';
import { ENTER, GO } from '../base/key.ts';
import { requestMark, show } from '../base/moves.ts';
import type { Page } from '../base/page.ts';
import { screen, screenOver } from '../base/screen.ts';
import type { State, Updated, View } from '../base/state.ts';
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
      holds: ({ view }) => view.why.code !== LEFT.code,
      does: saveNow,
    },
    {
      id: 'save-left',
      presses: ENTER,
      label: 'save it now',
      help: 'save the mark that was left unsaved',
      holds: ({ view }) => view.why.code === LEFT.code,
      does: saveNow,
    },
  ],
  draw: drawUnsaved,
  called: {
    back: 'give it up',
    quit: 'leave',
    insteadOf: {
      back: { id: 'give-up', help: 'give this mark up: it is not made' },
      quit: { id: 'quit-unsaved', help: 'leave without this mark; it is asked once more' },
      leave: { id: 'leave-unsaved', help: 'leave without this mark; it is asked once more' },
    },
  },
  asks: ({ state, view }) => (view.leaving ? null : show(state, { ...view, leaving: true })),
});

function saveNow({ state, view }: On<UnsavedView>): Updated {
  return requestMark({ ...state, view: view.under }, view.wish);
}

function drawUnsaved({ state, view }: On<UnsavedView>): Page {
  const { wish, why, leaving } = view;
  const job = state.open?.job;
  const mark = job ? sayWish(job, wish, state.now) : null;
  const waits =
    why.code === LEFT.code
      ? 'Nothing was changed in the file.'
      : 'The file is as it was. The mark is kept here, and tried again every few seconds.';
  const away =
    'Leave without it? Then it is not made. It is kept in your own folder, and asked about when this job is opened here again.';
  return {
    kind: 'plain',
    left: line(bold('Not saved')),
    middle: (columns) => [
      [],
      ...wrap(mark ?? 'It is so already.', columns, { bold: true }),
      [],
      ...wrap(why.say, columns, { bold: true, colour: 'red' }),
      ...wrap(why.fix, columns),
      [],
      ...wrap(leaving ? away : waits, columns, { bold: leaving === true }),
    ],
  };
}
