/** What the hand needs, from two metres away: the hole, which bolt, what to set, how many are left. */
import type { Job, PieceNow, RowItem } from '../../model/types.ts';
import { UNKNOWN } from '../../piece/row.ts';
import { sayTakes } from '../../plan/piece/say-piece.ts';
import type { Key } from '../base/key.ts';
import { stay } from '../base/moves.ts';
import type { Page } from '../base/page.ts';
import { farText, sideBySide } from '../kit/far.ts';
import { bold, type Line, line, wrap } from '../kit/text.ts';
import type { OnPiece } from './step.ts';

/** A letter that is a kind of this job is in the hand first. */
export const farKey: Key<OnPiece> = {
  id: 'far',
  presses: ['f', "'"],
  label: ({ state }) => (state.far ? 'the map' : 'far'),
  help: 'large, to be read from two metres: the hole, the bolt, what to set, what is left; or the map again',
  does: ({ state }) => stay({ ...state, far: !state.far }),
};

export interface Far {
  /** Null where no hole is meant yet. */
  hole: string | null;
  item: RowItem | null;
  /** What to set, as large as it fits. */
  figure: string | null;
  left: number;
  /** One word: `to go`, `empty`. */
  leftSaid: string;
}

/** `rest`: the page as it is with the map, whose words stay under the large ones. */
export function farPage(
  { job, piece }: { job: Job; piece: PieceNow },
  { hole, item, figure, left, leftSaid }: Far,
  rest: Pick<Page, 'right' | 'under' | 'say' | 'most'>,
): Page {
  const kind = item && item.kind !== UNKNOWN ? item.kind : '?';
  return {
    kind: 'plain',
    left: line(bold(piece.spec.name)),
    spoken: () => [
      line(`Hole ${hole ?? '-'}: ${item === null ? kind : sayTakes(job, item)}`),
      line(figure ?? ''),
      line(`${left} ${leftSaid}`),
    ],
    middle: (columns, rows) => {
      // The hole and the bolt go before how many are left.
      const count = sideBySide(
        [farText(`${left}`, columns), [[], [], [], [], line(leftSaid)]],
        COUNT,
      );
      const first = sideBySide(
        [farText(hole ?? '-', columns), farText(kind, columns), figure === null ? [] : count],
        columns,
      );
      const second = figure === null ? count : farText(figure, columns);
      const takes = item === null ? [] : wrap(sayTakes(job, item), columns, { bold: true });
      const all: Line[] = [...first, [], ...second, [], ...takes];
      // What does not fit is counted, and moved, as everywhere.
      return all.length <= rows ? all : all.filter((l) => l.length > 0);
    },
    ...rest,
  };
}

/** Columns of the count with its word. */
const COUNT = 30;
