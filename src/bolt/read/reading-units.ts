/** Units that readings and limits are in, by the names that stand on meters and in manuals. */
import { pattern } from '../../model/pattern.ts';
import { FACTORS, unitOf } from './unit-names.ts';

/** What a unit measures, its worth in one common unit, and where its nought lies. */
export interface Unit {
  of: string;
  factor: number;
  nought: number;
}

/** Electrical, pressure, heat and what else a bench measures; SI prefixes and definitions (BIPM, SI brochure). */
const MORE: readonly [spelled: string, of: string, factor: number, nought?: number][] = [
  ['ohms?|Ω|Ω', 'resistance', 1],
  // Of milli and mega the one letter says which, however the rest of the word is written.
  ['m-?(?:[Oo][Hh][Mm][Ss]?|Ω|Ω)', 'resistance', 1e-3],
  ['M-?(?:[Oo][Hh][Mm][Ss]?|Ω|Ω)', 'resistance', 1e6],
  ['milli-?(?:ohms?|Ω|Ω)', 'resistance', 1e-3],
  ['mega?-?(?:ohms?|Ω|Ω)|meg', 'resistance', 1e6],
  // As a meter shows it.
  ['k(?:ilo)?-?(?:ohms?|Ω|Ω)?', 'resistance', 1e3],
  ['M', 'resistance', 1e6],
  ['V|volts?', 'voltage', 1],
  ['mV|millivolts?', 'voltage', 1e-3],
  ['kV|kilovolts?', 'voltage', 1e3],
  ['A|amps?|amperes?', 'current', 1],
  ['mA|milliamps?', 'current', 1e-3],
  ['Ah|amp(?:ere)?[- ]?hours?', 'charge', 1],
  ['mAh', 'charge', 1e-3],
  ['W|watts?', 'power', 1],
  ['kW', 'power', 1e3],
  ['µF|uF', 'capacity', 1e-6],
  ['nF', 'capacity', 1e-9],
  ['Hz|hertz', 'frequency', 1],
  ['rpm|(?:r|U|tr)\\/min|1\\/min|min-1', 'speed of turning', 1],
  ['hPa|mbar', 'stress', 1e-4],
  ['Pa', 'stress', 1e-6],
  ['inHg|in\\.? ?Hg', 'stress', 0.003386389],
  ['mmHg|mm ?Hg', 'stress', 0.000133322387415],
  ['k[gp]\\/cm(?:²|2)', 'stress', 0.0980665],
  ['atm', 'stress', 0.101325],
  ['lbf?s?\\/(?:in(?:²|2)|sq\\.? ?in)', 'stress', 0.006894757293168],
  ['µm|um|microns?', 'length', 1e-3],
  ['thou|mils?', 'length', 0.0254],
  ['°? ?C|deg(?:rees?)?\\.? ?C(?:elsius)?', 'heat', 1, 273.15],
  ['°? ?F|deg(?:rees?)?\\.? ?F(?:ahrenheit)?', 'heat', 5 / 9, 459.67 * (5 / 9)],
  ['ml|cc|cm(?:³|3)', 'volume', 1],
  ['l|litres?|liters?', 'volume', 1000],
  ['qt|quarts?', 'volume', 946.352946],
  ['g|grams?', 'mass', 1],
  ['kg', 'mass', 1000],
  ['oz', 'mass', 28.349523125],
  ['lbs?', 'mass', 453.59237],
  ['%|per ?cent', 'share', 1],
  ['s|sec(?:onds?)?', 'time', 1],
  ['min(?:utes?)?', 'time', 60],
  ['h|hours?', 'time', 3600],
  ['turns?', 'angle', 360],
];
/** Units that a gauge or a meter may show for another of the same kind. */
export const ON_METERS = (
  'ohm kohm Mohm mohm V mV kV A mA Ah mAh W kW µF nF bar psi kPa MPa mbar inHg mmHg kgf/cm² ' +
  'mm cm in µm thou ml l g kg s min h N·m N·cm kgf·m lbf·ft lbf·in'
).split(' ');

const TABLE = MORE.map(([spelled, of, factor, nought = 0]) => ({
  // A milliohm and a megohm differ in one letter's height.
  exact: pattern(() => `^(?:${spelled})$`),
  loose: pattern(() => `^(?:${spelled})$`, 'i'),
  unit: { of, factor, nought },
}));

export function unitNamed(text: string): Unit | null {
  const said = text.trim();
  const found =
    TABLE.find((u) => u.exact.test(said)) ??
    (/^m-?(?:ohm|Ω|Ω|$)/i.test(said) ? undefined : TABLE.find((u) => u.loose.test(said)));
  if (found) return found.unit;
  const known = FACTORS.get(unitOf(said) ?? '');
  return known ? { ...known, nought: 0 } : null;
}

/** A figure in one unit as it is in another; null where they measure different things, or one is not known. */
export function turnedInto(
  value: number,
  own: string | null,
  wanted: string | null,
): number | null {
  const [a, b] = [own, wanted].map((unit) => (unit === null ? null : unitNamed(unit)));
  if ((own !== null && !a) || (wanted !== null && !b)) return null;
  // A limit without a unit is in that of the reading, and the other way round.
  if (!a || !b) return value;
  if (a.of !== b.of) return null;
  return (value * a.factor + a.nought - b.nought) / b.factor;
}
