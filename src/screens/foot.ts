/** The keys of this screen, from the table: the line at the foot and the names of keys. */
import { KEYS, type Key, type Place } from './keys.ts';
import { type Line, line, span, width } from './parts/text.ts';
import type { Press, State } from './state.ts';

const NAMES: Readonly<Record<Press, string>> = {
  space: 'Space',
  enter: 'Enter',
  backspace: 'Backspace',
  escape: 'Esc',
  tab: 'Tab',
  up: 'Up',
  down: 'Down',
  left: 'Left',
  right: 'Right',
  home: 'Home',
  end: 'End',
  delete: 'Delete',
};

export function keyName(press: Press): string {
  return NAMES[press] ?? press.replace(/^ctrl-(.*)/, (_, k: string) => `Ctrl-${k.toUpperCase()}`);
}

export function placeOf(state: State): Place {
  const { view } = state;
  return view.screen === 'piece' ? view.step.step : view.screen;
}

/** The rows of the table that hold on this screen. */
export function keysOf(state: State): Key[] {
  const place = placeOf(state);
  const all: readonly Key[] = KEYS;
  return all.filter((k) => k.places.includes(place) && (k.holds?.(state) ?? true));
}

/** How a key is called in this moment, for a sentence: `Space`. Empty where no such key holds. */
export function nameOf(state: State, id: Key['id']): string {
  const press = keysOf(state).find((k) => k.id === id)?.presses[0];
  return press === undefined ? '' : keyName(press);
}

interface Hint {
  key: string;
  label: string;
}

const GAP = 3;

/** As many keys as fit, the least important left out first; the list of keys is always named. */
export function foot(state: State, columns: number): Line {
  const hints = keysOf(state).flatMap((k): (Hint & { id: string })[] => {
    const label = typeof k.label === 'string' ? k.label : k.label(state);
    const press = k.presses[0];
    return label === '' || press === undefined ? [] : [{ key: keyName(press), label, id: k.id }];
  });
  const last = hints.filter((h) => h.id === 'keys' || h.id === 'keys-typing');
  const rest = hints.filter((h) => !last.includes(h));
  while (rest.length > 0 && width(drawn([...rest, ...last])) > columns) rest.pop();
  return drawn([...rest, ...last]);
}

function drawn(hints: readonly Hint[]): Line {
  return line(
    ...hints.flatMap((h, i) => [
      i > 0 && ' '.repeat(GAP),
      span(h.key, { bold: true }),
      ` ${h.label}`,
    ]),
  );
}
