/** Which tests are made with the machine running, by their words. */
import type { TaskVerb } from '../../model/types.ts';

interface Run {
  verb: TaskVerb;
  say: string;
  when: string | null;
}

/** It makes the machine run: what is to be seen to before the first start comes before it. */
export function runs({ verb, say, when }: Run): boolean {
  return verb === 'test' && RUNS.test(`${say} ${when ?? ''}`);
}

const RUNS =
  /\b(?:idle|run|runs|running|engine|start|ride|warm|hot|rev|revs|rpm|r\/min|tick ?over)\b/i;
