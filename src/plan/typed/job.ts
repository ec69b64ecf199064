/** A job as somebody names it who starts it: what is wrong, and behind the last comma the machine. */
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
  const [job, machine] = parted(text);
  const name = slug(job).slice(0, MOST).replace(/-+$/, '');
  const used = new Set([...taken.map((t) => t.toLowerCase()), 'bench.yaml']);
  let file = `${name}.yaml`;
  for (let n = 2; used.has(file); n += 1) file = `${name}-${n}.yaml`;
  return {
    file: name === '' ? null : file,
    job: job.trim().replace(/[\s,]+$/, ''),
    machine: machine || null,
  };
}

/** A name with a capital or a figure is a machine: `Pump weeps, drips on the belt` is one sentence. */
const NAME = /^\p{Lu}|\d/u;

function parted(text: string): [string, string] {
  // A year behind it belongs to the machine: `Hollin 400 Twin, 1998`.
  const commas = [...text.matchAll(/,/g)].map(({ index }) => index);
  const first = commas.find((at) => NAME.test(text.slice(at + 1).trim()));
  return first === undefined ? [text, ''] : [text.slice(0, first), text.slice(first + 1).trim()];
}
