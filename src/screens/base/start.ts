/** How the screens begin: on a bench, or on one job. */
import { NO_HOURS } from '../../model/hours.ts';
import type { Palette } from '../kit/palettes.ts';
import type { OwnPresses } from '../kit/press.ts';
import type { State, Updated } from './state.ts';

export interface Opening {
  /** A job file, or a folder of them. */
  on: { file: string } | { folder: string };
  columns: number;
  rows: number;
  colour: boolean;
  ascii: boolean;
  /** RFC 3339 with offset. */
  now: string;
  palette?: Palette;
  /** What to try is said on the way. */
  guide?: boolean;
  presses?: OwnPresses;
  /** What an earlier sitting left typed of a new job. */
  begun?: string;
}

export function start({ on, guide = false, begun, ...look }: Opening): Updated {
  const state: State = {
    palette: 'usual',
    presses: {},
    ...look,
    guide: guide ? [] : null,
    bench:
      'folder' in on
        ? { folder: on.folder, jobs: null, ...(begun === undefined ? {} : { begun }) }
        : null,
    open: null,
    earlier: null,
    wrenches: [],
    hour: null,
    hours: NO_HOURS,
    starts: [],
    view: { screen: 'wait' },
    waiting: 'folder' in on ? { for: 'bench' } : { for: 'file', file: on.file },
    ahead: [],
    quiet: null,
    blind: false,
    soon: false,
    last: null,
    far: false,
    mine: [],
    unmarked: null,
    drafts: {},
    read: [],
  };
  return 'folder' in on
    ? { state, effects: [{ do: 'list', folder: on.folder }] }
    : { state, effects: [{ do: 'open', file: on.file }] };
}
