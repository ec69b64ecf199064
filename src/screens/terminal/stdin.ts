/**
 * What a terminal sends, made fit for Ink.
 *
 * Four things go wrong between a keyboard and a program: the end of a paste gets lost (Ink would then wait
 * for it for ever, Ctrl-C included), a terminal answers a question that somebody else asked (the answer would
 * be typed), a mouse that was left on reports its clicks, and a key's escape sequence arrives in two pieces (`Esc`,
 * and then `[A` as text).
 * No clock here: `push` takes what came, `wait` says after how much silence `quiet` is to be called.
 */

import { functionKey } from './function-keys.ts';

const ESC = '\u{1B}';
const PASTE = `${ESC}[200~`;
const PASTE_END = `${ESC}[201~`;
/** Escape in a spelling that is complete in itself; Ink holds a bare ESC back for 20 ms. */
const ESCAPE_KEY = `${ESC}[27u`;

/** ms. The pieces of a sequence that was cut arrive closer than this, and a hand does not notice it. */
const ESCAPE_WAIT = 40;
/** ms. After Esc was given on: how long `[A` is still the rest of an arrow key and not typed. */
const TAIL_WAIT = 150;
/** ms of silence inside something that has an end, after which the end is lost. */
const END_WAIT = 400;
/** Characters. Longer pastes are cut: no text of a job is a fortieth of this. */
const PASTE_LIMIT = 1_000_000;
/** Characters. Longer answers than this are no answers. */
const REPLY_LIMIT = 8192;

