/** The words and figures that a printed torque is made of, each read at the start of a text. */
import { pattern } from '../../model/pattern.ts';
import type { Quantity } from '../../model/types.ts';
import { readNumber, tidy, VULGAR } from '../read/numbers.ts';
import { FACTORS, UNIT, unitOf } from '../read/unit-names.ts';

const vulgar = `[${Object.keys(VULGAR).join('')}]`;
/** A fraction has the parts of an inch or of a turn: `20/40 N·m` is two stages, no half. */
const PARTS = String.raw`\d{1,2}\/(?:2|3|4|8|16|32|64)(?![\d/])`;
const FIGURE = String.raw`(?:\d+ ?${vulgar}|${vulgar}|\d+[- ]${PARTS}|${PARTS}|\d+(?:[.,]\d+)?|[.,]\d+)`;
const TO = String.raw`\s*(?:\.{2,3}|…|[-–—−~]|\b(?:to|bis|a|hasta)\b|à(?=\s))\s*`;
const SPREAD = String.raw`\s*(?:±|\+\/-)\s*`;
const RANGE = `(${FIGURE})(?:(${TO}|${SPREAD})(${FIGURE}))?`;
const DEGREES = String.raw`\s*(?:[°º˚]|degrees?\b|deg\b\.?|degrés?(?![a-zß-ÿ])|(?:grad|grados?|gradi|graden)\b)`;
/** `lb/in` is how some people write it; a spring is not meant here. */
const TORQUE_UNIT = String.raw`(?:${UNIT}|(?:lbf?s?|kgf?)\s*\/\s*(?:in|ft|cm|m)\b)`;

/** Between stages, and before them: nothing of it is a figure. */
export const JOINS =
  /^(?:[\s,;:/]+|→|⇒|->|=>|\+|&|(?:and|und|et|y|ed?|og|och)(?![a-zß-ÿ])|then\b|plus\b|next\b|finally\b|followed by\b|after(?:wards| that)\b|a further\b|further\b|another\b|an additional\b|additional(?:ly)?\b|more\b|again\b|by\b|through\b|the\b|it\b|all\b|bolts?\b|nuts?\b|screws?\b|(?:dann|danach|puis|ensuite|poi|quindi|luego|sedan|mit|um)\b|después(?![a-zß-ÿ]))/i;
/** Of these, what says that something more is to be done: without it behind them they are a rest. */
export const PROMISES =
  /^(?:→|⇒|->|=>|\+|then\b|dann\b|danach\b|puis\b|ensuite\b|poi\b|quindi\b|luego\b|sedan\b|después|plus\b|next\b|finally\b|followed by\b|after(?:wards| that)\b|a further\b|further\b|another\b|an additional\b|additional(?:ly)?\b|more\b|again\b|pull|turn|rotate|angle)/i;
const LABEL = '(?:stage|step|pass|phase|stufe|schritt|anzug|étape|etape|fase|paso|passo)';
/** `1st`, `Step 2:`, `stage 3 -`, `a)`, `(1)`, `2. Stufe`, `II:`, `initial torque`. */
export const LABELS = pattern(
  () =>
    String.raw`^(?:\(?\d(?:st|nd|rd|th)\b\)?(?:\s*(?:${LABEL}|time))?[\s:=–-]*|(?:first|second|third|fourth|last)\b(?:ly)?(?:\s*${LABEL})?[\s:=–-]*|${LABEL}\s*(?:\d+|one|two|three|four)\b\s*[:.)=–-]*\s*|\d\.\s*${LABEL}\b\s*[:=–-]*\s*|\(?\d\)\s*|[a-d]\)\s*|(?:\d|[a-d])\.\s+|[①-⑨]\s*|(?:I{1,3}|IV|V)\s*[.:)]\s*|(?:initial|preliminary|final)(?:\s+torque)?\b[\s:=–-]*)`,
  'i',
);
/** What is done, where the figure behind it says how far. */
export const STAGE_VERBS =
  /^(?:(?:anzugs|anzieh)?(?:dreh)?moment|couple(?: de serrage)?|coppia(?: di serraggio)?|par de apriete|tighten(?:ing)?|torque(?:d)?|set|pre-?tighten|pull(?:ed)?|turn(?:ed)?|rotate|angle)\b(?:\s*(?:torque|angle))?(?:\s*(?:to|down|up|at|clockwise|through|by|of))*/i;
