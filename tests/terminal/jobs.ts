/** Whole jobs as lists of keys, each from an empty folder: what is pressed, and what is then on the screen. */
import { BACKSPACE, DOWN, ENTER, ESC, LET_GO, UP } from './keys.ts';

export interface Step {
  /** What a person would call it. */
  what: string;
  /** Names of keys between blanks; what stands in «» is typed as it is. */
  keys: string;
  seen: RegExp;
}

const KEYS: Readonly<Record<string, string>> = {
  enter: ENTER,
  escape: ESC,
  backspace: BACKSPACE,
  space: ' ',
  up: UP,
  down: DOWN,
};

/** Each key, or each text as one. */
export function presses(keys: string): { bytes: string; isText: boolean }[] {
  return [...keys.matchAll(/«([^»]*)»|(\S+)/g)].map(([, text, key = '']) =>
    text === undefined ? { bytes: KEYS[key] ?? key, isText: false } : { bytes: text, isText: true },
  );
}

/** Keys alone: what is typed as a text has as many signs as it has, with or without putback. A pause is no key. */
export function countKeys(steps: readonly Step[]): number {
  const isKey = (p: { bytes: string; isText: boolean }) => !p.isText && p.bytes !== LET_GO;
  return steps.reduce((n, s) => n + presses(s.keys).filter(isKey).length, 0);
}

const times = (n: number, key: string) => Array(n).fill(key).join(' ');
/** So many clicks of the wrench: each a press of its own, with time between. */
const clicks = (n: number) => times(n, `${LET_GO} space`);
const step = (what: string, keys: string, seen: RegExp): Step => ({ what, keys, seen });

const START = (name: string, file: string): Step =>
  step('the job begins', `+ «${name}» enter`, new RegExp(`say what comes off first|${file}`));

/** A side cover of 13 bolts behind a bracket: stuck, a wrong gasket, three weeks, a stray bolt, a leak, round two. */
export const SIDE_COVER = {
  before: [
    START('Left cover weeps, Hollin 400 Twin', 'left-cover'),
    step(
      'the bracket',
      'o «bracket s s» enter a enter «cup 1» enter',
      /Bracket +off, bolts in cup 1/,
    ),
    step(
      'the cover is named',
      'o «side cover s s s m s s s+washer s l s s s s» enter',
      /0 of 13 out/,
    ),
    step('one is stuck', '9 - s a', /STOP[\s\S]*12 of 13 out[\s\S]*9 is still in: stuck/),
    step('held Spaces do nothing', times(20, 'space'), /Do not pry/),
    step('it gives in', 'enter 9 o', /13 of 13 out[\s\S]*it came off/),
    // Enter twice within a moment is a key that is held down: another one lies between.
    step('what else is there', '?', /the piece is off/),
    step('back to it', 'escape', /13 of 13 out/),
    step('off', 'enter «cup 2» enter', /Side cover is off, 13 of 13 bolts in cup 2/),
    step('a task', '+ «scrape both faces» enter enter', /To do|to do: scrape both faces/),
    step('a part', '+ «HL-1142 gasket» enter enter', /[Tt]o buy: HL-1142 gasket/),
    step('ordered', 'b enter «5 days» enter', /HL-1142 gasket +promised/),
  ] as Step[],
  after: [
    step('three weeks later', 'space', /> +Side cover|> +Bracket|scrape both faces/),
    step('the wrong gasket', 'b enter w «one hole less» enter', /came, and does not fit/),
    step(
      'the right one',
      // Enter is let go in between: each answer takes a press of its own.
      'up enter «1 day» enter up enter',
      /Before: came, and does not fit: one hole less/,
    ),
  ] as Step[],
  back: [
    // A terminal takes Esc and a key at once for Alt: so Esc ends a step.
    step('back to the job', 'escape', /Next: scrape both faces/),
    step('scraped', 'space enter', /scrape both faces: done/),
    step('to the cover', 'space', /Side cover +.*off/),
    // A gasket that was bought makes a joint: what is to be seen before it closes comes first.
    step('put it back', 'enter', /before it closes/),
    step('looked in', 'a', /before the joint is made/),
    step('clean and dry', 'a', /What is in your hand\?/),
    step('a wrong mark', '1 2 s space 1 2 u', /12: that mark is taken back/),
    // The one that takes a washer is left out of all: by its own key, once that is under.
    step('all S, then M and L', 's a space m space l space', /All in, 13 of them by fingers only/),
    step('a stray bolt', 'l «s» enter', /1 bolt too many; over is 1 S/),
    step('the torque', 'space enter c «10 N·m, manual 2-17» enter', /0 of 13 done in this pass/),
    step('snug', clicks(13), /Next pass, 2 of 3: full, 10 N·m/),
    step('full', `enter ${clicks(13)}`, /Next pass, 3 of 3/),
    step('once more round', `enter ${clicks(13)}`, /All 13 are tight, 10 N·m/),
  ] as Step[],
  /** The bracket, the first start, a leak. */
  run: [
    step('to the job', 'escape', /> Side cover +tight/),
    step('to the bracket', 'up space', /Bracket +.*off/),
    step('put it back', 'enter', /What is in your hand\?/),
    step('the bracket on', 's a', /All in, 2 of them by fingers only/),
    step('snug', `enter ${clicks(2)}`, /Next pass, 2 of 2/),
    step('full, and then the start', `enter ${clicks(2)}`, /before the first start/),
    step('all seen', 'a', /All 2 are tight/),
    step('and to the job', 'escape', /> Bracket +tight/),
    step(
      'it leaks',
      't enter - «a drop at 9» enter',
      /First +Wait until it is cool[\s\S]*Wipe it dry/,
    ),
  ] as Step[],
  /** Off once more, as before. */
  roundTwo: [
    step('all out', 'a', /13 of 13 out/),
    step('off', 'enter', /Side cover is off, 13 of 13 bolts in cup 2/),
  ] as Step[],
  /** What a wrong mark costs, each digit of its hole a key, and a part beside its text. */
  wrongMark: [step('not this one', '1 2 u', /12: that mark is taken back/)] as Step[],
  part: [step('a part', '+ «HL-1142 gasket» enter enter', /[Tt]o buy/)] as Step[],
};

