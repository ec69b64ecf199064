/** The loop's end at Ink: hands keys and pastes in, draws the state, and can hand the terminal over. */
import { type Instance, type RenderOptions, render, useApp, useInput, usePaste } from 'ink';
import { type ComponentType, useEffect, useSyncExternalStore } from 'react';
import type { Happening } from '../base/state.ts';
import type { Press } from '../kit/press.ts';
import type { HeldPress } from './held.ts';
import { presses } from './input.ts';
import type { Loop } from './loop.ts';

/** Leaves the terminal as it was found; answers how to take it again. */
export type HandOver = () => Promise<() => Promise<void>>;

export interface ViewProps<S> {
  loop: Loop<S>;
  App: ComponentType<{ state: S }>;
  /** What to do for a press that is not for the loop; null: it is. */
  own(press: Press): (() => void) | null;
  /** What the time since the press before this one says. */
  told(press: Press): HeldPress;
  /** Says once how to hand the terminal over. */
  onReady(handOver: HandOver): void;
}

function View<S>({ loop, App, own, told, onReady }: ViewProps<S>) {
  const state = useSyncExternalStore(loop.subscribe, loop.state);
  const { suspendTerminal } = useApp();
  useEffect(() => {
    onReady(async () => (await suspendTerminal()).resume);
  }, [suspendTerminal, onReady]);
  useInput((input, key) => {
    let forLoop: Happening[] = [];
    for (const press of presses(input, key)) {
      const act = own(press);
      if (act === null) {
        forLoop.push({ on: 'press', press, ...told(press) });
        continue;
      }
      loop.happen(...forLoop);
      forLoop = [];
      act();
    }
    loop.happen(...forLoop);
  });
  usePaste((text) => loop.happen({ on: 'paste', text }));
  return <App state={state} />;
}

/** Draws it until it is unmounted. */
export function mount<S>(props: ViewProps<S>, options: RenderOptions): Instance {
  return render(<View {...props} />, options);
}
