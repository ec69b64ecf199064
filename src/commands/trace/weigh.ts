/** Renew it now or leave it: what it turns on. */

import { FIGURES, type FigureTexts, figureTexts } from '../../job/form/typed-figures.ts';
import { meant } from '../../job/judge/base/verdict.ts';
import type { Job } from '../../model/types.ts';
import { oddFigure } from '../../plan/trace/odd-figure.ts';
import { adviceSaid, figuresSaid } from '../../plan/trace/weigh-say.ts';
import { type WeighedJob, weighedOf } from '../../plan/trace/weighed.ts';
import { benchOf } from '../base/bench-of.ts';
import { type Answer, answer, type Call, misuse, optionText } from '../base/command.ts';
import { beside, mark } from '../base/mark.ts';
import { openJob } from '../base/open-job.ts';

export function run(call: Call): Answer | Promise<Answer> {
  const [name = '', key = ''] = call.words;
  const opened = openJob(name, call.world);
  if ('answer' in opened) return opened.answer;
  const { job, file } = opened;
  const hour = benchOf(call.world, file)?.hour ?? null;
  const of = weighedOf(job, key, hour);
  if (!of) {
    const asked = [...job.upper.tasks.values()].filter(({ verb }) => verb === 'decide');
    const say = job.upper.tasks.has(key)
      ? `${key} is no question to decide.`
      : `No task ${key} in this job.`;
    return misuse(
      'no-such-task',
      `${say}${meant(
        key,
        asked.map((task) => task.key),
      )}`,
      { task: key },
    );
  }
  const said = figuresSaidIn(call);
  const odd = oddFigure(said);
  if (odd) return misuse('bad-figure', `--${odd.figure}: ${odd.say}`, { figure: odd.figure });
  if (Object.keys(said).length > 0) {
    const figures = { ...figureTexts(job.upper.tasks.get(key)?.weigh), ...said };
    const wish = { do: 'figures', task: key, texts: figures } as const;
    return mark(call, { ...wish, ...beside(call) }, (result) => {
      const now = weighedOf(result.job, key, hour);
      return now ? adviceSaid(now).join('\n') : 'Noted.';
    });
  }
  return answerOf(job, of);
}

/** Those that the command line says; the others stay as the file has them. */
function figuresSaidIn(call: Call): FigureTexts {
  const said = FIGURES.flatMap((one) => {
    const text = optionText(call, one);
    return text === undefined ? [] : [[one, text] as const];
  });
  return Object.fromEntries(said);
}

function answerOf(job: Job, of: WeighedJob): Answer {
  const { weighed, safety, again, task: key } = of;
  const figures = safety.length > 0 ? { now: null, later: null, harm: null } : of;
  const json = {
    ...{ now: figures.now, later: figures.later, harm: figures.harm },
    turning: { chance: weighed.turning.chance },
    said: weighed.said && { chance: weighed.said.chance },
    advice: weighed.advice,
    unknown: weighed.unknown,
    ...{ by: weighed.by, turnsAt: weighed.turnsAt, hour: of.hour },
    notRead: of.unread.map(({ figure }) => figure),
    ...{ money: weighed.turning.money, time: weighed.turning.time },
    ...{
      safety,
      again: safety.length > 0 ? null : again,
      decided: job.tasks.get(key)?.done ?? null,
    },
  };
  const rows = figuresSaid(job, of);
  const wide = Math.max(...rows.map(({ what }) => what.length), 0);
  const table = rows.map(({ what, say }) => `  ${what.padEnd(wide)}   ${say}`);
  const done = job.tasks.get(key)?.done;
  const decided = done == null ? [] : [`Decided: ${job.tasks.get(key)?.result ?? done}.`];
  const parts = [[of.say], table, adviceSaid(of), decided].filter((lines) => lines.length > 0);
  return answer(json, parts.map((lines) => lines.join('\n')).join('\n\n'));
}