/** Three covers in one another: inch-pounds, a pulled thread, a spring. */
export const GEARBOX: Step[] = [
  START('Gearbox drips, Ostrell lathe', 'gearbox'),
  step('the outer cover', 'o «outer cover s s s» enter', /Plug out or switch locked/),
  step('made safe', 'a', /0 of 3 out/),
  step('off', `${clicks(3)} enter «cup 1» enter`, /Outer cover +off/),
  step(
    'the middle one, only counted',
    'o «middle cover 4» enter a enter «cup 2» enter',
    /Middle cover +off/,
  ),
  step('the inner one', 'o «inner cover m m m» enter', /0 of 3 out/),
  step('a caution', '+ «spring, goggles!» enter enter', /a caution: spring, goggles!/),
  step('off', 'a enter «cup 3» enter', /Inner cover +off/),
  step(
    'an adjustment with its limit',
    '+ «set the end float 0.1..0.2 mm» enter enter',
    /set the end float +waits for Inner cover on/,
  ),
  step('back on', 'space enter space', /What is in your hand\?/),
  step('all in', 'm a', /All in, 3 of them/),
  step('inch-pounds', 'enter c «88 in-lb, manual 6-2» enter', /88/),
  step('snug', clicks(3), /Next pass, 2 of 2: full/),
  step('a thread goes', 'enter !', /STOP|Turn no further/),
  step('the others are left as they are', 'space', /how it is mended/),
  step('its bolt comes out', 'm enter', /1 is out\. m when its thread is mended/),
  step('mended', 'm «wire insert M6 x 9» enter', /1 is mended: its bolt goes in/),
  step('and goes in', 'p m space', /All in|Next pass|tighten/),
  step('all once more: snug', `enter ${clicks(3)}`, /Next pass, 2 of 2: full/),
  step('and full', `enter ${clicks(3)}`, /All 3 are tight, 88 in-lb/),
];

/** Nothing planned: it will not start. */
export const NO_START: Step[] = [
  START("Won't start, Tarn 125", 'won'),
  step('a test', '+ «plug: blue spark?» enter m', /blue spark\?/),
  step(
    'one with its limit',
    '+ «coil 0.8..1.2 ohm» enter enter',
    /coil +to test \(0\.8\.\.1\.2 ohm\)/,
  ),
  step('a thought', '+ «float needle leaks» enter n', /float needle leaks/i),
  step('no spark', 't enter - «no spark» enter', /no spark/),
  step('to the job', 'enter', /plug: blue spark\? +failed/),
  step('what is to be tested', 't', /2 of 2 not passed/),
  step('the coil is open', 'down enter - «0.4 ohm» enter', /coil +failed[\s\S]*0\.4 ohm/),
  step('to the job again', 'enter', /coil +failed: beyond its limit, 0\.4 ohm/),
  step('a coil to buy', '+ «coil, Tarn 2207» enter b', /[Tt]o buy: coil, Tarn 2207/),
];
