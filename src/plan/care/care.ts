/**
 * What is dangerous about a piece, and what follows from it: one row a sort of care. The file says it (`care: brake`,
 * a list, or `none`); where it does not, the trade's names for such pieces are looked for in its name. A guess only
 * adds. What the rows say is common practice of the trade, no source: the maker's manual, local rules and licensed
 * mechanics go first, and the screens say so.
 */
import { type OneOf, oneOf } from '../../model/one-of.ts';
import type { Care, PieceSpec } from '../../model/types.ts';

export interface CareRow {
  /** Names by which the trade knows such pieces, plurals with them; null where no name is sure enough to guess by. */
  names: OneOf | null;
  /** Read once before its first bolt, out and in. */
  say: string;
  /** Keeps somebody alive: the manual, local rules and a licensed mechanic are named as well. */
  licensed: boolean;
  /** Asked before its first bolt is turned; null: the caution says it all. */
  before: string | null;
  /** While it is undone the machine is not moved under its own weight. */
  stays: boolean;
  /** While it is undone the machine is not taken off its stand. */
  held: boolean;
  /** Seen to before the first start; `stops` is STOP until it is ticked. */
  start: { say: string; stops: boolean } | null;
}

export const CARES: Readonly<Record<Care, CareRow>> = {
  head: {
    names: oneOf('cylinder heads?'),
    say: 'Only cold, and only in the maker’s order: a head warps.',
    licensed: false,
    before: 'Cold: nothing was run for some hours.',
    stays: false,
    held: false,
    start: null,
  },
  case: {
    names: oneOf('crank ?cases?|case hal(?:f|ves)|gearbox cases?'),
    say: 'Only in the maker’s order: a case cracks or leaks where it is pulled down askew.',
    licensed: false,
    before: null,
    stays: false,
    held: false,
    start: null,
  },
  cap: {
    names: oneOf('(?:main|big[- ]end|bearing|cam(?:shaft)?|rod) caps?|cam(?:shaft)? holders?'),
    say: 'Each cap in its own place and the same way round, in the maker’s order.',
    licensed: false,
    before: null,
    stays: false,
    held: false,
    start: null,
  },
  brake: {
    names: oneOf(
      'brakes?|handbrakes?|call?ipers?|master ?cylinders?|wheel cylinders?|bleed(?:er)? (?:nipples?|screws?|valves?)|bleeders?|abs|(?:front|rear|back) (?:dis[ck]s?|rotors?|drums?)|pads?',
    ),
    say: 'Brakes: their dust is not blown away but wiped up wet, their fluid stays off paint and skin. A caliper hangs by a wire, never by its hose, and nobody touches the lever while it is off. Nothing moves before the lever is firm again.',
    licensed: true,
    before:
      'On a stand or blocked: it cannot roll or fall without this brake. A wet cloth for the dust; the fluid caught, off paint and skin.',
    stays: true,
    held: false,
    // Until it is firm nothing stops the machine.
    start: { say: 'lever pumped until it is firm', stops: true },
  },
  steering: {
    names: oneOf(
      'steering|handle ?bars?|bar clamps?|yokes?|triple (?:clamps?|trees?)|head(?:stock|set)? bearings?|tie[- ]?rods?|track[- ]?rods?|drag links?|ball[- ]?joints?|king ?pins?|forks?|front ends?|headsets?|rack and pinions?|pitman arms?|idler arms?|knuckles?|stub axles?',
    ),
    say: 'Steering: what is let go here keeps the rider upright. A licensed mechanic looks at it.',
    licensed: true,
    before: 'It stands, and cannot fall when this is undone.',
    stays: true,
    held: false,
    start: { say: 'turns free from lock to lock, without play', stops: false },
  },
  structure: {
    names: oneOf(
      'frames?|sub ?frames?|cross ?members?|engine (?:mounts?|mountings?|bolts?|hangers?)|(?:centre|center|side|main)? ?stands?|kick ?stands?|side ?cars?|jack(?:ing)? points?|(?:tow(?:ing)?|trailer) (?:bars?|hitch(?:es)?|balls?)|roll ?bars?|seat ?belts?|seat rails?',
    ),
    say: 'It carries weight: hold the machine up by a stand or straps before a bolt is out.',
    licensed: true,
    before: 'Held by a stand or straps that do not hang on this piece.',
    stays: false,
    held: true,
    start: null,
  },
  wheel: {
    names: oneOf(
      '(?:front|rear|back|road|drive|spare|side)?wheels?|axles?|axels?|hubs?|tyres?|tires?|rims?|spokes?|lug ?nuts?',
    ),
    say: 'A wheel carries it: on stands, never on a jack alone, and rocked by hand before it is off. A new split pin or tab in its nut.',
    licensed: true,
    before: 'On stands, rocked by hand, and it cannot roll.',
    stays: true,
    held: true,
    start: { say: 'spins free and true, its axle tight and locked', stops: false },
  },
  suspension: {
    names: oneOf(
      'suspensions?|forks?|shocks?|shock ?absorbers?|struts?|dampers?|swing(?:ing)? ?arms?|wishbones?|control arms?|trailing arms?|torsion bars?|anti[- ]?roll bars?|sway bars?|stabili[sz]er bars?|drop links?|knuckles?|front ends?|mono ?shocks?|coil[- ]?overs?|shackles?|a[- ]arms?|dog ?bones?|(?:rear|shock|rising[- ]rate) linkages?',
    ),
    say: 'It carries weight and a spring pushes in it: unload it by a stand first, and undo no top nut under load.',
    licensed: true,
    before: 'The weight is off it, and its spring is held or slack.',
    stays: true,
    held: true,
    start: { say: 'pushed down and come up again, nothing knocks', stops: false },
  },
  spring: {
    names: oneOf(
      'springs?|recoil starters?|kick ?starts?|kick ?starters?|pull ?start(?:er)?s?|(?:cam|timing|drive)? ?(?:chain|belt) tensioners?',
    ),
    say: 'A spring pushes behind it: half a turn each, all round, eyes covered, and never a face in front of it.',
    licensed: false,
    before: 'A spring pushes behind it: eyes covered, and something to hold it with.',
    stays: false,
    held: false,
    start: null,
  },
  fuel: {
    names: oneOf(
      'fuels?|petrol|gasoline|diesel|gas (?:tanks?|caps?|lines?|cocks?|bottles?|cylinders?)|lpg|propane|vapori[sz]ers?|tanks?|petcocks?|carbs?|carburett?[oe]rs?|throttle (?:body|bodies)|injectors?|injection pumps?|floats?',
    ),
    say: 'Fuel: no flame, no spark, no heat near it, no smoking; air through the room; a closed can for what runs out.',
    licensed: false,
    before: 'Fuel shut off, its battery lead off, air through the room.',
    stays: false,
    held: false,
    start: { say: 'no drop and no smell, no flame near', stops: false },
  },
  battery: {
    names: oneOf('batter(?:y|ies)|accumulators?|starters?|starter motors?'),
    say: 'Battery: minus lead off first and on last, no tool across its poles, no flame: its gas burns and its acid blinds.',
    licensed: false,
    before: 'Battery lead off, the minus first.',
    stays: false,
    held: false,
    start: null,
  },
  mains: {
    names: oneOf(
      'mains|contactors?|switch ?gear|terminal box(?:es)?|\\d{3} ?v(?:olts?)?|three[- ]phase|inverters?|capacitors?|power suppl(?:y|ies)|transformers?|chargers?',
    ),
    say: 'Mains: plug out or locked off, tried dead with a tester that was tried before, capacitors given time. Wiring is for those who are licensed for it.',
    licensed: true,
    before: 'Plug out or switch locked, and tried dead.',
    stays: false,
    held: false,
    start: { say: 'earth lead on, cover shut, nothing pinched', stops: true },
  },
  blade: {
    names: oneOf(
      'blades?|cutters?|cutting (?:decks?|bars?|discs?|heads?)|kni(?:fe|ves)|mower decks?|chain ?bars?|saw chains?|chain ?saw (?:bars?|chains?)|guide bars?|grinding (?:wheels?|discs?)|propellers?',
    ),
    say: 'A blade cuts at rest too: plug lead or battery off, the blade blocked, gloves on.',
    licensed: false,
    before: 'Plug lead or battery off, and the blade blocked.',
    stays: false,
    held: false,
    start: { say: 'turns free by hand, its guard on', stops: true },
  },
  lift: {
    names: oneOf(
      'gas (?:struts?|springs?)|lift(?:ing)? (?:arms?|rams?|chains?|struts?)|hydraulics?|rams?|hoists?|booms?|jacks?|tail ?gates?|loaders?|loader arms?|fork ?lifts?',
    ),
    say: 'It lifts or holds up: lower it or prop it first, let its pressure out; oil under pressure goes through skin.',
    licensed: true,
    before: 'Lowered or propped, and its pressure let out.',
    stays: false,
    held: true,
    start: { say: 'lifts and holds, nothing weeps, nobody under it', stops: false },
  },
  airbag: {
    names: oneOf(
      'air ?bags?|srs|inflators?|(?:pre)?tensioners? of the belt|belt (?:pre ?)?tensioners?|pre ?tensioners?|clock ?springs?',
    ),
    say: 'Airbag: only with the manual and by those who are licensed for it. Battery off and waited, face away, never measured with a meter.',
    licensed: true,
    before: 'Battery off, and waited as long as the manual says.',
    stays: false,
    held: false,
    start: null,
  },
};

