/** The holes of a piece as they stand: in letters, or as a picture. */
import { resolve } from 'node:path';
import { writePage } from '../../paper/desk/write-page.ts';
import { mapFile } from '../../paper/map-picture.ts';
import { belongsSaid } from '../../paper/said.ts';
import { LOOKS, SHAPES, shapeOf } from '../../piece/looks.ts';
import { layout } from '../../piece/map.ts';
import { type Answer, answer, type Call, misuse, optionText, unsaved } from '../base/command.ts';
import { openPiece } from '../base/open-job.ts';
import { textMap } from '../base/text-map.ts';

export function run(call: Call): Answer {
  const opened = openPiece(call);
  if ('answer' in opened) return opened.answer;
  const { key, piece } = opened;
  const svg = mapFile(piece);
  if (svg === null) {
    const say = `${piece.spec.name} has no bolts: there is nothing to draw.`;
    return {
      exit: 1,
      json: { ok: false, refused: { code: 'no-bolts', say } },
      text: '',
      error: say,
    };
  }
  const holes = piece.holes.map((h) => ({
    hole: h.name,
    state: shapeOf(h),
    kind: belongsSaid(h),
    trouble: h.trouble,
  }));
  const out = optionText(call, 'out');
  if (out !== undefined && call.options.svg !== true) {
    return misuse('usage', '-o writes the picture: map FILE PIECE --svg -o FILE');
  }
  if (call.options.svg !== true) return answer({ piece: key, holes }, inLetters());
  if (out === undefined || out === '-') return answer({ piece: key, holes, svg }, svg.trimEnd());
  const to = resolve(call.world.folder, out);
  const written = writePage(to, svg, call.world.id());
  if (!written.ok) return unsaved(written);
  return answer({ piece: key, holes, svg, file: to, changed: true }, to);

  function inLetters(): string {
    if (!piece) return '';
    const state = new Map(piece.holes.map((h) => [h.name, h]));
    const label = (name: string) => {
      const hole = state.get(name);
      if (!hole) return name;
      const [before, behind] = LOOKS[shapeOf(hole)].signs;
      return `${before}${name}${behind}${belongsSaid(hole) ?? ''}`;
    };
    const names = piece.holes.map((h) => h.name);
    const there = SHAPES.filter((s) => piece.holes.some((h) => shapeOf(h) === s));
    const key = there.map((s) => `${LOOKS[s].signs.join(' ')} ${LOOKS[s].say}`).join('   ');
    return [...textMap(layout(piece.spec, names), label), '', key].join('\n');
  }
}
