/**
 * A text in signs, what a reader takes for one character, each with the columns that it takes: however long the text is,
 * no more of it is looked at than is asked for.
 */
import stringWidth from 'string-width';
import { pattern } from '../../model/pattern.ts';

/** Between two of these there is always a border (UAX #29: nothing joins them), but for those of `JOINS`. */
const ALONE = pattern(() => /^[\p{L}\p{N}\p{P}\p{S}\p{Zs}]$/u);
/** Letters that join with the one before or behind: Hangul in parts, vowels and sound marks that count as letters. */
const JOINS = /[\u0d4e\u0e33\u0eb3\u1100-\u11ff\ua960-\ua97c\ud7b0-\ud7fb\uff9e\uff9f]/;

/** Pictures, beyond the first table; what colours them joins. */
const PICTURES = { from: 0x1f300, to: 0x1faff };
const COLOURS = { from: 0x1f3fb, to: 0x1f3ff };
/** Rare ideographs: each takes two columns. */
const RARE = { from: 0x20000, to: 0x3fffd };
const isIn = (code: number, { from, to }: typeof RARE) => code >= from && code <= to;

const JOINING = -1;
const FIRST_TABLE = 0x10000;
/** By character, of the first table and of the pictures: 0 not met yet; `MAY_JOIN`; else its columns plus 1. */
const met = new Uint8Array(FIRST_TABLE + PICTURES.to - PICTURES.from + 1);
const MAY_JOIN = 0xff;

/** Columns of a character that joins with none of its like; or `JOINING`. */
function alone(code: number): number {
  if (code < 0x7f && code >= 0x20) return 1;
  let place = code;
  if (code >= FIRST_TABLE) {
    if (isIn(code, RARE)) return 2;
    if (!isIn(code, PICTURES)) return JOINING;
    place = FIRST_TABLE + code - PICTURES.from;
  }
  let is = met[place] ?? MAY_JOIN;
  if (is === 0) {
    const sign = String.fromCodePoint(code);
    const joins = code >= FIRST_TABLE ? isIn(code, COLOURS) : !ALONE.test(sign) || JOINS.test(sign);
    is = joins ? MAY_JOIN : stringWidth(sign) + 1;
    met[place] = is;
  }
  return is === MAY_JOIN ? JOINING : is - 1;
}

/** Columns of the signs met: to count them takes longest. */
const known = new Map<string, number>();
const MOST_KNOWN = 4096;
/** Code units. A longer sign is not kept. */
const LONGEST_KNOWN = 32;

function columnsOf(sign: string): number {
  const had = known.get(sign);
  if (had !== undefined) return had;
  const columns = stringWidth(sign);
  if (sign.length > LONGEST_KNOWN) return columns;
  if (known.size >= MOST_KNOWN) known.clear();
  known.set(sign, columns);
  return columns;
}

const graphemes = new Intl.Segmenter('en', { granularity: 'grapheme' });
/** Code units that are cut into graphemes at a time. */
const PART = 1024;

interface Part {
  from: number;
  to: number;
  signs: Intl.Segments;
}

export interface Signs {
  /** Where the sign ends that was read last. */
  readonly end: number;
  /** Columns of the sign that begins at `at`, which is a border between two, in code units. */
  read(at: number): number;
}

export function signsOf(text: string): Signs {
  let end = 0;
  let part: Part | null = null;
  /** The character behind the sign that was read last, which is asked for next. */
  let ahead = -1;
  let aheadColumns = JOINING;

  /** Columns of a sign that may be several characters: ever longer parts are segmented, until one shows where it ends. */
  function joined(at: number): number {
    for (let size = PART; ; size *= 2) {
      if (part && at < part.to) {
        const { segment = '' } = part.signs.containing(at - part.from) ?? {};
        end = at + segment.length;
        // More than one code unit follows it in the part, so its end is certain: a single one may be half a character.
        if (end + 1 < part.to || part.to === text.length) return columnsOf(segment);
      }
      const to = Math.min(at + size, text.length);
      part = { from: at, to, signs: graphemes.segment(text.slice(at, to)) };
    }
  }

  return {
    get end() {
      return end;
    },
    read(at) {
      const code = text.codePointAt(at) ?? 0;
      const columns = at === ahead ? aheadColumns : alone(code);
      if (columns === JOINING) return joined(at);
      const next = at + (code > 0xffff ? 2 : 1);
      ahead = next;
      aheadColumns = next < text.length ? alone(text.codePointAt(next) ?? 0) : 0;
      if (aheadColumns === JOINING) return joined(at);
      end = next;
      return columns;
    },
  };
}
