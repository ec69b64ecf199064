/** A kind of bolt in its two spellings: one line, `M6x25 flange, 8 mm`, or a mapping of its parts. */
import type { KindParts } from '../../model/keys/keys.ts';
import type { Kind } from '../../model/types.ts';
import { headShape } from './head.ts';
import { INCH, readLength } from './length.ts';
import { plainFractions, printNumber, tidy } from './numbers.ts';
import { isInch } from './sizes.ts';
import { readFront } from './spelling.ts';

/** What is looked for in a spelling, and not held against its large pattern where no sign of it is there. */
const mark = (sign: RegExp, whole: RegExp): Mark => ({
  exec: (text) => (sign.test(text) ? whole.exec(text) : null),
});
type Mark = Pick<RegExp, 'exec'>;

const LEFT = mark(/L\.?H|left/i, /(^|[\s-])(?:LH|L\.H\.?|left[- ]?hand(?:ed)?)(?=$|[\s,x×-])/i);
const ONCE = mark(/once/i, /(^|\s)once(?=$|\s)/i);
/** Marks of ISO 898-1, ISO 3506 and SAE J429; `class` or `grade` may stand before. */
const CLASS = mark(
  /\d\.\d|[A-F]\d|gr/i,
  /(^|[\s(])(?:(?:class|cl\.?)\s*)?((?:0?(?:4\.6|4\.8|5\.6|5\.8|6\.8|8\.8|9\.8)|0?1[02]\.9)|[A-F]\d-\d{2,3}|A[1-5]|(?:grade|gr\.?)\s*\d(?:\.\d)?)\)?(?=$|\s)/i,
);

function takeOut(text: string, pattern: Mark): { found: string | null; rest: string } {
  const hit = pattern.exec(text);
  if (!hit) return { found: null, rest: text };
  const rest = `${text.slice(0, hit.index)} ${text.slice(hit.index + hit[0].length)}`;
  return { found: hit[2] ?? hit[0].trim(), rest };
}

function words(text: string): string | null {
  return text.replace(/\s+/g, ' ').trim() || null;
}

/** `gr.5` is `grade 5`; marks keep their capitals. */
function normalClass(mark: string): string {
  const grade = /^(?:grade|gr\.?)\s*(.+)$/i.exec(mark);
  return grade ? `grade ${grade[1]}` : mark.toUpperCase();
}

/** Parts at commas that do not stand between two digits. */
function atCommas(text: string): string[] {
  if (!text.includes(',')) return [text.trim()];
  return text.split(/,(?!\d)|(?<!\d),/).map((part) => part.trim());
}

/** The parts without the one that is this and nothing else: `M8x20 hex, 13 mm, 10.9`; null: it is said already. */
function alone(
  parts: readonly string[],
  pattern: Mark | null,
): { found: string | null; rest: string[] } {
  if (pattern === null) return { found: null, rest: [...parts] };
  const at = parts.findIndex((part) => part !== '' && words(takeOut(part, pattern).rest) === null);
  if (at < 0) return { found: null, rest: [...parts] };
  return { found: takeOut(parts[at] ?? '', pattern).found, rest: parts.filter((_, i) => i !== at) };
}

/** `M8x30-10.9`, as standards write it. */
const DASHED_CLASS = /^\s*[-–]\s*(?=\d{1,2}\.\d\b|A[24]\b)/i;
/** `M6x25-30`, `M6x25 or M6x30`: one of them, and nobody knows which. */
const TWO_LENGTHS =
  /^\s*(?:[-–—](?!\s*\d{1,2}\.\d(?:\s|$))|\.{2,3}|…|to\b|or\b)\s*(?:M\d[\d.,]*\s*[x×]\s*)?\d/i;

const asksTwoLengths = (rest: string): boolean =>
  /^\s*[-–—.…to]/i.test(rest) && TWO_LENGTHS.test(rest);

/**
 * The short spelling: thread x length under the head; then class, `LH`, `once` and the words of the head, up to
 * the first comma; then the tool; then anything else. Class, `LH` and `once` may stand behind a comma of their own. What
 * it cannot read stays null, and `text` keeps all.
 */
export function readKind(letter: string, text: string): Kind {
  const [spec = '', ...behind] = atCommas(plainFractions(text).trim());
  const left = takeOut(spec, LEFT);
  const read = readFront(left.rest.trim());
  const front = asksTwoLengths(read.rest) ? { ...read, length: null, lengthText: null } : read;
  const dashed = /[-–]/.test(read.rest);
  const once = takeOut(dashed ? read.rest.replace(DASHED_CLASS, ' ') : read.rest, ONCE);
  const named = takeOut(once.rest, CLASS);
  const said = words(named.rest);
  const hand = alone(behind, left.found === null ? LEFT : null);
  const used = alone(hand.rest, once.found === null ? ONCE : null);
  const marked = alone(used.rest, named.found === null ? CLASS : null);
  const [tool = '', ...more] = marked.rest;
  const classed = named.found ?? marked.found;
  const known = front.thread !== null || front.length !== null || headShape(said) !== null;
  return {
    letter,
    text,
    thread: front.thread,
    length: front.length,
    lengthText: front.lengthText,
    head: known ? said : null,
    tool: words(tool),
    class: classed === null ? null : normalClass(classed),
    threaded: null,
    leftHand: (left.found ?? hand.found) !== null,
    once: (once.found ?? used.found) !== null,
    note: words(more.join(', ')),
  };
}

