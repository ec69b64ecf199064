/** Jobs for the papers, from the text of a file. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fold } from '../../src/job/fold/fold.ts';
import { readJob } from '../../src/job/read.ts';
import type { Job, PieceNow } from '../../src/model/types.ts';

export const NOW = '2026-05-02T10:00:00+02:00';

export function jobOf(text: string): Job {
  const read = readJob(text, 'job.yaml');
  if (read.unreadable) throw new Error(read.faults.map((f) => f.say).join('\n'));
  return fold(read.upper, read.entries);
}

export function practice(name: string): Job {
  return jobOf(readFileSync(join(import.meta.dirname, '../../jobs', `${name}.yaml`), 'utf8'));
}

export function pieceIn(job: Job, key: string): PieceNow {
  const piece = job.pieces.get(key);
  if (!piece) throw new Error(`no piece ${key}`);
  return piece;
}

/** Texts that try to leave their place in a page, or to be read as what they are not. */
export const HOSTILE = [
  '<script>alert(1)</script>',
  '"><img src=x onerror=alert(1)>',
  "' onload='alert(1)",
  '</style><script>alert(2)</script>',
  '</title><svg onload=alert(3)>',
  '&lt;b&gt; &amp; &#x3c;i&#x3e;',
  ']]> --> <!-- <![CDATA[',
  'javascript:alert(4)',
  'url(http://example.invalid/x.png)',
  '@import "http://example.invalid/x.css";',
  'שמאל לימין abc',
  'متن فارسی می\u200cشود',
];

/** The same with what a YAML text can hold, in each place of a job where a text can stand. */
export function hostileJob(): Job {
  const q = (text: string) => JSON.stringify(text);
  const all = HOSTILE.join(' ');
  const controls = '\\u202ereversed \\u2066isolated \\x1b[2J \\u0085';
  const text = `${q(all).slice(0, -1)}${controls}"`;
  return jobOf(`putback: 1
job: ${text}
machine: ${text}
complaint: ${text}
found: ${text}
done: ${text}
bolts: {S: ${q(`M6x25 flange ${all}`)}, M: {thread: M8, length: 30, head: ${text}, tool: ${text}, class: ${text}, note: ${text}}}
pieces:
  cover:
    name: ${text}
    bolts: S M
    torque: ${q(`10 N·m ${all}`)}
    into: ${text}
    joint: ${text}
    loose: ${text}
    marks: ${text}
    routes: ${text}
    note: ${text}
    caution: ${text}
    tip: ${text}
    holes: {1: {note: ${text}}, 2: {torque: ${q(`8 N·m ${all}`)}}}
tasks:
  drain: {do: ${q(`Drain the oil ${all}`)}, before: cover off}
  look: {test: ${text}, limit: ${text}, when: ${text}, after: cover on}
  gap: {adjust: ${text}, limit: ${text}, while: cover off}
buy: {seal: {what: ${text}, price: ${text}, from: ${text}, once: true, for: cover on}}
diary:
  - {at: 2026-04-11T16:00:00+02:00, id: aaaaaaa1, piece: cover, out: "S M", tray: ${text}, says: ${text}}
  - {at: 2026-04-11T16:01:00+02:00, id: aaaaaaa2, piece: cover, removed: all, says: ${text}}
  - {at: 2026-04-11T16:02:00+02:00, id: aaaaaaa3, piece: cover, hole: 1, state: stuck, says: ${text}}
  - {at: 2026-04-11T16:03:00+02:00, id: aaaaaaa4, piece: cover, note: ${text}}
  - {at: 2026-04-11T16:04:00+02:00, id: aaaaaaa5, task: gap, done: done, was: ${text}, set: ${text}, result: ${text}}
  - {at: 2026-04-11T16:05:00+02:00, id: aaaaaaa6, buy: seal, done: here, tray: ${text}, says: ${text}}
  - {at: 2026-04-11T16:06:00+02:00, id: aaaaaaa7, piece: cover, hole: 2, in: M, because: ${text}}
  - {at: 2026-04-11T16:07:00+02:00, id: aaaaaaa8, piece: cover, hole: 2, tight: full, set: ${text}, says: ${text}}
  - {at: 2026-04-11T16:08:00+02:00, id: aaaaaaa9, piece: cover, corrected: torque, was: ${q(`10 N·m ${all}`)}, says: ${text}}
  - {at: 2026-04-11T16:09:00+02:00, id: aaaaaab1, task: drain, done: done, result: ${text}}
  - {at: 2026-04-11T16:10:00+02:00, id: aaaaaab2, piece: cover, inside: ${text}}
`);
}
