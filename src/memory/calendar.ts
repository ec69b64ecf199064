/** What is due as a calendar file: RFC 5545. */
import { safe } from '../model/safe.ts';
import { sumOf } from '../model/sum.ts';
import { printInstant, readInstant } from '../model/time.ts';
import type { Due } from './due.ts';

/**
 * The text, each line ended by CR LF and folded at 75 octets (3.1). What has a day is an event of the whole day;
 * what waits for a distance or hours is something to do without a day. The same thing has the same UID each time, so
 * that a calendar that takes the file again changes it and does not add it.
 */
export function calendarText(all: readonly Due[], now: string): string {
  const stamp = stampOf(now);
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//putback//due//EN',
    'CALSCALE:GREGORIAN',
    ...all.flatMap((due) => partOf(due, stamp, now)),
    'END:VCALENDAR',
  ];
  return lines.map((line) => `${folded(line)}\r\n`).join('');
}

function partOf(due: Due, stamp: string, now: string): string[] {
  const name = `${due.file}\0${due.task}`;
  // What is due and has no day of its own stands on today.
  const day = due.due ?? (due.state === 'due' ? now.slice(0, 10) : null);
  const summary = [due.machine?.split(',')[0], due.say].filter((t) => t != null).join(': ');
  const more = [due.job, due.when, due.at && `at ${due.at}`, due.file].filter((t) => t);
  const kind = day === null ? 'VTODO' : 'VEVENT';
  return [
    `BEGIN:${kind}`,
    `UID:${sumOf(name)}${sumOf(`${name}\0${due.say}`)}@putback.invalid`,
    `DTSTAMP:${stamp}`,
    ...(day === null ? [] : [`DTSTART;VALUE=DATE:${day.replaceAll('-', '')}`]),
    `SUMMARY:${escaped(summary)}`,
    `DESCRIPTION:${escaped(more.join('\n'))}`,
    ...(day === null ? [] : ['TRANSP:TRANSPARENT']),
    `END:${kind}`,
  ];
}

/** UTC, `20260502T081105Z` (3.3.5, form 2). */
function stampOf(now: string): string {
  const { seconds = Number.NaN } = readInstant(now) ?? {};
  return printInstant({ seconds, offset: 0 }).replace('+00:00', 'Z').replace(/[-:]/g, '');
}

/** TEXT of 3.3.11: backslash, semicolon, comma and line break escaped; other controls have no place in it. */
function escaped(text: string): string {
  return safe(text)
    .replace(/[\\;,]/g, (c) => `\\${c}`)
    .replace(/\r?\n|\r/g, '\\n')
    .replace(/\p{Cc}/gu, ' ');
}

const MOST = 75;
const encoder = new TextEncoder();

/** At most 75 octets a line, no character parted, a blank before what goes on. */
function folded(line: string): string {
  const parts: string[] = [];
  let part = '';
  let size = 0;
  for (const c of line) {
    const octets = encoder.encode(c).length;
    if (size + octets > MOST) {
      parts.push(part);
      part = ' ';
      size = 1;
    }
    part += c;
    size += octets;
  }
  return [...parts, part].join('\r\n');
}