export const SNUG =
  /^(?:(?:tighten(?:ed)?\s+)?(?:hand|finger)[- ]?tight(?:en(?:ed)?)?|tight(?:en(?:ed)?)?\s+(?:by|with)\s+(?:hand|(?:the\s+)?fingers)|by\s+(?:hand|(?:the\s+)?fingers)|(?:until\s+)?snug(?:\s*(?:down|tight))?|(?:until\s+)?seated|handfest)\b/i;
export const LOOSEN =
  /^(?:back(?:ed)?[- ]?off|loosen(?:ed)?(?:\s+off)?|slacken(?:ed)?(?:\s+off)?|undo|release|unscrew)\b(?:\s*(?:by|all|them|it|completely|fully|again))*\s*/i;
const THREAD =
  /^\(?(?:with\s+)?(?:(?:lightly\s+)?(?:oiled|oil(?= on the threads?)|lubricated|greased|waxed)(?:\s*(?:on the )?(?:threads?|bolts?|and (?:head|face|seat)|underside|washers?))*|(?:clean(?:ed)?(?:,| and)?\s*)?dry(?:\s*(?:threads?|bolts?))?|(?:threads?\s+)(?:oiled|dry|greased|lubricated|clean and dry)|in (?:engine )?oil|(?:apply )?(?:engine )?oil (?:on|to) (?:the )?threads?|oil the threads?|(?:clean(?:ed)?|free) (?:of|from) (?:oil|grease)(?: (?:and|or) (?:oil|grease))?|(?:no|never|without)\s+(?:oil(?:ed)?|grease|lubricant)(?:\s+on\s+(?:the\s+)?(?:threads?|bolts?))?)\)?/i;