const ALL = Object.keys(CARES) as Care[];

export interface Cares {
  /** What the file says, then what its name adds. */
  care: Care[];
  /** Those that only its name says. */
  guessed: Care[];
}

/** What is called like something dangerous and is not: an oil tank holds no fuel, a float in a carburettor lifts nothing. */
const NOT = (
  [
    ['spring', 'spring (?:washers?|clips?|pins?|hooks?)'],
    ['fuel', '(?:oil|water|air|header|expansion|hydraulic|washer) tanks?'],
    ['structure', '(?:tool|oil) stands?|door frames?|lamp frames?|air ?frames?'],
    [
      'wheel',
      '(?:hand|fly|gear|sprocket|star|cog|grinding|idler|pulley|worm|ratchet) ?wheels?|(?:lamp|head ?lamp|light|glass) rims?',
    ],
    ['steering', '(?:selector|shift|gear|gearchange|change) forks?'],
    ['suspension', '(?:selector|shift|gear|gearchange|change) forks?|vibration dampers?'],
    ['blade', '(?:fan|wiper) blades?|propeller shafts?'],
    ['brake', '(?:knee|seat|tank|foot|thrust|rubber|heat|sound) pads?'],
    ['mains', '(?:super|turbo)[- ]?chargers?'],
  ] as const satisfies readonly (readonly [Care, string])[]
).map(([care, names]) => ({ care, names, are: oneOf(names) }));

/** What is dangerous about a piece, by the person's word or by its name. `care: none` leaves out all guesses. */
export function caresOf(spec: Pick<PieceSpec, 'key' | 'name' | 'care'>): Cares {
  const said = spec.care ?? [];
  if (said.includes('none')) return { care: said.filter((c) => c !== 'none'), guessed: [] };
  const name = `${spec.key.replaceAll('-', ' ')} ; ${spec.name}`.toLowerCase();
  const guessed = ALL.filter((care) => !said.includes(care) && isNamed(care, name));
  const known = said.filter((c): c is Care => c !== 'none');
  return { care: [...known, ...guessed], guessed };
}

function isNamed(care: Care, name: string): boolean {
  const { names } = CARES[care];
  const not = NOT.find((n) => n.care === care);
  const rest = not?.are.test(name)
    ? name.replaceAll(new RegExp(`\\b(?:${not.names})\\b`, 'g'), '')
    : name;
  return names?.test(rest) === true;
}
