/** The keys of the screen underneath, from the table. */
import { keyName, keysOf } from './foot.ts';
import type { Key } from './keys.ts';
import type { Page } from './page.ts';
import { SIGNS } from './parts/map.ts';
import { scrolled } from './parts/scroll.ts';
import { bold, hanging, type Line, line, pad, span, width } from './parts/text.ts';
import type { State } from './state.ts';

export function drawKeys(state: State): Page {
  const { view } = state;
  if (view.screen !== 'keys') return { left: [], middle: () => [] };
  const keys = keysOf({ ...state, view: view.under });
  return {
    left: line(bold('Keys')),
    middle: (columns, rows) => {
      const room = Math.max(...keys.map((k) => width(shown(k)))) + 3;
      const lines = keys.flatMap((k): Line[] =>
        hanging(pad(line(bold(shown(k))), room), k.help, columns),
      );
      const legend = view.under.screen === 'piece' ? [[], signs()] : [];
      return scrolled([...lines, ...legend], view.top, rows);
    },
  };
}

function shown(key: Key): string {
  return key.shown ?? key.presses.map(keyName).join(', ');
}

/** `( ) empty   [ ] in by fingers`. */
function signs(): Line {
  const says = {
    home: 'untouched',
    out: 'empty',
    in: 'in by fingers',
    tight: 'tight',
    trouble: 'trouble',
    here: 'here',
  } as const;
  return line(
    ...Object.entries(SIGNS).flatMap(([name, [open, close]]) => [
      span(`${open} ${close}`, { bold: true }),
      ` ${says[name as keyof typeof says]}   `,
    ]),
  );
}
