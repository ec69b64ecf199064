/** What is played on a terminal: types only. */
import type { Frame } from './first-frame.ts';
import type { Hands, Loop, Play } from './loop.ts';
import type { ViewProps } from './loop-view.tsx';

export interface Farewell {
  say: string;
  unsaved: boolean;
}

/** All that is played on a terminal. */
export interface Show<S> extends Play<S> {
  /** What is drawn of a state, as Ink draws it; loads Ink. */
  app(): Promise<ViewProps<S>['App']>;
  /** The same for the first frame, without Ink. */
  frame(state: S): Frame;
  hands: Omit<Hands, 'ring' | 'soon'>;
  /** Before each piece of input; watches the disk while the loop runs. Answers how to stop. */
  attend(loop: Loop<S>): { pressed(): void; stop(): void };
  /** Whether Ctrl-Z is a key of what is shown now; elsewhere it stops the program as everywhere. */
  takesCtrlZ(state: S): boolean;
  /** Whether something is to be asked before Ctrl-C ends it: then it is a key like others. */
  asksFirst(state: S): boolean;
  /** What stays on the terminal afterwards; puts away first what would be lost. `unsaved`: a mark was given up by leaving. */
  farewell(state: S): Farewell | Promise<Farewell>;
}
