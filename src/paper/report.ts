/**
 * The report for the owner, or for the sale: what was wrong, what was found and done, what was measured, how each joint
 * was made, and what was not done. It tells what was seen and noted; it proves nothing, and says so.
 */

import { MAKER_FIRST } from '../bolt/torque/cautions.ts';
import { livingOf } from '../job/fold/living-of.ts';
import { idOf } from '../memory/machine.ts';
import { secondsOf } from '../model/time.ts';
import type { Job } from '../model/types.ts';
import { NO_READING } from '../model/verbs/verbs.ts';
import { capital, list, listPieces } from '../model/words.ts';
import { buyList } from '../plan/buy/list.ts';
import { saidBack } from '../plan/buy/say.ts';
import { isHere } from '../plan/buy/state.ts';
import { CARES, caresOf } from '../plan/care/care.ts';
import { sayStepName } from '../plan/order/say.ts';
import { plan } from '../plan/plan.ts';
import { type TestItem, testList } from '../plan/tests/testlist.ts';
import { looksOf } from '../plan/trace/looks.ts';
import { suspectSaid } from '../plan/trace/say.ts';
import { checkSaid } from '../plan/trace/traced.ts';
import type { Ask, NoPaper, Paper } from './ask.ts';
import { earlierRounds } from './earlier-rounds.ts';
import { followsFrom } from './follow.ts';
import { JOINT_FIELDS, jointRecords } from './joint-record.ts';
import { joined, type Markup, m, t } from './markup.ts';
import { page } from './page.ts';
import { dayOf, ofWhat, unreadOn } from './said.ts';

/** A photograph as the page shows it. */
export interface ReportPicture {
  piece: string | null;
  /** Its name, when it was taken, and a word beside it. */
  name: string;
  taken: string;
  says: string | null;
  /** A data: address or a relative one, made by putback; null: it cannot be shown here, `why` says it. */
  source: string | null;
  why: string;
}

export interface ReportAsk extends Omit<Ask, 'piece' | 'job'> {
  /** Several jobs of one machine make one book, in this order. */
  jobs: readonly Job[];
  by: string | null;
  /** Of each job. */
  pictures: readonly (readonly ReportPicture[])[];
  inside: boolean;
}

/** What machine it is, without what its counter showed that day: `Hollin 400 Twin, 1998`. */
export function machineOf(job: Job): string | null {
  const said = job.upper.machine;
  if (said === null) return null;
  const parts = said.split(',').map((p) => p.trim());
  return parts
    .filter((p) => !COUNTER.test(p))
    .join(', ')
    .toLowerCase();
}
/** By its number where both files say that; else by what it is called, its year with it. */
function isOneMachine(a: Job, b: Job): boolean {
  const [idA, idB] = [idOf(a.upper.machineId), idOf(b.upper.machineId)];
  return idA !== '' && idB !== '' ? idA === idB : machineOf(a) === machineOf(b);
}

