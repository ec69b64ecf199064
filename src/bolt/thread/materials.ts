/** What a bolt is screwed into: how much shear the tapped material stands, and how much engagement the trade gives it. */

import { remembering } from '../../model/remembering.ts';

export type MaterialName =
  | 'cast aluminium'
  | 'wrought aluminium'
  | 'aluminium'
  | 'magnesium'
  | 'iron'
  | 'steel'
  | 'brass'
  | 'plastic'
  | 'wire insert';

export interface Material {
  name: MaterialName;
  /** Shear strength, MPa: from the weakest to the strongest of what goes by this name. */
  shear: { low: number; high: number };
  /** Least engagement by the trade's rule, in diameters. */
  atLeast: number;
  source: string;
}

const MATERIALS: readonly Material[] = [
  {
    name: 'cast aluminium',
    shear: { low: 130, high: 200 },
    atLeast: 1.5,
    source: 'NADCA product standards, table A-3-2: 130 (C443) to 200 MPa (384)',
  },
  {
    name: 'wrought aluminium',
    shear: { low: 140, high: 280 },
    atLeast: 1.5,
    source: 'handbook values for 5052-H34 to 2024-T4, from memory',
  },
  {
    name: 'aluminium',
    shear: { low: 130, high: 280 },
    atLeast: 1.5,
    source: 'cast and wrought together, because it is not said which',
  },
  {
    name: 'magnesium',
    shear: { low: 110, high: 150 },
    atLeast: 2,
    source: 'handbook values for AZ91 and AM60 castings, from memory',
  },
  {
    name: 'iron',
    shear: { low: 150, high: 300 },
    atLeast: 1,
    source: 'grey iron of 200 to 300 MPa tensile strength, from memory',
  },
  {
    name: 'steel',
    shear: { low: 215, high: 480 },
    atLeast: 0.8,
    source: '0.6 of a tensile strength of 360 to 800 MPa',
  },
  {
    name: 'brass',
    shear: { low: 150, high: 260 },
    atLeast: 1,
    source: 'handbook values for cast and wrought brass, from memory',
  },
  {
    name: 'plastic',
    shear: { low: 25, high: 60 },
    atLeast: 2,
    source: 'handbook values for polypropylene to polyamide, from memory',
  },
  {
    name: 'wire insert',
    shear: { low: 130, high: 200 },
    atLeast: 1,
    source: 'the insert set in cast aluminium, NADCA product standards, table A-3-2',
  },
];

/** Nothing is known here of what these hold, whatever else their words look like. */
const UNKNOWN =
  /\b(?:rubber|neoprene|well-?nuts?|titanium|ti-?6al\S*|zinc|zamak|mazak|pot ?metal|copper|wood\w*|plywood|mdf|carbon fib\w*|gr?fp|cfrp|grp|fib(?:re|er)glass|composite|(?:blind |rivet|riv-?|jack ?)nuts?|rivet nuts?|expansion plugs?)\b/i;

/** Words that name a material, the surest first. */
const WORDS: readonly [MaterialName, RegExp][] = [
  ['wire insert', /\b(?:wire[- ](?:thread )?inserts?|thread inserts?|sti)\b/i],
  ['magnesium', /\b(?:magnesium|mg|az\d\d|am\d0)\b/i],
  ['plastic', /\b(?:plastics?|nylon|polyamide|pa\d*|abs|polypropylene|glass[- ]filled)\b/i],
  ['brass', /\b(?:brass|bronze|gunmetal)\b/i],
  // Steel of whatever alloy, also cast: before "alloy" stands for aluminium.
  [
    'steel',
    /\b(?:(?:cast|alloy|alloyed|carbon|mild|tool|spring|stainless|forged|high[- ]tensile) )+steel\b/i,
  ],
  ['iron', /\b(?:iron|gg\d*|gjl\S*|gjs\S*|ggg\d*)\b/i],
  [
    'cast aluminium',
    /\b(?:(?:die-?)?cast\S* (?:alumini?um|alloy)|alumini?um cast\S*|cast alloy|lm\d+|alsi\S*|a?3[568]\d(?:-t\d)?|adc12)\b/i,
  ],
  [
    'wrought aluminium',
    /\b(?:(?:wrought|forged|billet|plate|machined) (?:alumini?um|alloy)|[2567]0\d\d(?:-t\d+)?)\b/i,
  ],
  ['aluminium', /\b(?:alumini?um|alloy|al)\b/i],
  ['steel', /\b(?:steel|nut)\b/i],
];

function named(said: string): Material | null {
  if (UNKNOWN.test(said)) return null;
  const [name, pattern] = WORDS.find(([, words]) => words.test(said)) ?? [];
  const found = MATERIALS.find((m) => m.name === name);
  if (!found || !pattern || name !== 'wire insert') return found ?? null;
  const around = named(said.replace(pattern, ' '));
  return around
    ? { ...found, shear: around.shear, source: `the insert set in ${around.name}` }
    : found;
}

const asked = remembering(named);

/** The material that `into:` names; null when it says nothing, or nothing that putback knows. */
export function materialOf(text: string | null): Material | null {
  return text === null ? null : asked(text);
}
