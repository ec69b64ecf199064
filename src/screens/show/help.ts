/** The keys of the screen underneath, from the table. */

import type { Page } from '../base/page.ts';
import type { State } from '../base/state.ts';
import { SIGNS } from '../kit/map.ts';
import { keyName } from '../kit/press.ts';
import { scrolled } from '../kit/scroll.ts';
import { bold, hanging, type Line, line, pad, width } from '../kit/text.ts';
import { type Shown, shownKeys } from './which.ts';

export function drawKeys(state: State): Page {
  const { view } = state;
  if (view.screen !== 'keys') return { left: [], middle: () => [] };
  const keys = shownKeys({ ...state, view: view.under });
  return {
    left: line(bold('Keys')),
    middle: (columns, rows) => {
      const room = Math.max(...keys.map((k) => width(shown(k)))) + 3;
      const lines = keys.flatMap((k): Line[] =>
        hanging(pad(line(bold(shown(k))), room), k.key.help, columns),
      );
      const legend = view.under.screen === 'piece' ? [[], ...signs()] : [];
      return scrolled([...lines, ...legend], view.top, rows);
    },
  };
}

function shown({ key, presses }: Shown): string {
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