const COUNTER = /^[\d\s.,’']+\s*(?:km|kilomet(?:er|re)s?|mi|miles?|h|hrs?|hours?)$/i;

export function report(ask: ReportAsk): Paper | NoPaper {
  const { jobs, size, now, pictures } = ask;
  const [first] = jobs;
  if (!first) return { code: 'no-job', say: 'Which job?' };
  const other = jobs.find((job) => !isOneMachine(job, first));
  if (other) {
    const called = ({ upper: { machine, machineId } }: Job) =>
      [machine, machineId].filter((s) => s !== null).join(', ');
    const say = `${other.upper.job} is about ${called(other) || 'a machine that it does not name'}, not about ${called(first) || 'the same'}: a book is of one machine. If it is one, write the same machine-id: into both files.`;
    return { code: 'other-machine', say };
  }
  const title = first.upper.machine ?? first.upper.job;
  const several = jobs.length > 1;
  const joints = jobs.some((job) => jointRecords(job, now, null).length > 0);
  const source = joints
    ? m`<p class="source">Fields of the joint record: ASME PCC-1, joint assembly records.</p>`
    : null;
  const body = m`<h1>${t(title)}</h1>
<p class="quiet">Record of ${several ? `${jobs.length} repairs` : 'a repair'}, ${dayOf(now)}. It tells what was seen and noted at the bench. It is no proof of what nobody looked at.</p>
${jobs.map((job, i) => m`<section${several ? m` class="sheet"` : null}>${jobBody(ask, job, pictures[i] ?? [])}</section>`)}
<div class="signed"><p class="quiet">${MAKER_FIRST} Local rules go before both.</p>
<p>Signed: <span class="fill"></span> Day: <span class="fill"></span></p>${source}</div>`;
  const shown = pictures.flat();
  const unshown = shown.filter((p) => p.source === null);
  return {
    html: page({
      title: `Record: ${title}`,
      size,
      body,
      style: STYLE,
      ...(shown.some((p) => p.source !== null)
        ? { pictures: ask.inside ? 'inside' : 'beside' }
        : {}),
    }),
    sheets: null,
    life: null,
    notes: unshown.map((p) => `${p.name} is not shown: ${p.why}`),
  };
}

const STYLE = `
.fill{display:inline-block;width:60mm;border-bottom:.3mm solid #000;height:8mm}
.source{font-size:7pt}
.signed{break-before:avoid;break-inside:avoid}
section > :is(ul,table):last-child{break-inside:avoid}
section.sheet:last-of-type{break-after:auto}
.quiet.joints{break-after:avoid}
.joint th{width:52mm;font-weight:normal}
.joint .fill{width:100mm;height:6mm}
.photos{display:grid;grid-template-columns:1fr 1fr;gap:4mm}
.photos figure{margin:0;break-inside:avoid}
.photos img{max-width:100%;max-height:90mm;display:block}`;

function jobBody(ask: ReportAsk, job: Job, pictures: readonly ReportPicture[]): Markup {
  const { upper } = job;
  return m`<h2>${t(upper.job)}</h2>${unreadOn(job)}
<table><tbody>${[
    ['Machine', upper.machine],
    ['Complaint', upper.complaint],
    ['Found', upper.found],
    ['Done', upper.done],
    ['From', span(job)],
  ].map(([name, text]) =>
    text == null ? null : m`<tr><th scope="row">${name ?? ''}</th><td>${t(text)}</td></tr>`,
  )}</tbody></table>
${looked(job)}
${workDone(job)}
${partsTable(ask, job)}
${measuredTable(job)}
${joints(ask, job)}
${bullets('Earlier rounds', earlierRounds(job))}
${tests(ask, job)}
${onTheWay(job)}
${corrected(job)}
${notDone(ask, job)}
${later(ask, job)}
${cautions(job)}
${photographs(pictures)}`;
}

function span(job: Job): string | null {
  const living = livingOf(job);
  const [from, to] = [living[0]?.at, living.at(-1)?.at].map((at) =>
    at === undefined ? null : dayOf(at),
  );
  if (from == null || to == null) return null;
  return from === to ? from : `${from} to ${to}`;
}

function table(
  title: string,
  head: readonly string[],
  rows: readonly (readonly (string | null)[])[],
) {
  if (rows.length === 0) return null;
  return m`<h3>${title}</h3><table><thead><tr>${head.map((h) => m`<th>${h}</th>`)}</tr></thead><tbody>${rows.map((row) => m`<tr>${row.map((cell) => m`<td>${cell === null ? '' : t(cell)}</td>`)}</tr>`)}</tbody></table>`;
}

function bullets(title: string, lines: readonly string[]): Markup | null {
  if (lines.length === 0) return null;
  return m`<h3>${title}</h3><ul>${lines.map((line) => m`<li>${t(line)}</li>`)}</ul>`;
}

const CAME_OUT = { good: 'good', bad: 'BAD', unclear: 'told nothing' };

/** How the fault was looked for: each look with its reading, what was changed to try, and what was found, in order. */
function looked(job: Job): Markup | null {
  const { looks, found } = looksOf(job);
  const made = looks.map((look) => ({
    at: look.at,
    row: [
      dayOf(look.at),
      checkSaid(job, look.check),
      look.limit,
      look.reading,
      CAME_OUT[look.says],
    ],
  }));
  const it = found.map(({ at, suspect }) => ({
    at,
    row: [dayOf(at), `Found: ${suspectSaid(job, suspect)}`, null, null, null],
  }));
  const rows = [...made, ...it].sort((a, b) => secondsOf(a.at) - secondsOf(b.at));
  const head = ['Day', 'What', 'Limit', 'Reading', 'Came out'];
  return table(
    'Finding the fault',
    head,
    rows.map(({ row }) => row),
  );
}

function workDone(job: Job): Markup | null {
  const pieces = [...job.pieces.values()].filter((p) => p.where !== 'home');
  const back = pieces.filter(
    (p) => p.away === 'no' && (p.where === 'tight' || p.where === 'tested' || p.fitted),
  );
  const tasks = [...job.tasks.values()].filter(
    ({ spec, done }) =>
      done !== null && (spec.verb === 'do' || spec.verb === 'decide' || spec.verb === 'wait'),
  );
  const mended = livingOf(job).filter((e) => e.verb === 'state' && e.value === 'mended');
  return m`${bullets('Work', [
    ...(pieces.length === 0 ? [] : [`Off or moved: ${listPieces(pieces)}.`]),
    ...(back.length === 0 ? [] : [`Back: ${listPieces(back)}.`]),
    ...mended.map((e) => {
      const piece = job.pieces.get(e.piece ?? '')?.spec.name ?? e.piece ?? '';
      const how = e.says === undefined ? '' : `: ${e.says}`;
      return `Mended: ${[piece, `hole ${list(e.hole ?? [])}`].join(', ')}${how}.`;
    }),
    ...tasks.map(({ spec, done, result }) => {
      const said = saidOf(job, spec.key);
      const told = [result ?? (done === 'done' ? null : done), said]
        .filter((text, i, all) => text !== null && all.indexOf(text) === i)
        .join(', ');
      return `${spec.say.text}${told === '' ? '' : `: ${told}`}`;
    }),
  ])}`;
}

function partsTable({ now }: ReportAsk, job: Job): Markup | null {
  const had = buyList(job, now).filter((b) => isHere(b.state) || saidBack(b) !== null);
  return table(
    'Parts',
    ['Part, number', 'Count', 'Price', 'State'],
    had.map((b) => [
      b.what,
      b.count,
      b.price,
      b.state === 'fitted' ? 'fitted' : `${b.state}; ${saidBack(b) ?? 'not fitted'}`,
    ]),
  );
}

function measuredTable(job: Job): Markup | null {
  const tasks = [...job.tasks.values()].filter((task) => task.was !== null || task.set !== null);
  return table(
    'Measured',
    ['What', 'Before', 'After', 'Limit'],
    tasks.map(({ spec, was, set }) => [spec.say.text, was, set, spec.limit?.text ?? null]),
  );
}

function joints({ now, by }: ReportAsk, job: Job): Markup | null {
  const records = jointRecords(job, now, by);
  if (records.length === 0) return null;
  return m`<h3>Joint record</h3>
<p class="quiet joints">An empty line: not noted, to be filled in by pen.</p>
${records.map(
  (record) =>
    m`<table class="joint"><thead><tr><th colspan="2"><b>${t(record.name)}</b>${record.complete ? null : m` <b>NOT COMPLETE</b>`}</th></tr></thead><tbody>${JOINT_FIELDS.map(
      (field) =>
        m`<tr><th>${field}</th><td>${record.fields[field].length === 0 ? m`<span class="fill"></span>` : joined(record.fields[field].map(t), m`<br>`)}</td></tr>`,
    )}</tbody></table>`,
)}`;
}

const VERDICTS = {
  passed: 'seen to be within',
  failed: 'FAILED',
  waits: 'not done',
  later: 'later',
  due: 'not done',
};

/** A reading may be a word beside it. */
function saidOf({ entries, living }: Job, test: string): string | null {
  const last = entries.findLast((e) => e.task === test && e.verb === 'done' && living.has(e.id));
  return last?.says ?? null;
}

/** What it failed by in earlier rounds: a pass that came later does not unsay it. */
function failedBefore({ entries, living }: Job, item: TestItem): (string | null)[][] {
  const all = entries.filter((e) => e.task === item.test && e.verb === 'done' && living.has(e.id));
  const shown = item.state === 'passed' || item.state === 'failed' ? all.slice(0, -1) : all;
  return shown.flatMap((e) => {
    if (e.value !== 'failed') return [];
    const result = e.result === 'failed' ? undefined : e.result;
    const showed = [result, e.says].filter((text) => text !== undefined);
    return [[item.say, e.limit ?? item.limit, showed.join(', ') || null, `FAILED, ${dayOf(e.at)}`]];
  });
}

/** How a reading was held against its limit, where it was let through. */
const JUDGED: Readonly<Record<string, string>> = {
  within: 'within',
  beyond: 'OUT OF LIMIT, let through with a reason',
  'by hand': 'judged by hand',
  [NO_READING]: 'PASSED WITHOUT A READING',
};

function tests({ now }: ReportAsk, job: Job): Markup | null {
  const rows = testList(job, now).flatMap((item) => {
    const judged = job.tasks.get(item.test)?.judged ?? null;
    const seen = item.limit === null ? 'seen, passed' : VERDICTS.passed;
    const passed = judged === null ? seen : (JUDGED[judged] ?? judged);
    const verdict = item.state === 'passed' ? passed : VERDICTS[item.state];
    const word = item.result === 'passed' || item.result === 'failed';
    const reading = word ? saidOf(job, item.test) : (item.result ?? item.set ?? item.was);
    return [...failedBefore(job, item), [item.say, item.limit, reading, verdict]];
  });
  return table('Tests', ['Test', 'Limit', 'Reading', 'Verdict'], rows);
}

/** Troubles and notes, as they were told. */
function onTheWay(job: Job): Markup | null {
  const lines = livingOf(job).flatMap((e) => {
    if (e.verb !== 'state' && e.verb !== 'note') return [];
    const piece = e.piece === undefined ? null : (job.pieces.get(e.piece)?.spec.name ?? e.piece);
    const where = [piece, e.hole ? `hole ${list(e.hole)}` : null]
      .filter((s) => s !== null)
      .join(', ');
    const says = e.says === undefined ? '' : ` (${e.says})`;
    return [`${dayOf(e.at)}${where === '' ? '' : `, ${where}`}: ${e.value}${says}`];
  });
  return bullets('Found on the way', lines);
}

function corrected(job: Job): Markup | null {
  return table(
    'Printed, and not so on this machine',
    ['Of', 'What', 'Printed', 'True here'],
    job.corrections.map((c) => [ofWhat(job, c), c.what, c.printed, c.says]),
  );
}

function notDone({ now }: ReportAsk, job: Job): Markup | null {
  const { heldBy, canDo } = plan(job, now);
  const because = livingOf(job).flatMap((e) =>
    e.because === undefined ? [] : [`All the same on ${dayOf(e.at)}, because “${e.because}”`],
  );
  return bullets('Not done', [
    ...canDo.map(({ say }) => say),
    ...heldBy.map(({ step, for: names }) => {
      const waits = names.map((name) => job.upper.buys.get(name)?.what ?? sayStepName(job, name));
      return `${capital(sayStepName(job, step))}${waits.length === 0 ? '' : `: waits for ${list(waits)}`}`;
    }),
    ...because,
  ]);
}

function later({ now }: ReportAsk, job: Job): Markup | null {
  return bullets('To look at again', followsFrom(job, now));
}

function cautions(job: Job): Markup | null {
  const cares = [...job.pieces.values()]
    .filter((p) => p.where !== 'home')
    .flatMap((p) => caresOf(p.spec).care.map((care) => `${p.spec.name}: ${CARES[care].say}`));
  return bullets('Cautions', cares);
}

function photographs(pictures: readonly ReportPicture[]): Markup | null {
  if (pictures.length === 0) return null;
  return m`<h3>Photographs</h3><div class="photos">${pictures.map(
    (p) =>
      m`<figure>${p.source === null ? m`<p>Not shown: ${t(p.why)}</p>` : m`<img src="${p.source}" alt="${p.says ?? p.name}">`}<figcaption>${t([p.piece, p.taken.slice(0, 16).replace('T', ' '), p.says].filter((s) => s !== null).join(' · '))}</figcaption></figure>`,
  )}</div>`;
}
