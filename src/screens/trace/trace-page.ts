/** The trace of a fault, drawn: what it may be, what can be looked at, and what the marked look would tell. */
import type { Job } from '../../model/types.ts';
import { list } from '../../model/words.ts';
import * as words from '../../plan/trace/say.ts';
import { onlyWarmSaid } from '../../plan/trace/starts.ts';
import { checkSaid, isUnmended } from '../../plan/trace/traced.ts';
import type { Look } from '../../trace/types.ts';
import { type ListLine, listLines, middleRows, type Page } from '../base/page.ts';
import { bold, hanging, type Line, line, pad, type Style, span, width, wrap } from '../kit/text.ts';
import { many } from '../kit/words.ts';
import type { OnTrace } from './on-trace.ts';

export function drawTrace(here: OnTrace): Page {
  const { state, job, now, names, marked } = here;
  const drawn = rowLines(here, state.columns);
  const made = now.looks.length;
  const around = {
    left: line(bold(job.upper.job)),
    right: line(made === 0 ? 'what it may be' : many(made, 'look')),
    // Where not all rows are in sight, how many there are.
    under: line(
      drawn.length > middleRows(state.rows) - 1
        ? `${names.indexOf(marked ?? '') + 1} of ${names.length}`
        : (job.upper.machine ?? ''),
    ),
    above: [[]],
    say: names.length === 0 ? [] : sayLines(here),
    most: MOST,
  };
  if (names.length === 0) {
    const none = [
      'Nothing is listed that it may be.',
      'n lists what it may be and what can be looked at, a line each; l takes a list to start from.',
    ];
    const lines = (columns: number) => none.flatMap((text) => [[], ...wrap(text, columns)]);
    return { kind: 'plain', ...around, middle: lines };
  }
  return { kind: 'list', ...around, counted: true, middle: () => drawn };
}

/** Lines under the rows at most. */
const MOST = 11;
const MARK = 2;
const GAP = 3;
/** Columns of a look at least. */
const LEAST = 20;
const LOUD: Style = { colour: 'red', bold: true };

const between = (what: Line): ListLine => ({ line: what, row: null, marked: false });

function rowLines(
  { job, suspects, looks, now, marked, names }: OnTrace,
  columns: number,
): ListLine[] {
  const share = Math.max(0, ...suspects.map((row) => width(row.share)));
  const mark = (name: string | undefined) => span(name === marked ? '> ' : '  ', { bold: true });
  const rows = suspects.flatMap((row, i) => {
    const off = ['cleared', 'not alone', 'not it'].includes(row.share);
    const first = line(mark(names[i]), pad(line(row.share), share + GAP));
    const style = off ? { struck: true } : { bold: names[i] === marked };
    const what = hanging(first, row.what, columns, style);
    const margin = line(' '.repeat(MARK + share + GAP));
    const by = row.by === null ? [] : hanging(margin, row.by, columns);
    return listLines([...what, ...by], i, names[i] === marked);
  });
  if (looks.length === 0) return rows;
  const times = looks.map((look) => whenSaid(job, look, now.looks));
  const room = Math.max(0, ...times.map((said) => width(said)));
  const next = now.mending ? null : now.next?.check;
  const wide = Math.max(LEAST, columns - MARK - room - GAP);
  const checks = looks.flatMap((look, n) => {
    const i = suspects.length + n;
    const style = { bold: names[i] === marked || look.check === next };
    const said = wrap(checkSaid(job, look.check), wide, style);
    const lines = said.map((text, k) =>
      k === 0
        ? line(mark(names[i]), pad(text, wide + GAP), span(times[n] ?? '', style))
        : line('  ', text),
    );
    return listLines(lines, i, names[i] === marked);
  });
  return [...rows, between([]), between(line('  To look at')), ...checks];
}

/** How it came out last; while it was not looked at, what it takes, with what must come off first. */
function whenSaid(
  job: Job,
  { check, minutes, opens }: Look,
  made: OnTrace['now']['looks'],
): string {
  const last = made.findLast((look) => look.check === check);
  if (last) return [last.reading, last.says, last.at.slice(11, 16)].filter((t) => t).join(', ');
  const takes = words.takesSaid(job, check, minutes, 'minutes');
  return opens.length === 0 ? takes : `${takes}, ${many(opens.length, 'piece')} off first`;
}

