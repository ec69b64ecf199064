/** What happened, as prose, with git's history where there is one. */
import { commitsOf } from '../../diary/git/commits.ts';
import { type Chapter, chapters, type ProseLine } from '../../diary/prose.ts';
import type { Job } from '../../model/types.ts';
import { answer, type Call } from '../base/command.ts';
import { openJob } from '../base/open-job.ts';

export async function run(call: Call) {
  const opened = openJob(call.words[0] ?? '', call.world);
  if ('answer' in opened) return opened.answer;
  const told = chapters(opened.job, await commitsOf(opened.file));
  return answer({ job: opened.job.upper.job, chapters: told }, text(opened.job, shown(call, told)));
}

/** For people: without what was taken back, and without git's short ids, unless they are asked for. */
function shown(call: Call, told: readonly Chapter[]): Chapter[] {
  const { all, commits } = call.options;
  return told.flatMap((chapter): Chapter[] => {
    const kept =
      all === true
        ? chapter.lines
        : chapter.lines.filter((line) => !line.undone && !line.takesBack);
    const lines = commits === true ? kept : kept.map((line) => ({ ...line, commit: null }));
    return lines.length === 0 ? [] : [{ ...chapter, lines }];
  });
}

function text(job: Job, told: readonly Chapter[]): string {
  const { upper } = job;
  const head = [
    [upper.job, upper.machine].filter((t) => t !== null).join('   '),
    ...(upper.complaint === null ? [] : [`Complaint: ${upper.complaint}`]),
    ...(upper.found === null ? [] : [`Found: ${upper.found}`]),
    ...(upper.done === null ? [] : [`Done: ${upper.done}`]),
  ];
  let day = '';
  const body = told.flatMap((chapter) => {
    const [date = '', from] = split(chapter.from);
    const [, to] = split(chapter.to);
    const until = from === to ? '' : ` to ${to}`;
    const today = date === day ? [] : ['', date];
    day = date;
    return [...today, '', `${chapter.title}, ${from}${until}`, ...linesSaid(chapter.lines)];
  });
  return [...head, ...body, ...(told.length === 0 ? ['', 'Nothing has happened yet.'] : [])].join(
    '\n',
  );
}

function linesSaid(lines: readonly ProseLine[]): string[] {
  return lines.map((line) => {
    const commit = line.commit === null ? '' : `  (${line.commit})`;
    return `  ${line.undone ? '[taken back] ' : ''}${line.say}${commit}`;
  });
}

function split(at: string): [date: string, time: string] {
  return [at.slice(0, 10), at.slice(11, 16)];
}
