/** A job as somebody names it who starts it: what is wrong, and the machine behind a comma. */
import { slug } from '../../model/slug.ts';

export interface TypedJob {
  /** The name of its file; null where nothing of the text makes one. */
  file: string | null;
  job: string;
  machine: string | null;
}

/** Most letters of a file's name. */
const MOST = 40;

/** `taken`: names of files that are there. */
export function typedJob(text: string, taken: readonly string[]): TypedJob {
  const comma = text.indexOf(',');
  const [job, machine] =
    comma < 0 ? [text, ''] : [text.slice(0, comma), text.slice(comma + 1).trim()];
  const name = slug(job).slice(0, MOST).replace(/-+$/, '');
  const used = new Set([...taken.map((t) => t.toLowerCase()), 'bench.yaml']);
  let file = `${name}.yaml`;
  for (let n = 2; used.has(file); n += 1) file = `${name}-${n}.yaml`;
  return { file: name === '' ? null : file, job: job.trim(), machine: machine || null };
}
