/** The figures of a question to decide as one line: `now 12.50, 40 min; later 30, 3 h; chance 1 in 6; harm 1 in 20, 60`. */
import { oneLine } from '../../model/safe.ts';
import type { AmountSpec, WeighSpec } from '../../model/types.ts';

export const FIGURES = ['now', 'later', 'chance', 'harm'] as const;
export type FigureKey = (typeof FIGURES)[number];

/** Each as a text of the file; absent where nothing is said. */
export type FigureTexts = Partial<Record<FigureKey, string>>;

const TAKES =
  /^(?:about\s+)?\d+(?:[.,]\d+)?\s*(?:s|min(?:utes?)?|h(?:ours?)?|d(?:ays?)?)(?:\s*\d+\s*min(?:utes?)?)?$/i;
const CHANCE = /\b(?:in|of|over|times?|often|rarely|now and then)\b|%|\d\s*\/\s*\d/i;
const PARTS = /\s*[,;]\s+|\s+and\s+(?=\d)/;

/** `12.50, 40 min`: a time is what it takes, anything else its price. */
export function readAmount(text: string): AmountSpec {
  const parts = oneLine(text).trim().split(PARTS);
  const takes = parts.find((part) => TAKES.test(part)) ?? null;
  const price = parts.filter((part) => part !== takes && part !== '').join(', ');
  return { price: price === '' ? null : price, takes };
}

/** `1 in 20, 60, 2 h`: the chance, and what putting it right costs. */
export function readHarm(text: string): NonNullable<WeighSpec['harm']> {
  const parts = oneLine(text).trim().split(PARTS);
  const chance = parts.find((part) => CHANCE.test(part)) ?? null;
  const rest = parts.filter((part) => part !== chance);
  // Alone and no chance, it is one that was not read.
  if (chance === null && parts.length === 1)
    return { chance: parts[0] ?? null, price: null, takes: null };
  return { chance, ...readAmount(rest.join(', ')) };
}

const amountText = ({ price, takes }: AmountSpec): string =>
  [price, takes].filter((part) => part !== null).join(', ');

export function figureTexts(weigh: WeighSpec | undefined): FigureTexts {
  if (!weigh) return {};
  const { now, later, chance, harm } = weigh;
  const harmed = harm && [harm.chance, amountText(harm)].filter((t) => t).join(', ');
  const all = {
    now: now && amountText(now),
    later: later && amountText(later),
    chance,
    harm: harmed,
  };
  return Object.fromEntries(Object.entries(all).filter(([, text]) => text !== null && text !== ''));
}

/** In one line, to be typed over. */
export function figuresLine(texts: FigureTexts): string {
  return FIGURES.flatMap((key) => (texts[key] === undefined ? [] : [`${key} ${texts[key]}`])).join(
    '; ',
  );
}

/** What stands between semicolons without one of the words is the chance. */
export function readFigures(line: string): FigureTexts {
  const texts: FigureTexts = {};
  for (const part of oneLine(line).split(';')) {
    const said = part.trim();
    const [, word = '', rest = ''] = /^(now|later|chance|harm):?\s+(.+)$/i.exec(said) ?? [];
    const key = FIGURES.find((one) => one === word.toLowerCase());
    if (key) texts[key] = rest.trim();
    else if (said !== '') texts.chance = said;
  }
  return texts;
}