const PLACE = pattern(
  () =>
    /^\(?(?:see\s+)?(?:(?:the\s+)?(?:[\p{L}’'.-]+\s+){0,3}?(?:manual|bulletin|handbook|book|catalogue|catalog|supplement|sheet|sticker|label|data ?sheet|page|pages|pp?\.|pp?(?=\s*\d)|table|section|sect\.|chapter|fig(?:ure)?\.?|drawing)(?:[\s,:.#-]*(?:no\.?|page|pages|pp?\.?|table|section|chapter|fig\.?|and)?[\s#]*[\p{L}]{0,2}\d[\w./-]*)*|\d+-\d+(?:-\d+)*(?![\d.])|see\s+\S+)(?:\s+after all)?\)?(?=$|[\s,;)])/iu,
);
const MOST =
  /^(?:max(?:imum|imal)?\.?|at most|no more than|not more than|not over|not to exceed|do not exceed|up to|höchstens|au plus|≤|<=?)\s*/i;
const ABOUT = /^(?:~|≈|about|approx(?:\.|imately)?|ca\.?|circa)\s*/i;
/** `2 x`, `twice`. */
const TIMES = /^\+?\s*(?:(\d)\s*(?:x|×|times)|(twice))\s*/i;

const QUANTITY = pattern(() => `^${RANGE}\\s*(${TORQUE_UNIT})`, 'i');
/** `between 8 and 12 N·m`, `from 8 to 12 N·m`. */
const SPAN = pattern(
  () =>
    `^(?:between\\s+(${FIGURE})\\s*(?:${TORQUE_UNIT})?\\s*and|from\\s+(${FIGURE})\\s*(?:${TORQUE_UNIT})?\\s*to)\\s+(${FIGURE})\\s*(${TORQUE_UNIT})`,
  'i',
);
/** `10 Nm - 12 Nm`: the unit twice. */
const SPAN_TWICE = pattern(
  () => `^(${FIGURE})\\s*(${TORQUE_UNIT})${TO}(${FIGURE})\\s*(${TORQUE_UNIT})`,
  'i',
);
const MOST_BEHIND =
  /^\s*,?\s*(?:\(max(?:imum|imal|\.)?\)|max(?:im(?:um|al)\b|i\b|\.|\b)|or less\b|at (?:the )?most\b|au plus\b)/i;
const ANGLE = pattern(() => `^\\+?\\s*${RANGE}${DEGREES}`, 'i');
/** `90° to 100°`: with a dash alone they may be two, one after the other. */
const ANGLE_TWICE = pattern(
  () => `^\\+?\\s*(${FIGURE})${DEGREES}(\\s*(?:\\.{2,3}|…|\\bto\\b)\\s*)(${FIGURE})${DEGREES}`,
  'i',
);
const TURNS = pattern(
  () =>
    `^\\+?\\s*(?:(${FIGURE}|\\d{1,2}\\/(?:3|6|12))(?:\\s+of)?(?:\\s+an?)?|(half|quarter|third|three[- ]quarters?|one|two|full)(?:\\s+(?:of\\s+)?an?)?|(?:an?|one)\\s+(half|quarter|third|full|complete)?)\\s*(?:of a )?-?(?:turns?|umdrehung(?:en)?|tours?|vueltas?|gir[io])\\b`,
  'i',
);
/** `one and a half turns`. */
const TURNS_AND = /^\+?\s*(one|two|\d)\s+and\s+(?:an?\s+)?(half|quarter|1\/2|1\/4)\s+turns?\b/i;
/** Of other languages, as manuals print them. */
const OTHER_TURNS: readonly [RegExp, number][] = [
  [
    /^\+?\s*(?:(?:eine\s+)?viertel[- ]?(?:um)?drehung|(?:un\s+)?quart\s+de\s+tour|(?:un\s+)?cuarto\s+de\s+vuelta|(?:un\s+)?quarto\s+di\s+giro)\b/i,
    0.25,
  ],
  [
    /^\+?\s*(?:(?:eine\s+)?halbe\s+(?:um)?drehung|(?:un\s+)?demi[- ]tour|media\s+vuelta|mezzo\s+giro)\b/i,
    0.5,
  ],
];
/** Behind an angle, where it begins: by hand, or at the gasket. */
const PAST_SNUG =
  /^\s*(?:(?:past|after|beyond|from)\s+)(?:(?:hand|finger)[- ]?tight|snug|seat(?:ed|ing)|(?:(?:the\s+)?(?:gasket|seal|o-?ring|washer)(?:\s+(?:makes\s+)?)?)?(?:contacts?|touches))\b/i;
/** Behind an angle, how often. */
const SO_OFTEN = /^\s*(?:[x×]\s*([2-4])(?![\d.,])|(twice)\b)/i;
const BARE = pattern(() => `^(${FIGURE})(?![\\d.°º]|,\\d)`);
const WORDS: Readonly<Record<string, number>> = {
  half: 0.5,
  quarter: 0.25,
  third: 1 / 3,
  one: 1,
  two: 2,
  full: 1,
  complete: 1,
};

/** A thousand to some, one with three places to others: nobody prints a torque to a nought in the third place. */
const MAYBE_THOUSANDS = /^[1-9]\d{0,2}\.\d\d0$/;

function readFigure(text: string): number | null {
  if (MAYBE_THOUSANDS.test(text)) return null;
  const sign = new RegExp(vulgar).exec(text)?.[0];
  if (sign === undefined) return readNumber(text);
  return readNumber(`${text.replace(sign, '').trim()} ${VULGAR[sign]}`.trim());
}

/** How far off, in the unit of the figure before it or as a share of it. */
const OFF = pattern(
  () =>
    `^\\s*([([{]?)\\s*(?:±|\\+\\s?\\/\\s?[-−])\\s*(${FIGURE})\\s*(%|°|${TORQUE_UNIT})?\\s*([)\\]}]?)(?!\\d)`,
  'i',
);

/** `± 5°`, `(±2)`, `±10 %` behind a figure in a unit: both its ends. */
export function spreadAt(text: string, value: number, unit: string) {
  if (!/^\s*[([{]?\s*[±+]/.test(text)) return null;
  const [said, opened, figure = '', named, closed] = OFF.exec(text) ?? [];
  const off = said === undefined ? null : readFigure(figure);
  if (said === undefined || off === null || (opened === '') !== (closed === '')) return null;
  if (named !== undefined && named !== '%' && unitOf(named) !== unit) return null;
  const by = named === '%' ? (value * off) / 100 : off;
  return by < value ? { length: said.length, from: tidy(value - by), to: tidy(value + by) } : null;
}

/** Both ends; null where it runs backwards or is no figure. */
function readEnds(first = '', between = '', second?: string) {
  const a = readFigure(first);
  if (a === null) return null;
  if (second === undefined) return { value: a, to: null };
  const b = readFigure(second);
  if (b === null) return null;
  if (/±|\+\//.test(between)) return b <= a ? { value: tidy(a - b), to: tidy(a + b) } : null;
  return b >= a ? { value: a, to: b } : null;
}

export interface TorqueRead {
  length: number;
  quantity: Quantity;
  /** No more than that. */
  most: boolean;
}

/** A figure of torque with its unit. */
export function torqueAt(text: string): TorqueRead | null {
  return plainTorqueAt(text) ?? withMost(text, spanAt(text) ?? figureAt(text));
}

/** `10 N·m max`, `10 N·m or less`. */
function withMost(text: string, found: TorqueRead | null): TorqueRead | null {
  const left = found ? text.slice(found.length) : '';
  const behind = /max|less|most|plus/i.test(left) ? MOST_BEHIND.exec(left)?.[0] : undefined;
  return found && behind ? { ...found, length: found.length + behind.length, most: true } : found;
}

function figureAt(text: string): TorqueRead | null {
  const most = MOST.exec(text)?.[0] ?? '';
  const before = most || (ABOUT.exec(text)?.[0] ?? '');
  const behind = text.slice(before.length);
  // No word is looked at with the large pattern.
  const found = /^[\d.,½¼¾⅓⅔⅛⅜⅝⅞]/.test(behind) ? QUANTITY.exec(behind) : null;
  const range = found && readEnds(found[1], found[2], found[3]);
  const unit = torqueUnit(found?.[4]);
  if (!found || !range || range.value <= 0 || unit === null) return null;
  const length = before.length + found[0].length;
  return { length, quantity: { ...range, unit }, most: most !== '' };
}

/** A range that is said in words, or with its unit twice. */
function spanAt(text: string): TorqueRead | null {
  const [words, a, b, to, named] = /^[bf]/i.test(text) ? (SPAN.exec(text) ?? []) : [];
  const [twice, first, one, second, other] = /^\d/.test(text) ? (SPAN_TWICE.exec(text) ?? []) : [];
  const unit = torqueUnit(named ?? other);
  const range = readEnds(a ?? b ?? first, '', to ?? second);
  const same = one === undefined || torqueUnit(one) === unit;
  if (unit === null || !range || range.value <= 0 || range.to === null || !same) return null;
  const { length } = words ?? twice ?? '';
  return { length, quantity: { ...range, unit }, most: false };
}

function torqueUnit(said: string | undefined): string | null {
  const unit = unitOf((said ?? '').replace(/^((?:lbf?s?|kgf?)\s*)\//i, '$1·'));
  return unit !== null && FACTORS.get(unit)?.of === 'torque' ? unit : null;
}

/** What most files say, told without the large patterns: they would find the same, and take longest to be made. */
const PLAIN = /^(\d+(?:\.\d+)?) N·m(?=$|[\s,;)])/;

export function plainTorqueAt(text: string): TorqueRead | null {
  const [said, figure = ''] = PLAIN.exec(text) ?? [];
  const value = said === undefined ? null : readFigure(figure);
  if (said === undefined || value === null || value <= 0) return null;
  const found = { length: said.length, quantity: { value, to: null, unit: 'N·m' }, most: false };
  return withMost(text, found);
}

const PLAIN_PLACE = /^(?:manual|page) \d+(?:-\d+)?$/;

/** Where it is printed, at the start of a text: how much of it says so. */
export function placeAt(text: string): string {
  return (PLAIN_PLACE.exec(text) ?? PLACE.exec(text))?.[0] ?? '';
}

/** A bolt that is not to go back: `new bolts`, `replace bolt`, `do not re-use`, `use once`. */
const ONCE =
  /^[([]?(?:(?:always\s+)?(?:use|fit|with|renew|replace)\s+)?(?:the\s+)?(?:new\s+(?:bolts?|nuts?|screws?|studs?)|(?:bolts?|nuts?|screws?|studs?)\s+(?:(?:must|to)\s+be\s+)?(?:replaced|renewed)|(?:always\s+)?(?:replace|renew)(?:\s+(?:the\s+)?(?:bolts?|nuts?|screws?|studs?))?(?:\s+(?:always|every time|each time))?|(?:do not|don['’]t|never|not to be)\s+re-?used?|(?:use(?:d)?\s+)?once only|use(?:d)?\s+once|single[- ]use)[)\]]?(?=$|[\s,;:.)\]])/i;

/** What says so, at the start of a text. */
export function onceAt(text: string): string {
  return /^[([]?[abdfnorsuw]/i.test(text) ? (ONCE.exec(text)?.[0] ?? '') : '';
}

/** In how many goes it is come to: `in two stages`. */
export function inSteps(text: string): string {
  return (
    /^\(?in\s+(?:\d|two|three|four|several)\s+(?:even\s+|equal\s+)?(?:stages|steps|passes)\)?(?=$|[\s,;.])/i.exec(
      text,
    )?.[0] ?? ''
  );
}

/** Figures with a unit behind them are no place: `20-40-60 N·m`. */
const FIGURES_IN_UNIT = pattern(() => `^\\d+(?:-\\d+)+\\s*${TORQUE_UNIT}`, 'i');
export const hasUnit = (text: string) =>
  /^\d+(?:-\d+)+\s*[^\d\s,;.]/.test(text) && FIGURES_IN_UNIT.test(text);

/** Of other languages, as manuals print it. */
const OTHER_THREAD = pattern(
  () =>
    /^\(?(?:leicht\s+)?(?:geölt|gefettet|trocken|huilée?s?|graissée?s?|à sec|en seco|engrasad[oa]s?|aceitad[oa]s?|lubrificat[oaie]|lubricad[oa]s?|oliat[oaie]|asciutt[oaie]|a secco)(?!\p{L})\)?/iu,
);

/** What is said of the thread, at the start of a text. */
export function threadAt(text: string): string {
  if (!/^\(?[acdefghilnotwà]/i.test(text)) return '';
  return (THREAD.exec(text) ?? OTHER_THREAD.exec(text))?.[0] ?? '';
}

/** A figure alone: a unit further on may be its unit too. */
export function bareAt(text: string): { length: number; value: number } | null {
  const found = BARE.exec(text);
  const value = found && readFigure(found[1] ?? '');
  return found && value ? { length: found[0].length, value } : null;
}

export interface AngleRead {
  length: number;
  degrees: number;
  /** Upper end of a range, else null. */
  to: number | null;
  times: number;
  /** It is said to begin where the bolt is snug. */
  pastSnug: boolean;
}

/** `90°`, `+ 90 degrees`, `1/2 turn`, `a quarter turn further`, `2 x 90°`. */
export function angleAt(text: string): AngleRead | null {
  const times = TIMES.exec(text);
  const from = times?.[0].length ?? 0;
  const left = text.slice(from);
  const one = ANGLE.exec(left);
  const found = one && (ANGLE_TWICE.exec(left) ?? one);
  const range = found && readEnds(found[1], found[2], found[3]);
  const turned = range ? null : turnsAt(left);
  const said = range ? found[0] : turned?.said;
  const degrees = range ? range.value : tidy((turned?.turns ?? 0) * 360);
  if (said === undefined || degrees <= 0) return null;
  const more =
    /^\s*(?:turns?|further|more|angle|weiter(?:drehen)?|nachziehen)\b/i.exec(
      left.slice(said.length),
    )?.[0] ?? '';
  const often = times ? null : SO_OFTEN.exec(left.slice(said.length + more.length));
  const count = times
    ? times[2]
      ? 2
      : Number(times[1])
    : often?.[2]
      ? 2
      : Number(often?.[1] ?? 1);
  const length = from + said.length + more.length + (often?.[0].length ?? 0);
  const past = PAST_SNUG.exec(text.slice(length))?.[0] ?? '';
  return {
    length: length + past.length,
    degrees,
    to: range?.to ?? null,
    times: count,
    pastSnug: past !== '',
  };
}

/** `1/2 turn`, `one and a half turns`, `two flats`: how many turns. */
function turnsAt(left: string): { said: string; turns: number } | null {
  const [both, whole = '', part = ''] =
    (/^\+?\s*\w+\s+and\b/i.test(left) && TURNS_AND.exec(left)) || [];
  if (both !== undefined) {
    const more = WORDS[part.toLowerCase()] ?? readFigure(part) ?? 0;
    return { said: both, turns: (WORDS[whole.toLowerCase()] ?? Number(whole)) + more };
  }
  const found = TURNS.exec(left);
  const turns = found && turnsOf(found);
  if (found && turns !== null) return { said: found[0], turns };
  if (!/^\+?\s*[cdehmquv]/i.test(left)) return flatsAt(left);
  for (const [other, turns] of OTHER_TURNS) {
    const said = other.exec(left)?.[0];
    if (said !== undefined) return { said, turns };
  }
  return flatsAt(left);
}

/** A flat of a hexagon is a sixth of a turn: common practice. */
const FLATS = pattern(
  () => `^\\+?\\s*(?:(${FIGURE})|(one|two|half)(?:\\s+an?)?|an?)\\s*flats?\\b`,
  'i',
);

function flatsAt(text: string): { said: string; turns: number } | null {
  const [said, figure, word] = FLATS.exec(text) ?? [];
  if (said === undefined) return null;
  const flats =
    figure === undefined ? (WORDS[word?.toLowerCase() ?? 'one'] ?? 1) : readFigure(figure);
  return flats === null ? null : { said, turns: flats / 6 };
}

function turnsOf([, said, word, small]: RegExpExecArray): number | null {
  if (said !== undefined) return readFigure(said);
  const named = (word ?? small ?? 'one').toLowerCase();
  return named.startsWith('three') ? 0.75 : (WORDS[named] ?? null);
}

/** Printed figures of one value in two units may differ by so much beside half of the last place: each was rounded. */
const ROUNDED = 0.03;

/** Whether a second figure says the same as the first; `text` is the second as printed. */
export function agrees(first: Quantity, second: Quantity, text: string): boolean {
  const worth = (q: Quantity) => FACTORS.get(q.unit)?.factor ?? Number.NaN;
  const places = /[.,](\d+)/.exec(text)?.[1]?.length ?? 0;
  const step = 10 ** -places;
  const close = (x: number, y: number) => {
    const turned = (x * worth(first)) / worth(second);
    return Math.abs(turned - y) <= step / 2 + turned * ROUNDED + 1e-9;
  };
  if (second.to !== null) {
    return close(first.value, second.value) && close(first.to ?? first.value, second.to);
  }
  const { value, to } = first;
  const turned = (second.value * worth(second)) / worth(first);
  return close(value, second.value) || (to !== null && turned >= value && turned <= to * 1.03);
}
