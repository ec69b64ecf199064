/** Paper: a page that a browser prints, beside the job or where it is said. */

import { resolve } from 'node:path';
import { readLength } from '../../bolt/read/length.ts';
import { findUser, oddInUser } from '../../diary/user.ts';
import { near } from '../../model/nearword.ts';
import { safe } from '../../model/safe.ts';
import type { Job, PieceNow, RowItem } from '../../model/types.ts';
import {
  type Ask,
  isPaper,
  type NoPaper,
  PAPERS,
  type Paper,
  type PaperName,
  PRIVATE,
  type Private,
} from '../../paper/ask.ts';
import { blank } from '../../paper/blank.ts';
import { card } from '../../paper/card.ts';
import { type BookMade, book, writeBook } from '../../paper/desk/book.ts';
import { openFile } from '../../paper/desk/open.ts';
import { besideJob } from '../../paper/desk/print.ts';
import { labels, readLabel } from '../../paper/labels.ts';
import { SIZES, type SizeName } from '../../paper/page.ts';
import { leftOut, sheet, sheetText } from '../../paper/sheet.ts';
import { steps } from '../../paper/steps.ts';
import { tag } from '../../paper/tag.ts';
import { readItem, rowWords, UNKNOWN } from '../../piece/row.ts';
import type { World } from '../../world.ts';
import { benchOf } from '../base/bench-of.ts';
import {
  type Answer,
  answer,
  type Call,
  misuse,
  optionText,
  outOf,
  unsaved,
} from '../base/command.ts';
import { openJob, unknownPiece } from '../base/open-job.ts';
import { noteSettings } from '../base/unread.ts';

interface Given {
  call: Call;
  ask: Ask;
  file: string;
}

export async function run(call: Call): Promise<Answer> {
  const [name = '', said = '', ...rest] = call.words;
  const opened = openJob(name, call.world);
  if ('answer' in opened) return opened.answer;
  const what = PAPERS.find((p): p is PaperName => p === said);
  if (!what) {
    const close = near(said, PAPERS);
    const hint = close ? `Did you mean ${close}?` : `There are ${PAPERS.join(', ')}.`;
    return misuse('no-such-paper', `No paper ${said}. ${hint}`);
  }
  const size = optionText(call, 'size')?.toLowerCase() ?? ownSize(call.world);
  if (!isSize(size)) return misuse('no-such-size', `No size ${size}. There are a4 and letter.`);
  const piece = what === 'report' || what === 'blank' ? null : pieceOf(opened.job, rest[0]);
  if (piece !== null && 'answer' in piece) return piece.answer;
  if (what === 'card' && piece === null)
    return misuse('usage', 'Which piece? paper FILE card PIECE');
  const most = what === 'report' ? Infinity : 1;
  if (rest.length > most) return misuse('usage', `One piece for a ${what}, not ${rest.length}.`);
  const wrenches = benchOf(call.world, opened.file)?.wrenches ?? [];
  const ask: Ask = { job: opened.job, now: call.world.now(), size, piece, wrenches };
  const given: Given = { call, ask, file: opened.file };
  if (what === 'sheet' && call.options.text === true) return sheetInWords(given);
  if (what === 'report') return await reportOf(given, rest);
  const made = make(given, what, rest);
  if ('exit' in made) return made;
  if (!isPaper(made)) return noPaper(made);
  return await writeOut(given, what, { made, parts: [made.html], beside: null });
}

/** The paper that the user has set; what is wrong in the settings is told. */
function ownSize(world: World): SizeName {
  const user = findUser(world.env);
  noteSettings(world, oddInUser(user));
  return user.settings.paper;
}

function isSize(text: string): text is SizeName {
  return text in SIZES;
}

function pieceOf(job: Job, key: string | undefined): PieceNow | null | { answer: Answer } {
  if (key === undefined) return null;
  return job.pieces.get(key) ?? { answer: unknownPiece(key, job) };
}

function noPaper({ code, say, wrong }: NoPaper): Answer {
  if (wrong) return misuse(code, say);
  return { exit: 1, json: { ok: false, refused: { code, say } }, text: '', error: say };
}

