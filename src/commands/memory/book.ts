/** A machine's book: all its jobs, and what is in it now. */
import { join, resolve } from 'node:path';
import { errorCode } from '../../job/save/disk.ts';
import { jobsOn } from '../../memory/bench/jobs.ts';
import { type Book, bookOf } from '../../memory/book.ts';
import { near } from '../../model/nearword.ts';
import { quoted } from '../../model/safe.ts';
import { type Answer, answer, type Call, misuse } from '../base/command.ts';
import { noFolder } from '../base/open-job.ts';
import { noteUnread } from '../base/unread.ts';

export function run(call: Call): Answer {
  const [folder = '.', machine = ''] = call.words;
  try {
    const asked = { machine, machineId: machine, like: [] };
    const { jobs, unread, others } = jobsOn(resolve(call.world.folder, folder), asked);
    if (jobs.length === 0 && unread.length === 0) {
      const close = near(machine, others);
      const hint = close ? `Did you mean ${close}?` : `There are ${others.join('; ') || 'none'}.`;
      return {
        ...misuse('no-such-machine', `No job on ${machine} here. ${hint}`, { machine }),
        exit: 1,
      };
    }
    for (const { file, job } of jobs) noteUnread(call.world, join(folder, file), job);
    const book = bookOf(jobs.at(-1)?.job.upper.machine ?? machine, jobs);
    const lines = [
      ...bookLines(book),
      ...unread.map((f) => `Not read: ${f}. putback check ${quoted(join(folder, f))} says why.`),
    ];
    return answer({ ...book, ...(unread.length === 0 ? {} : { unread }) }, lines.join('\n'));
  } catch (error) {
    if (errorCode(error) === null) throw error;
    return noFolder(folder, call.world, error);
  }
}

function bookLines({ machine, reading, jobs, mended, parts, torques, open }: Book): string[] {
  const since = (day: string | null, job: string) => [day, job].filter((t) => t).join(', ');
  const block = (head: string, lines: string[]) =>
    lines.length === 0 ? [] : ['', head, ...lines.map((l) => `  ${l}`)];
  return [
    [machine, reading && `${reading.text}${reading.day ? ` on ${reading.day}` : ''}`]
      .filter((t) => t)
      .join('   '),
    ...block(
      'Jobs',
      jobs.flatMap(({ file, job, from, to, complaint, found, done }) => [
        `${[from, to !== from ? to : null].filter((t) => t).join(' to ') || 'not begun'}  ${job} (${file})`,
        ...[complaint, found, done].flatMap((t) => (t === null ? [] : [`    ${t}`])),
      ]),
    ),
    ...block(
      'Threads mended',
      mended.map((m) => `${m.name}: ${m.text} (${since(m.day, m.job)})`),
    ),
    ...block(
      'Parts',
      parts.map((p) => `${p.name ?? 'Machine'}: ${p.text} (${since(p.day, p.job)})`),
    ),
    ...block(
      'Last torque',
      torques.map((t) => `${t.name}: ${t.text} (${since(t.day, t.job)})`),
    ),
    ...block(
      'Open',
      open.map((o) => `${o.name ?? 'Machine'}: ${o.text} (${since(o.day, o.job)})`),
    ),
  ];
}
