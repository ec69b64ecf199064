/** Figures typed for a question to decide that cannot be read as the price, time or chance they stand for. */
import {
  type FigureKey,
  type FigureTexts,
  readAmount,
  readHarm,
} from '../../job/form/typed-figures.ts';
import type { AmountSpec } from '../../model/types.ts';
import { readChance } from '../../trace/weigh/chance.ts';
import { minutesIn } from './input.ts';
import { moneyIn } from './money.ts';

export interface OddFigure {
  figure: FigureKey;
  /** A sentence with the way out. */
  say: string;
}

/** The first of them; null where each is one. An empty text says nothing, and is none. */
export function oddFigure(texts: FigureTexts): OddFigure | null {
  for (const figure of ['now', 'later', 'chance', 'harm'] as const) {
    const text = texts[figure]?.trim() ?? '';
    const say = text === '' ? null : oddIn(figure, text);
    if (say !== null) return { figure, say };
  }
  return null;
}

function oddIn(figure: FigureKey, text: string): string | null {
  if (figure === 'chance') return oddChance(text);
  if (figure !== 'harm') return oddAmount(readAmount(text));
  const harm = readHarm(text);
  return oddChance(harm.chance ?? text) ?? oddAmount(harm);
}

const oddChance = (text: string): string | null =>
  readChance(text) ? null : `${text} is no chance: 1 in 6, or often, now and then, rarely.`;

function oddAmount({ price, takes }: AmountSpec): string | null {
  if (price !== null && moneyIn(price) === null) {
    return `${price} is neither a price nor a time: 12.50, 40 min.`;
  }
  return takes !== null && minutesIn(takes) === null ? `${takes} is no time: 40 min, 3 h.` : null;
}
