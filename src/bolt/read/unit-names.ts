/** The units putback knows: how the trade spells them, how the program prints them, and what they are worth. */
import { pattern } from '../../model/pattern.ts';

/** Standard gravity, m/s² (CGPM 1901), exact. */
const G = 9.80665;
/** Newtons of one pound-force: 0.45359237 kg × 9.80665 m/s², exact. */
const LBF = 0.45359237 * G;
const OZF = LBF / 16;
/** Metres of one inch, exact since 1959. */
const IN = 0.0254;

type Measure = 'torque' | 'force' | 'length' | 'stress' | 'angle';

/** What one unit is worth in N·m, N, mm, MPa or degrees. Keys are the printed spellings. */
export const FACTORS: ReadonlyMap<string, { of: Measure; factor: number }> = new Map<
  string,
  { of: Measure; factor: number }
>([
  ['N·m', { of: 'torque', factor: 1 }],
  ['N·cm', { of: 'torque', factor: 0.01 }],
  ['cN·m', { of: 'torque', factor: 0.01 }],
  ['daN·m', { of: 'torque', factor: 10 }],
  ['kgf·m', { of: 'torque', factor: G }],
  ['kgf·cm', { of: 'torque', factor: G / 100 }],
  ['lbf·ft', { of: 'torque', factor: LBF * IN * 12 }],
  ['lbf·in', { of: 'torque', factor: LBF * IN }],
  ['ozf·in', { of: 'torque', factor: OZF * IN }],
  ['N', { of: 'force', factor: 1 }],
  ['kN', { of: 'force', factor: 1000 }],
  ['kgf', { of: 'force', factor: G }],
  ['lbf', { of: 'force', factor: LBF }],
  ['mm', { of: 'length', factor: 1 }],
  ['cm', { of: 'length', factor: 10 }],
  ['in', { of: 'length', factor: 25.4 }],
  ['ft', { of: 'length', factor: 304.8 }],
  ['MPa', { of: 'stress', factor: 1 }],
  ['N/mm²', { of: 'stress', factor: 1 }],
  ['kPa', { of: 'stress', factor: 0.001 }],
  ['bar', { of: 'stress', factor: 0.1 }],
  ['psi', { of: 'stress', factor: LBF / 25.4 ** 2 }],
  ['ksi', { of: 'stress', factor: (LBF * 1000) / 25.4 ** 2 }],
  ['kgf/cm²', { of: 'stress', factor: G / 100 }],
  ['°', { of: 'angle', factor: 1 }],
]);

/** Spellings of a force and of an arm, longest first so that `lbs` is not read as `lb` and a rest. */
const FORCES: [string, string][] = [
  ['daN', 'dan|decanewtons?'],
  ['cN', 'cn|centinewtons?'],
  ['N', 'newtons?|n'],
  ['kgf', 'kilograms?-force|kilograms?|kgf|kgs|kg|kp'],
  ['lbf', 'pounds?-force|pounds?|lbf|lbs|lb'],
  ['ozf', 'ounces?-force|ounces?|ozf|ozs|oz'],
];
const ARMS: [string, string][] = [
  ['cm', 'centimetres?|centimeters?|cm'],
  ['m', 'metres?|meters?|mètres?|m'],
  ['in', 'inches|inch|in'],
  ['ft', 'feet|foot|ft'],
];
const force = FORCES.map(([, s]) => s).join('|');
const arm = ARMS.map(([, s]) => s).join('|');
/** Arm first is said of pounds, kilograms and, in French print, decanewtons: `mN` would be a thousandth of a newton. */
const weight = FORCES.filter(([f]) => f !== 'N' && f !== 'cN')
  .map(([, s]) => s)
  .join('|');
/** What may stand between two parts; an abbreviation may have its full stop. */
const JOIN = String.raw`\.?[ ·⋅∙•*.-]*`;
/** `ft/lbs` is how some people write it; `N/m` would be a spring. */
const JOIN_ARM_FIRST = String.raw`\.?[ ·⋅∙•*.\/-]*`;
/** No letter, digit or power may follow, so that `10 N manual` is no `N·m`, and `20 N·m²` none either. */
const END = String.raw`(?![a-zµß-ÿ\d²³])\.?`;

const SIMPLE: [string, string][] = [
  ['N/mm²', 'n/mm(?:²|2|\\^2)'],
  ['kgf/cm²', 'kgf?/cm(?:²|2|\\^2)'],
  ['MPa', 'mpa'],
  ['kPa', 'kpa'],
  ['bar', 'bar'],
  ['psi', 'psi'],
  ['ksi', 'ksi'],
  ['kN', 'kn'],
  ['mm', 'mm'],
  ['cm', 'cm'],
  ['°', '°|degrees?|deg'],
  ['kgf', 'kgf'],
  ['lbf', 'lbf'],
  ['N', 'n'],
  ['in', 'inches|inch|in|"|″'],
  ['ft', 'feet|foot|ft'],
];
const simple = SIMPLE.map(([, s]) => s).join('|');

/** The source of a regular expression that finds a unit, to be used without regard to case; no groups of its own. */
export const UNIT = `(?:(?:(?:${force})${JOIN}(?:${arm})|(?:${arm})${JOIN_ARM_FIRST}(?:${weight})|(?:${simple}))${END})`;

const FORCE_FIRST = pattern(() => `^(${force})${JOIN}(${arm})\\.?$`, 'i');
const ARM_FIRST = pattern(() => `^(${arm})${JOIN_ARM_FIRST}(${weight})\\.?$`, 'i');
const spelled = (table: [string, string][], said: string | undefined): string | undefined =>
  said === undefined
    ? undefined
    : table.find(([, s]) => new RegExp(`^(?:${s})$`, 'i').test(said))?.[0];

/** A unit as the program prints it: `ft-lbs` is `lbf·ft`, `Nm` is `N·m`. Null when it is none that putback knows. */
export function unitOf(text: string): string | null {
  if (FACTORS.has(text)) return text;
  const said = text.trim();
  if (said === '') return null;
  const found = FORCE_FIRST.exec(said);
  const turned = found ? null : ARM_FIRST.exec(said);
  const f = spelled(FORCES, found?.[1] ?? turned?.[2]);
  const a = spelled(ARMS, found?.[2] ?? turned?.[1]);
  if (f !== undefined && a !== undefined) {
    const unit = `${f}·${a}`;
    return FACTORS.has(unit) ? unit : null;
  }
  return spelled(SIMPLE, said.replace(/\.$/, '')) ?? null;
}
