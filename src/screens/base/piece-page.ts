/** What the screens of a piece have in common: its name, its holes in the middle. */
import type { HoleNow, PieceNow } from '../../model/types.ts';
import { LOOKS, shapeOf } from '../../piece/looks.ts';
import { layoutOf } from '../../plan/piece/piece-now.ts';
import { drawMap, type HoleToHole, type Mark } from '../kit/map.ts';
import { bold, type Line, line } from '../kit/text.ts';
import type { Page } from './page.ts';

/** How a hole is drawn in this step, where that is not by its state alone. */
export type Marking = (hole: HoleNow) => Partial<Omit<Mark, 'name'>>;

/** `4: M clip, in, by fingers; here`. */
function spokenHole({ name, shape, label, here, lit, said: stands }: Mark): Line {
  const said = [label, stands ?? LOOKS[shape].say].filter((text) => text !== '').join(', ');
  const more = [here ? 'here' : '', lit ? 'takes what is in your hand' : ''];
  return line(`${name}: ${[said, ...more].filter((text) => text !== '').join('; ')}`);
}

export function piecePage(
  piece: PieceNow,
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
