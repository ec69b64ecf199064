/** What came of a task, typed in one line: `was 35, set 25, chain is worn`. */

export interface Result {
  was?: string;
  set?: string;
  result?: string;
}

/** Two figures alone are what it was and what it is set to; everything else is the result. */
export function readResult(text: string): Result {
  const two = /^\s*(\d[\d.,/]*)\s*(?:->|to|\s)\s*(\d[\d.,/]*)\s*$/i.exec(text);
  if (two?.[1] && two[2]) return { was: two[1], set: two[2] };
  const found: Result = {};
  const rest: string[] = [];
  for (const part of text.split(/[,;](?!\d)/).map((p) => p.trim())) {
    const [, how, what] = /^(was|set)(?: to)?:? +(.+)$/i.exec(part) ?? [];
    if (how?.toLowerCase() === 'was' && what) found.was = what;
    else if (how && what) found.set = what;
    else if (part !== '') rest.push(part);
  }
  return rest.length > 0 ? { ...found, result: rest.join(', ') } : found;
}
