/** Cautions and what else is to be read once before a piece comes off or goes back. */

import { type ToRead, toRead } from '../../plan/known/to-read.ts';
import { shouldSaid } from '../../plan/piece/answers.ts';
import { readMark } from '../base/enter.ts';
import { GO } from '../base/key.ts';
import { type At, toStep } from '../base/moves.ts';
import type { Page } from '../base/page.ts';
import { hangingBoth } from '../kit/both.ts';
import { bold, type Line, line, pad, type Style, span } from '../kit/text.ts';
import { inReading } from '../known/in-question.ts';
import { notSo } from '../known/not-so.ts';
import { type OnPiece, onPiece, stepScreen } from './step.ts';

type OnRead = OnPiece<'read'>;

export const readScreen = stepScreen({
  here: onPiece<'read'>,
  keys: [
    {
      id: 'seen',
      presses: GO,
      anew: GO,
      label: 'read, go on',
      help: 'this has been read: go on',
      does: ({ state, key, piece, step }) => {
        const mark = readMark(key, piece.round, step.way);
        return toStep({ ...state, read: [...state.read, mark] }, step.then);
      },
    },
    notSo<OnRead>(({ job, key, step }) => inReading(job, key, step.way)),
  ],
  draw: drawRead,
  mustSee: ({ key, step }) => `${step.way} ${key}`,
});

/** Before it goes back on, what should lie in the tray comes after the cautions. */
function readings({ job, piece }: At, way: 'removal' | 'fitting'): ToRead[] {
  const all = toRead(job, piece.spec, way);
  const should = way === 'fitting' ? shouldSaid(job, piece) : null;
  if (should === null) return all;
  const cautions = all.filter((r) => r.key === 'caution');
  return [
    ...cautions,
    { key: null, what: 'Bolts', texts: [{ text: should, printed: null }] },
    ...all.filter((r) => !cautions.includes(r)),
  ];
}

const LABEL = 10;
const CAUTION: Style = { colour: 'red', bold: true };

function drawRead(here: OnRead): Page {
  const { step } = here;
  const { spec } = here.piece;
  const when = step.way === 'removal' ? 'before it comes off' : 'before it goes back on';
  return {
    kind: 'page',
    left: line(bold(spec.name)),
    right: line(when),
    middle: (columns) => {
      const lines = readings(here, step.way).flatMap((r): Line[] => {
        const style = r.key === 'caution' ? CAUTION : {};
        const label = r.key === 'caution' ? CAUTION : { bold: true };
        return r.texts.flatMap((said, i) => {
          const first = pad(line(span(i === 0 ? r.what : '', label)), LABEL);
          return [
            ...hangingBoth(first, said, columns, style),
            ...(i === r.texts.length - 1 ? [[]] : []),
          ];
        });
      });
      return [[], ...lines];
    },
  };
}
