/** What a question to decide is weighed by: into its task, where each stands behind its key. */
import type { Edit, Entry, Job, Verdict } from '../../../model/types.ts';
import {
  FIGURES,
  type FigureTexts,
  figuresLine,
  figureTexts,
  readFigures,
} from '../../form/typed-figures.ts';
import {
  already,
  meant,
  type Stamp,
  type Undone,
  type UndoWay,
  type Wished,
  write,
  wrong,
} from '../base/verdict.ts';

export function judgeFigures(job: Job, wish: Wished<'figures'>, stamp: Stamp): Verdict {
  const task = job.printed.tasks.get(wish.task);
  if (task?.verb !== 'decide') {
    const asked = [...job.upper.tasks.values()].filter(({ verb }) => verb === 'decide');
    const say = `No question ${wish.task} to decide.${meant(
      wish.task,
      asked.map(({ key }) => key),
    )}`;
    return wrong('no-such-task', say, { task: wish.task });
  }
  const before = figureTexts(task.weigh);
  const after: FigureTexts = {};
  for (const key of FIGURES) {
    const text = wish.texts[key]?.trim() ?? '';
    if (text !== '') after[key] = text;
  }
  const edits = changes(task.key, before, after);
  if (edits.length === 0) return already();
  const was = figuresLine(before);
  const what = { verb: 'figured', value: figuresLine(after), task: task.key } as const;
  return write(stamp, wish, { ...what, ...(was === '' ? {} : { was }) }, { edits });
}

function changes(task: string, before: FigureTexts, after: FigureTexts): Edit[] {
  return FIGURES.flatMap((key) => {
    const text = after[key] ?? null;
    return text === (before[key] ?? null) ? [] : [{ edit: 'figure', task, key, text } as const];
  });
}

/** As they were before, as long as nobody changed them since. */
export function figuredBack(job: Job, { task = '', value, was = '' }: Entry, way: UndoWay): Undone {
  const spec = job.printed.tasks.get(task);
  const now = figureTexts(spec?.weigh);
  const [from, to] = way === 'back' ? [value, was] : [was, value];
  if (spec && figuresLine(now) === from) {
    return { edits: changes(task, now, readFigures(to)), warnings: [] };
  }
  const say = `The figures of ${task} were changed in the file since: they stay as they are.`;
  return { edits: [], warnings: [{ code: 'file-changed', say }] };
}
