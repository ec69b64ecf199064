/** What the words of a piece mean for the order of its bolts and for its passes. */
import { oneOf } from '../model/one-of.ts';
import { isOrdered } from '../model/states/cares.ts';
import { CARE_WORDS, type Care, type Kind, type PieceSpec } from '../model/types.ts';

/** The first that the file says of those that go by the maker's order. */
export function orderCare({ care }: Pick<PieceSpec, 'care'>): Care | null {
  return CARE_WORDS.find((word) => isOrdered(word) && care?.includes(word)) ?? null;
}

/** Pieces that are no ring, as the trade calls them. */
const LONG = oneOf(
  '(?:cylinder )?heads?|sumps?|(?:oil )?pans?|(?:rocker|cam(?:shaft)?|valve|tappet|head) (?:covers?|boxes|box)|manifolds?|inlets?|intakes?|rails?|ladders?|bed ?plates?|crank ?cases?|case hal(?:f|ves)|gear ?box(?:es)?',
  'i',
);

type Named = Pick<PieceSpec, 'key' | 'name'>;

function nameOf({ key, name }: Named): string {
  return `${key.replaceAll('-', ' ')} ; ${name}`;
}

/** Why it matters where the holes of a piece are, in a phrase: its care, or a shape that is no ring; null: it does not. */
export function shapeMatters(spec: Named & Pick<PieceSpec, 'care'>): string | null {
  const said = spec.care?.find((c) => c !== 'none');
  if (said !== undefined) return `care: ${said}`;
  return LONG.test(nameOf(spec)) ? 'such pieces are long' : null;
}

const GASKET = /\bgaskets?\b/i;
const NONE = /\b(?:no|not|never|without)\b[^,;]*$/i;

/** The words of its joint name a gasket, and do not rule one out. */
export function hasGasket({ joint }: Pick<PieceSpec, 'joint'>): boolean {
  return joint
    .flatMap(({ text }) => text.split(/[,;]/))
    .some((text) => {
      const found = GASKET.exec(text);
      return found !== null && !NONE.test(text.slice(0, found.index));
    });
}

/** What is turned by itself, whatever is beside it: a plug, an axle. */
const ALONE =
  /\b(?:plugs?|axles?|(?:wheel )?spindles?|bleed(?:er)?s?(?: (?:screws?|nipples?|valves?))?)(?: (?:nuts?|bolts?))?$/i;

/** A single bolt, plugs or an axle: nothing is pulled down evenly, so nothing is gone round. `count`: bolts in all. */
export function isAlone(
  { key, name, row }: Named & Pick<PieceSpec, 'row'>,
  kinds: ReadonlyMap<string, Kind>,
  count: number,
): boolean {
  if (count === 1 || ALONE.test(key.replaceAll('-', ' ')) || ALONE.test(name)) return true;
  const texts = (row ?? []).map((item) => kinds.get(item.kind)?.text ?? '');
  return texts.length > 0 && texts.every((text) => ALONE_KIND.test(text));
}

const ALONE_KIND = oneOf('plugs?|axles?|spindles?|bleeders?|banjos?', 'i');
