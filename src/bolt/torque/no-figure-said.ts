/** A printed torque without any figure: what it says instead, and what of a printed torque is told as not read. */
import type { SaidAt } from './one-or-other.ts';
import type { Stages } from './stage-types.ts';
import { readStages } from './stages.ts';

/**
 * `place`: where to look it up, `see manual`. `missing`: that nobody knows it yet, `?`. `feel`: that it is done without a
 * figure. All three are a person's word, and no fault.
 */
export type Instead = 'place' | 'missing' | 'feel';

const MISSING =
  /^(?:[?–—-]+|n\/?a|tbd|unknown|not (?:yet )?known|(?:to be )?look(?:ed)?(?: it)? up|not (?:given|printed|found))[.?!]?$/i;
const FEEL =
  /^(?:(?:by|good) (?:feel|judge?ment)|(?:no|without(?: an?)?) (?:figure|torque|value)(?: (?:given|printed|known))?|none(?: (?:given|printed))?)[.!]?$/i;

function insteadIn(text: string, { stages, rest, where }: Stages): Instead | null {
  if (stages.length > 0 || /\d/.test(rest.map((said) => said.text).join(' '))) return null;
  const said = text.trim();
  if (MISSING.test(said)) return 'missing';
  if (FEEL.test(said)) return 'feel';
  return where === null ? null : 'place';
}

/** Whether the text has a stage, or leads to one: not so where nothing of it was read, or it says that nobody knows. */
export function leadsToFigure(text: string): boolean {
  const read = readStages(text);
  const instead = insteadIn(text, read);
  const figures = read.stages.length > 0 || /\d/.test(text);
  return instead === null ? figures : instead !== 'missing';
}

/** What is told of a printed torque as not read; the whole of one in which there is nothing to read. */
export function unreadOf(text: string): readonly SaidAt[] {
  const read = readStages(text);
  if (insteadIn(text, read) !== null) return [];
  const figures = read.stages.length > 0 || /\d/.test(text);
  return figures ? read.rest : [{ text: text.trim(), at: text.length - text.trimStart().length }];
}
