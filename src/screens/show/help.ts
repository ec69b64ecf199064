/** The keys of the screen underneath, from the table. */
import { GO } from '../base/key.ts';
import { show } from '../base/moves.ts';
import type { Page } from '../base/page.ts';
import { type Open, type Screen, screenOver } from '../base/screen.ts';
import type { State, View } from '../base/state.ts';
import { SIGNS } from '../kit/map.ts';
import { keyName } from '../kit/press.ts';
import { bold, hanging, type Line, line, pad, READ_OUT, width } from '../kit/text.ts';
import { type ShownKey, shownKeys } from './keys.ts';

type KeysView = Extract<View, { screen: 'keys' }>;

interface OnKeys {
  state: State;
  view: KeysView;
  keys: readonly ShownKey[];
}

/** `openOf`: the screen of a state. */
export function listOfKeys(openOf: (state: State) => Open): Screen<KeysView> {
  return screenOver({
    here: (state: State, view: KeysView): OnKeys => ({
      state,
      view,
      keys: shownKeys(openOf({ ...state, view: view.under })),
    }),
    keys: [
      {
        id: 'close',
        presses: [...GO, 'tab'],
        label: 'close',
        help: 'close this list',
        does: ({ state, view }) => show(state, view.under),
      },
    ],
    draw: drawKeys,
  });
}

function drawKeys({ view, keys }: OnKeys): Page {
  return {
    kind: 'page',
    left: line(bold('Keys')),
    middle: (columns) => {
      const legend = view.under.screen === 'piece' ? [[], ...signs()] : [];
      return [...listed(columns), ...legend];
    },
    // Holes are read out in words: there are no signs to explain.
    spoken: () => listed(READ_OUT),
  };

  function listed(columns: number): Line[] {
    const room = Math.max(...keys.map((k) => width(shown(k)))) + 3;
    return keys.flatMap((k): Line[] =>
      hanging(pad(line(bold(shown(k))), room), k.key.help, columns),
    );
  }
}

function shown({ key, presses }: ShownKey): string {
  return key.shown ?? presses.map(keyName).join(', ');
}

/** `( ) empty   [ ] in by fingers`, three to a line. */
function signs(): Line[] {
  const says = [
    ['home', 'untouched'],
    ['out', 'empty'],
    ['in', 'in by fingers'],
    ['tight', 'tight'],
    ['trouble', 'trouble'],
    ['here', 'lit'],
  ] as const;
  const cells = says.map(([name, text]) => {
    const [open, close] = SIGNS[name];
    return pad(line(bold(`${open} ${close}`), ` ${text}`), 20);
  });
  return [line(...cells.slice(0, 3)), line(...cells.slice(3))];
}
