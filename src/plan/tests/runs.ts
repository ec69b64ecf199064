/** Which tests are made with the machine running, by their words. */
import type { TaskSpec } from '../../model/types.ts';

/** It makes the machine run: what is to be seen to before the first start comes before it. */
export function runs({ verb, say, when }: Pick<TaskSpec, 'verb' | 'say' | 'when'>): boolean {
  return verb === 'test' && RUNS.test(`${say} ${when ?? ''}`);
}

const RUNS = /\b(?:idle|run|runs|running|engine|start|ride|warm|hot|rev|revs)\b/i;
