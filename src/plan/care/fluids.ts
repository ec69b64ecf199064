/** What was let out and has to be filled in again, by the words of the job's tasks. */
import { kept } from '../../model/kept.ts';
import type { Standing } from '../order/standing.ts';

export interface Fluid {
  /** As the task says it: `the oil`. */
  what: string;
  /** The task that let it out. */
  drained: string;
  /** The task that fills it in again; null when the file has none. */
  fill: string | null;
  /** Let out, and not in again as far as anybody noted. */
  out: boolean;
}

/** A drain as a thing, not as something that is done. */
const THING =
  /\bdrain(?:ing|age)? (?:plugs?|holes?|hoses?|pans?|trays?|bolts?|screws?|valves?|cocks?|pipes?|tubes?|washers?)\b/gi;
/** What is opened so that it runs. */
const OPENED =
  /\b(?:open|undo|remove|pull|unscrew|take out)\b[^.,;]*\b(?:drain|sump|oil) ?(?:plug|bolt|screw|cock)s?\b/i;
const END = String.raw`(?=\s+(?:into|from|out|off|and|until|till|by|with|at|through|via|in|overnight|while|when|before|after)\b|[,.;:()]|$)`;
const NAMED = String.raw`(?:(?:the|its|all|old|engine|gear|gearbox|fork|hydraulic)\s+)*(?:oil|fluid|fuel|petrol|gasoline|diesel)`;
/** Done to a liquid; what it is done to stands behind it, or between its two words. */
const DONE = [
  new RegExp(
    String.raw`\b(?:drain|empty|run off|pump out|suck out|siphon|syphon|bleed off|tip out|pour out)(?:s|ed|ing)?\s+(?:off\s+|out\s+)?(.+?)${END}`,
    'i',
  ),
  new RegExp(String.raw`\blet\s+(?:off|out)\s+(.+?)${END}`, 'i'),
  /\blet\s+(.+?)\s+(?:run\s+)?(?:out|off|drain|run|drip)\b/i,
  /\b(?:drain|empty|pump|suck|pour|tip)(?:s|ed|ing)?\s+(.+?)\s+(?:out|off)\b/i,
  new RegExp(String.raw`\b(?:drop|dump)(?:s|p?ed|p?ing)?\s+(${NAMED})${END}`, 'i'),
  new RegExp(String.raw`(?:\b(?:take|get|run)\s+|^)(${NAMED})\s+out\b`, 'i'),
] as const;
/** Said of nothing in particular: `Warm it up and drain`. */
const BARE = /\b(?:drain|run (?:out|off))(?:s|ed|ing)?\b/i;
const LIQUID =
  /\b((?:(?:engine|gear|gearbox|fork|hydraulic|brake|old|dirty|used)\s+)*(?:oil|fluid|fuel|petrol|gasoline|diesel|water|liquid))\b/i;
/** What is emptied, and stays. */
const HOLDS =
  /\b(?:tanks?|gear ?box(?:es)?|sumps?|cases?|crank ?cases?|forks?|fork legs?|carb\w*|float bowls?|bowls?|reservoirs?|systems?|lines?|hoses?|pumps?|engines?|transmissions?|differentials?|axles?)$/i;
const NOTHING = /^(?:it|them|this|that|all|everything|well|completely|fully|overnight)$/i;

/**
 * What a task lets out: `the oil`, `what was in it` where the task does not say; null when it lets out nothing.
 * `Drain the oil`, `Warm it up and drain`, `let the oil out`, `Remove the plug and drain` do; a drain plug that is
 * tightened does not, nor an oil change, which ends filled.
 */
export function letOut(say: string): string | null {
  if (/\bdrain(?:ed)? and (?:re)?fill/i.test(say)) return null;
  const plain = say.replace(THING, 'plug');
  const named = LIQUID.exec(plain)?.[1]?.toLowerCase();
  const what = DONE.flatMap((form) => form.exec(plain)?.[1]?.trim() ?? [])[0];
  // A gearbox that is emptied stays where it is.
  if (what !== undefined && !NOTHING.test(what)) {
    return HOLDS.test(what) ? `what was in ${what}` : what;
  }
  if (what === undefined && !BARE.test(plain) && !OPENED.test(say)) return null;
  return named === undefined ? 'what was in it' : `the ${named}`;
}

const FILL =
  /\b(?:re)?fill(?:s|ed|ing)?\b|\btop(?:ped)? up\b|\bpour(?:ed)?\b(?!\s+(?:\S+\s+){0,3}(?:out|off)\b)|\b(?:put|add)\b[^.,;]*\b(?:oil|fluid|fuel|petrol|diesel)\b/i;

/** It puts a liquid in. */
export function fillsIn(say: string): boolean {
  return FILL.test(say);
}

/** Each task that lets something out and is done, in the order of the file. */
export function fluidsOf({ job, relations, finished, lines }: Standing): Fluid[] {
  const isDone = (key: string) => finished.done[relations.at.get(key) ?? -1] === true;
  const { drains, fills } = kept(job.upper, 'fluids', () => {
    const tasks = [...job.upper.tasks.values()];
    const lets = tasks.map((task) => ({ task, what: letOut(task.say.text) }));
    return {
      drains: lets.flatMap(({ task, what }) => (what === null ? [] : [{ task, what }])),
      fills: tasks.filter((t) => FILL.test(t.say.text)),
    };
  });
  return drains.flatMap(({ task, what }): Fluid[] => {
    const out = lines.done.get(task.key);
    if (!out || !isDone(task.key)) return [];
    const noun = what.split(' ').at(-1)?.toLowerCase() ?? what;
    const named = fills.find((t) => t.say.text.toLowerCase().includes(noun));
    // `Fill to the middle of the glass`: one thing out, one thing in.
    const fill = named ?? (drains.length === 1 && fills.length === 1 ? fills[0] : undefined);
    const back = fill && isDone(fill.key) ? (lines.done.get(fill.key)?.index ?? -1) : -1;
    return [{ what, drained: task.key, fill: fill?.key ?? null, out: back < out.index }];
  });
}