/**
 * A figure behind the thread that may be a length, and was not read as one: `25` of `1/4-20 x 25`, `25 mm` of `M6 25 mm`; null
 * where there is none, or the length is known.
 */
export function unreadLength({ thread, length, lengthText, head }: Kind): string | null {
  if (length !== null || thread === null) return null;
  if (lengthText !== null) return lengthText;
  const odd = /^(?:or |[-–/.]*) ?[\d½¼¾]|[x×*] ?[?~\d]|^x$/i.test(head ?? '');
  return odd && !/^-? ?(?:[3-9][a-h]){1,2}$|^[123][ab]$/i.test(head ?? '') ? head : null;
}

/** A kind of which nothing is known but its length in mm. */
export function unknownKind(letter: string, mm: number | null): Kind {
  const lengthText = mm === null ? null : `${mm}`;
  return { ...readKind(letter, ''), length: mm, lengthText };
}

const NO = new Set(['', 'false', 'no', 'off', 'n', '0']);

function isTrue(text: string | undefined): boolean {
  return text !== undefined && !NO.has(text.trim().toLowerCase());
}

/** The full spelling: every value a text. The thread may carry its length and `LH`. */
export function kindFromParts(letter: string, parts: KindParts): Kind {
  const front = readKind(letter, parts.thread ?? '');
  const thread = front.thread ?? words(parts.thread ?? '');
  const ownLength = words(parts.length ?? '');
  const bare = isInch(thread) ? 'in' : 'mm';
  const kind: Kind = {
    letter,
    text: '',
    thread,
    length: ownLength === null ? front.length : readLength(ownLength, bare),
    lengthText: ownLength ?? front.lengthText,
    head: words(parts.head ?? '') ?? front.head,
    tool: words(parts.tool ?? ''),
    class:
      words(parts.class ?? '') === null ? front.class : normalClass((parts.class ?? '').trim()),
    threaded: readLength(parts.threaded ?? ''),
    leftHand: isTrue(parts.lh) || front.leftHand,
    once: isTrue(parts.once) || front.once,
    note: words(parts.note ?? ''),
  };
  return { ...kind, text: printKind(kind) };
}

/** The short text of a kind, made from its parts; its own text when no part is known. */
export function printKind(kind: Kind): string {
  const size = sizeText(kind);
  const spec = words(
    [
      size,
      kind.class ?? '',
      kind.leftHand ? 'LH' : '',
      kind.once ? 'once' : '',
      kind.head ?? '',
    ].join(' '),
  );
  return [spec, kind.tool, kind.note].filter((part) => part !== null).join(', ') || kind.text;
}

function sizeText(kind: Kind): string {
  const { thread, lengthText } = kind;
  if (thread === null) {
    if (lengthText === null) return '';
    return `${/^[\d.,]+$/.test(lengthText) ? `${lengthText} mm` : lengthText} long`;
  }
  if (lengthText === null) return thread;
  return /^M[\d.]/.test(thread) ? `${thread}x${lengthText}` : `${thread} x ${lengthText}`;
}

/** Bolts in inches come in sixteenths. */
function inSixteenths(mm: number): string | null {
  const n = tidy((mm / INCH) * 16);
  if (!Number.isInteger(n)) return null;
  const whole = Math.floor(n / 16);
  let over = n % 16;
  let under = 16;
  while (over > 0 && over % 2 === 0) {
    over /= 2;
    under /= 2;
  }
  if (over === 0) return String(whole);
  return whole === 0 ? `${over}/${under}` : `${whole}-${over}/${under}`;
}

/** The same bolt in another length (mm, null: not known), for a new kind beside its neighbour; its text is made anew. */
export function withLength(kind: Kind, mm: number | null, letter: string = kind.letter): Kind {
  const length = mm === null ? null : tidy(mm);
  const inches =
    length !== null && isInch(kind.thread)
      ? (inSixteenths(length) ?? `${printNumber(length)} mm`)
      : null;
  const lengthText = length === null ? null : (inches ?? printNumber(length));
  const next = { ...kind, letter, length, lengthText };
  return { ...next, text: printKind({ ...next, text: '' }) };
}

/** A kind's length as somebody wrote it, with its unit: `25 mm`, `1-1/2 in`; null where none is said. */
export function lengthSaid(kind: Pick<Kind, 'length' | 'lengthText'> | undefined): string | null {
  if (!kind || kind.length === null) return null;
  const text = kind.lengthText ?? `${kind.length}`;
  return /^[\d.,]+$/.test(text) ? `${text} mm` : text;
}