function sayLines(here: OnTrace): Line[] {
  const { state, job, now, look, suspect, tries } = here;
  const { columns } = state;
  const { conflict } = now.answer;
  // Of what was found and put right, only how that stands.
  const done = now.found.some((one) => one.suspect === suspect && one.mend && !isUnmended(one));
  const flow = (texts: readonly string[], style: Style = {}) =>
    texts.flatMap((text) => wrap(text, columns, style));
  const open = tries.map(({ put, suspect: of, how }) => {
    const went = how === null ? 'how did it go?' : 'did the old one go back?';
    return `${put} is in for ${words.suspectSaid(job, of)}: ${went}`;
  });
  const two = tries.length > 1 ? ['Two things are changed at once: put one back first.'] : [];
  return [
    ...flow(two, LOUD),
    ...flow(open),
    ...(look ? lookLines(here, look) : []),
    ...(suspect === null || done ? [] : suspectLines(job, suspect, columns)),
    ...flow(words.endSaid(job, now), { bold: true }),
    ...(conflict ? flow(words.conflictSaid(job, conflict)) : []),
    ...flow(words.besideSaid(job, now)),
  ];
}

function lookLines(here: OnTrace, look: Look): Line[] {
  const { state, job, now } = here;
  const { columns } = state;
  const spec = job.upper.checks.get(look.check);
  const cautions = words.lookCautions(job, look.check);
  const warm = onlyWarmSaid(job.upper);
  const isNext = !now.mending && now.next?.check === look.check;
  const shown = isNext && now.next ? now.next : look;
  const proving = isNext && now.next !== now.answer.next;
  // Of what is left alone, a look shows whether it is that or something else.
  const sure = now.answer.proof?.check === look.check;
  const tells = sure || (shown.good.length > 0 && shown.bad.length > 0);
  const expected = isNext && !proving ? [words.expectedSaid(now), words.untimedSaid(job, now)] : [];
  return [
    ...wrap(`${isNext ? 'Look next: ' : ''}${checkSaid(job, look.check)}`, columns, { bold: true }),
    // What may hurt stands before what it is good for.
    ...cautions.flatMap((text) => wrap(text, columns, LOUD)),
    ...(isNext ? words.onceMoreSaid(now).flatMap((text) => wrap(text, columns)) : []),
    ...(warm === null ? [] : wrap(warm, columns)),
    ...answerLines(here, shown, proving),
    ...(tells || isNext ? [] : wrap('It tells nothing more now.', columns)),
    ...words
      .needsSaid(job, { ...shown, check: look.check })
      .filter((text) => !cautions.includes(text) && text !== warm)
      .flatMap((text) => wrap(text, columns)),
    ...(spec?.limit ? wrap(`Limit: ${spec.limit}.`, columns) : []),
    ...expected.filter((text) => text !== '').flatMap((text) => wrap(text, columns)),
  ];
}

/** What either key would say: which of them means the fault is not left to be guessed. */
function answerLines({ state, job, now }: OnTrace, look: Look, proving: boolean): Line[] {
  const { columns } = state;
  if (proving) {
    const { good, bad } = words.outcomesSaid(job, look, true);
    return [...hanging(line('  good: '), good, columns), ...hanging(line('  bad: '), bad, columns)];
  }
  const { good, bad } = words.answersSaid(job, look, now);
  return [
    ...hanging(line('  b, the fault shows: '), bad, columns),
    ...hanging(line('  g, as it should be: '), good, columns),
  ];
}

function suspectLines(job: Job, name: string, columns: number): Line[] {
  const spec = job.upper.suspects.get(name);
  if (!spec) return [];
  const part = spec.part === null ? null : (job.upper.buys.get(spec.part)?.what ?? spec.part);
  const rows = [
    spec.piece === null ? null : `Sits in: ${words.pieceSaid(job, spec.piece)}.`,
    part === null ? null : `Wants: ${part}.`,
    spec.takes === null ? null : `Putting it right takes ${spec.takes}.`,
    spec.note,
  ].filter((text) => text !== null);
  const shown = [...job.upper.checks.values()].filter(({ bad, along }) =>
    [...bad, ...along].includes(name),
  );
  const by = list(
    shown.map(({ check }) => check),
    'or',
  );
  return [...rows, ...(by === '' ? [] : [`It would come out bad at: ${by}.`])].flatMap((text) =>
    wrap(text, columns),
  );
}