const CSI = /^\x1b\[(?:\[[A-E]|\[[56]~|[235-8]\$|[0-?]*[ -/]*[@-Z\\-~])/;
const CSI_BEGUN = /^\x1b\[\[?[0-?]*[ -/]*$/;
/**
 * What a terminal tells of a mouse that an earlier program left on (xterm's control sequences, "Mouse Tracking"):
 * three characters behind `CSI M`, or numbers with `<` or without before `M` or `m`.
 */
const MOUSE = /^\x1b\[(?:M[\s\S]{3}|<[\d;]*[Mm]|\d+;\d+;\d+M)/;
const MOUSE_BEGUN = /^\x1b\[M[\s\S]{0,2}$/;
const SS3 = /^\x1bO[0-9;]*[@-~]/;
const SS3_BEGUN = /^\x1bO[0-9;]*$/;
/** OSC, DCS and APC, by what their answers begin with; a chord such as Alt-] has none of that behind it. */
const REPLY = /^\x1b(?:\]\d|P[\d>!|]|_G)/;
const REPLY_BEGUN = /^\x1b[\]P_]$/;
const REPLY_END = /\x07|\x1b\\|\x9c/;
/** The rest of a key whose ESC was already given on. */
const TAIL = /^(?:\[[0-9;]*[A-Za-z~^$]|\[\[[A-E]|O[A-DFHMPQRS])/;
const TAIL_BEGUN = /^(?:\[[0-9;]*|\[\[|O)$/;

export interface Cleaner {
  /** What came in; answers what is to be handed on now. */
  push(text: string): string;
  /** Silence in ms after which `quiet` is due; null when nothing waits. */
  wait(): number | null;
  /** There was silence: answers what is to be handed on now. */
  quiet(): string;
}

export function createCleaner(): Cleaner {
  let held = '';
  let heldFor = 0;
  /** Parts of the paste that is coming in; null outside one. */
  let paste: string[] | null = null;
  let pasted = 0;
  let escapeGiven = false;

  function hold(text: string, ms: number): string {
    held = text;
    heldFor = ms;
    return '';
  }

  function takePaste(text: string): void {
    const room = Math.max(0, PASTE_LIMIT - pasted);
    paste?.push(text.slice(0, room));
    pasted += Math.min(room, text.length);
  }

  function endPaste(): string {
    const text = (paste ?? []).join('').replaceAll(ESC, '');
    paste = null;
    pasted = 0;
    return PASTE + text + PASTE_END;
  }

  /** Inside a paste: up to its end, or all but what may be the beginning of the end. */
  function inPaste(text: string): string {
    const end = text.indexOf(PASTE_END);
    if (end >= 0) {
      takePaste(text.slice(0, end));
      return endPaste() + outside(text.slice(end + PASTE_END.length));
    }
    const cut = text.lastIndexOf(ESC);
    const maybe = cut >= 0 && PASTE_END.startsWith(text.slice(cut)) ? cut : text.length;
    takePaste(text.slice(0, maybe));
    return hold(text.slice(maybe), END_WAIT);
  }

  function outside(text: string): string {
    let out = '';
    let rest = text;
    const lost = rest.indexOf(PASTE_END);
    const begins = rest.indexOf(PASTE);
    // The end of a paste that was given up before: what stands before it was never typed.
    if (lost >= 0 && (begins < 0 || lost < begins)) {
      if (lost > 0) {
        paste = [rest.slice(0, lost)];
        out = endPaste();
      }
      rest = rest.slice(lost + PASTE_END.length);
    }
    for (;;) {
      const at = rest.indexOf(ESC);
      if (at < 0) return out + rest;
      out += rest.slice(0, at);
      rest = rest.slice(at);
      const step = sequence(rest);
      if (step === null) return out;
      out += step.out;
      rest = rest.slice(step.length);
      if (paste !== null) return out + inPaste(rest);
    }
  }

  /** What to do with the ESC at the start of `rest`; null: it waits for more. */
  function sequence(rest: string): { out: string; length: number } | null {
    const mouse = MOUSE.exec(rest);
    if (mouse !== null) return { out: '', length: mouse[0].length };
    if (MOUSE_BEGUN.test(rest)) return wait(rest, END_WAIT);
    const whole = CSI.exec(rest) ?? SS3.exec(rest);
    if (whole !== null) {
      const length = whole[0].length;
      const named = functionKey(whole[0]);
      if (named !== null) return { out: named, length };
      if (whole[0] !== PASTE) return { out: whole[0], length };
      paste = [];
      return { out: '', length };
    }
    if (rest === ESC) return wait(rest, ESCAPE_WAIT);
    if (CSI_BEGUN.test(rest) || SS3_BEGUN.test(rest) || REPLY_BEGUN.test(rest)) {
      return wait(rest, END_WAIT);
    }
    if (REPLY.test(rest)) return reply(rest);
    // Alt with an arrow, as some terminals spell it; Ink knows it, and nothing is bound to it.
    if (rest.startsWith(ESC + ESC)) {
      const chord = CSI.exec(rest.slice(1)) ?? SS3.exec(rest.slice(1));
      return chord === null || chord[0] === PASTE
        ? { out: ESCAPE_KEY, length: 1 }
        : { out: ESC + chord[0], length: 1 + chord[0].length };
    }
    const second = rest.codePointAt(1) ?? 0;
    const length = second > 0xffff ? 3 : 2;
    // A sequence that broke off (`ESC [ é`): its beginning says nothing any more.
    if (rest[1] === '[' || rest[1] === 'O') return { out: '', length };
    return { out: rest.slice(0, length), length };
  }

  function wait(rest: string, ms: number): null {
    hold(rest, ms);
    return null;
  }

  function reply(rest: string): { out: string; length: number } | null {
    const end = REPLY_END.exec(rest);
    const next = rest.indexOf(ESC, 1);
    // Another sequence begins before the answer ends: the answer is lost, the keys behind it are not.
    if (next > 0 && next < rest.length - 1 && (end === null || next < end.index)) {
      return { out: '', length: next };
    }
    if (end !== null) return { out: '', length: end.index + end[0].length };
    if (rest.length > REPLY_LIMIT) return { out: '', length: rest.length };
    return wait(rest, END_WAIT);
  }

  /** Straight after Esc was given on: the rest of an arrow key is swallowed. */
  function afterEscape(text: string): string {
    const tail = TAIL.exec(text);
    if (tail === null && TAIL_BEGUN.test(text)) return hold(text, TAIL_WAIT);
    escapeGiven = false;
    return outside(tail === null ? text : text.slice(tail[0].length));
  }

  return {
    push(text) {
      const all = held + text;
      held = '';
      if (paste !== null) return inPaste(all);
      return escapeGiven ? afterEscape(all) : outside(all);
    },
    wait() {
      if (paste !== null) return END_WAIT;
      if (held !== '') return heldFor;
      return escapeGiven ? TAIL_WAIT : null;
    },
    quiet() {
      const rest = held;
      held = '';
      if (paste !== null) return endPaste();
      if (escapeGiven) {
        escapeGiven = false;
        return rest;
      }
      if (!rest.startsWith(ESC)) return rest;
      // A lone Esc, or one of the chords Alt-[ and Alt-O, which nothing is bound to.
      escapeGiven = rest === ESC;
      return escapeGiven ? ESCAPE_KEY : '';
    },
  };
}