function make(
  { call, ask }: Given,
  what: Exclude<PaperName, 'report'>,
  rest: string[],
): Paper | NoPaper | Answer {
  switch (what) {
    case 'card': {
      const { piece } = ask;
      if (piece === null) return misuse('usage', 'Which piece?');
      const width = optionText(call, 'width');
      const across = width === undefined ? null : readLength(width);
      if (width !== undefined && (across === null || across <= 0)) {
        return misuse('no-length', `--width ${width} is no length, like 240 or 9 1/2 in.`);
      }
      const odd = across === null ? null : outOf(across, 10, 5000, 'mm');
      if (odd !== null) return misuse('no-length', `--width ${width} cannot be: ${odd}.`);
      return card({ ...ask, piece, across });
    }
    case 'blank':
      return blankOf(call, ask, rest[0] ?? '');
    case 'labels': {
      const said = optionText(call, 'label') ?? '70x37';
      const label = readLabel(said);
      if (!label) return misuse('no-size', `--label ${said} is no size in mm, like 70x37.`);
      return labels({ ...ask, label, all: call.options.all === true });
    }
    case 'tag':
      return tag({ ...ask, who: optionText(call, 'ask') ?? null });
    case 'steps':
      return steps(ask);
    case 'sheet': {
      const show = shown(call);
      return 'exit' in show ? show : sheet({ ...ask, show, question: question(call) });
    }
  }
}

function blankOf(call: Call, ask: Ask, name: string): Paper | NoPaper | Answer {
  const [holes, said] = [optionText(call, 'holes'), optionText(call, 'row')];
  if (said !== undefined) {
    const row = rowWords(said).map(({ word }): RowItem | null => readItem(word));
    const odd = rowWords(said).find((_, i) => row[i] === null);
    if (odd) return misuse('bad-row', `${odd.word} in the row is no kind, like S or M+clip.`);
    const known = row.map((item) => (item?.kind === UNKNOWN ? null : item));
    return blank({ ...ask, row: known, name });
  }
  const n = /^\d{1,4}$/.test(holes ?? '') ? Number(holes) : 0;
  return blank({ ...ask, row: new Array<null>(n).fill(null), name });
}

function question(call: Call): string | null {
  return optionText(call, 'question') ?? null;
}

function shown(call: Call): ReadonlySet<Private> | Answer {
  const words = (optionText(call, 'with') ?? '').split(/[\s,]+/).filter((w) => w !== '');
  const strange = words.find((word) => !PRIVATE.some((p) => p === word));
  if (strange !== undefined) {
    return misuse('no-such-word', `--with ${strange}: there are ${PRIVATE.join(', ')}.`);
  }
  return new Set(PRIVATE.filter((p) => words.includes(p)));
}

function sheetInWords({ call, ask }: Given): Answer {
  const show = shown(call);
  if ('exit' in show) return show;
  const asked = { ...ask, show, question: question(call) };
  const text = sheetText(asked);
  return { ...answer({ what: 'sheet', text, notes: [leftOut(asked)] }, text) };
}

/** With its photographs, in the page or beside it. */
async function reportOf(given: Given, others: string[]): Promise<Answer> {
  const { call, ask, file } = given;
  const jobs = [{ job: ask.job, file }];
  for (const name of others) {
    const opened = openJob(name, call.world);
    if ('answer' in opened) return opened.answer;
    jobs.push(opened);
  }
  const by = optionText(call, 'by') ?? null;
  const inside = call.options.inside === true;
  const to = target(given, 'report');
  const made = book({ ...ask, jobs, by, inside, to, nonce: call.world.id() });
  return 'made' in made ? await writeOut(given, 'report', made) : noPaper(made);
}

/** Where the page goes; null: to the terminal. */
function target({ call, ask, file }: Given, what: PaperName): string | null {
  const said = optionText(call, 'out');
  if (said === '-') return null;
  return said === undefined
    ? besideJob(file, what, ask.piece?.spec.key ?? null)
    : resolve(call.world.folder, said);
}

/** Writes the page, and hands it to the desktop where that is wanted. */
async function writeOut(given: Given, what: PaperName, book: BookMade): Promise<Answer> {
  const { call, ask } = given;
  const { made, parts } = book;
  const { world } = call;
  const to = target(given, what);
  if (to === null) {
    const html = [...parts].join('');
    return answer({ what, html, notes: made.notes }, html.trimEnd());
  }
  const written = writeBook(book, to, world.id());
  if (!written.ok) return unsaved(written);
  const failed = call.options.open === true ? await openFile(to, world) : null;
  const sheets =
    made.sheets === null ? '' : `, ${made.sheets === 1 ? '1 sheet' : `${made.sheets} sheets`}`;
  const lines = [
    `${safe(to)} (${SIZES[ask.size].name}${sheets})`,
    ...made.notes,
    ...(failed === null ? [] : [`Not opened. ${failed}`]),
  ];
  const json = {
    what,
    file: to,
    size: ask.size,
    sheets: made.sheets,
    life: made.life,
    notes: made.notes,
    opened: call.options.open === true && failed === null,
    changed: true,
  };
  return answer(json, lines.join('\n'));
}
