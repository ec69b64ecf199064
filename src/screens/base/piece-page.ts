/** What the screens of a piece have in common: its name, its holes in the middle. */
import type { HoleNow, PieceNow } from '../../model/types.ts';
import { LOOKS, shapeOf } from '../../piece/looks.ts';
import { layoutOf } from '../../plan/piece/piece-now.ts';
import { drawMap, type HoleToHole, type Mark } from '../kit/map.ts';
import { bold, type Line, line } from '../kit/text.ts';
import { sayItem } from '../kit/words.ts';
import type { Page } from './page.ts';
import type { PieceView, State } from './state.ts';

/** How a hole is drawn in this step, where that is not by its state alone. */
export type Marking = (hole: HoleNow) => Partial<Omit<Mark, 'name'>>;

/** Why a hole is lit, where nothing else is said of it. */
export const FITS_HAND = 'takes what is in your hand';

/** `4: M clip, in, by fingers; here`. */
function spokenHole({ name, shape, label, here, lit, litSaid, said: stands }: Mark): Line {
  const said = [label, stands ?? LOOKS[shape].say].filter((text) => text !== '').join(', ');
  const more = [here ? 'here' : '', lit ? (litSaid ?? FITS_HAND) : ''];
  return line(`${name}: ${[said, ...more].filter((text) => text !== '').join('; ')}`);
}

/** What is known to belong there; else room for a letter. */
function roomOf({ claim }: HoleNow): readonly [string, string] {
  return claim ? [sayItem(claim), claim.kind] : [' ', ' '];
}

/** The holes of a piece stand where they stood when one came to it, whatever is said of them since. */
export function steadyHoles(state: State): State {
  const { view, open } = state;
  const piece = view.screen === 'piece' ? open?.job.pieces.get(view.piece) : undefined;
  if (view.screen !== 'piece' || piece === undefined || piece.holes.length === 0) return state;
  const { room } = view;
  if (room !== undefined && piece.holes.every(({ name }) => room[name] !== undefined)) return state;
  return {
    ...state,
    view: { ...view, room: Object.fromEntries(piece.holes.map((h) => [h.name, roomOf(h)])) },
  };
}

export function piecePage(
  { piece, view: { room } }: { piece: PieceNow; view: PieceView },
  marking: Marking,
  rest: Pick<Page, 'right' | 'under' | 'say' | 'most'> & { kind?: 'page' },
  way: HoleToHole | null = null,
): Page {
  const marks = piece.holes.map((hole): Mark => {
    const how = marking(hole);
    const text = how.label ?? '';
    return {
      name: hole.name,
      shape: shapeOf(hole),
      here: false,
      lit: false,
      label: text,
      short: how.short ?? text,
      room: room?.[hole.name] ?? roomOf(hole),
      ...how,
    };
  });
  return {
    kind: 'plain',
    left: line(bold(piece.spec.name)),
    middle: (columns, rows): readonly Line[] =>
      marks.length === 0 ? [] : drawMap(layoutOf(piece), marks, columns, rows, way),
    spoken: () => marks.map(spokenHole),
    ...rest,
  };
}
