/** What a new job starts from: a template of the bench or of the program, or an earlier job without its diary. */
import { existsSync, lstatSync, readdirSync, readFileSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { shipped } from '../../diary/shipped.ts';
import { IS_JOB } from '../../job/yaml/is-job.ts';
import { textOfScalar } from '../../job/yaml/scalar.ts';
import { TEMPLATES, templatesIn } from '../../memory/bench/earlier.ts';
import { learntFrom } from '../../memory/learnt.ts';
import { modelOf, templateOf } from '../../memory/template.ts';
import { near } from '../../model/nearword.ts';
import type { World } from '../../world.ts';
import { type Answer, misuse } from '../base/command.ts';
import { openJob } from '../base/open-job.ts';
import { templatesFolder } from './template.ts';

interface Said {
  job: string | undefined;
  machine: string | undefined;
}

interface Start {
  lines: string[];
  leftOut: string[];
}

/** `file`: the new job, whose bench may have templates of its own; those go first. */
export function startFrom(name: string, file: string, said: Said, world: World): Start | Answer {
  const own = templatesFolder(dirname(file));
  const ours = shipped(TEMPLATES);
  for (const folder of [own, ours]) {
    const path = join(folder, `${name}.yaml`);
    if (basename(name) !== name || !existsSync(path)) continue;
    // A bench may have been handed over: what lies in it leads nowhere else.
    if (lstatSync(path).isSymbolicLink())
      return misuse('a-link', `${path} is a link: it is left alone.`, { template: name });
    return readStart(path, name, said, world);
  }
  const path = resolve(world.folder, name);
  if (/\.ya?ml$/i.test(name) && existsSync(path)) return readStart(path, name, said, world);
  const names = [
    ...new Set([
      ...templatesIn(dirname(own)),
      ...readdirSync(ours).map((f) => basename(f, '.yaml')),
    ]),
  ];
  const close = near(name, names);
  const hint = close ? `Did you mean ${close}?` : `There are ${names.join(', ')}.`;
  return misuse('no-such-template', `No template and no job file ${name}. ${hint}`, {
    template: name,
  });
}

function readStart(path: string, name: string, said: Said, world: World): Start | Answer {
  const opened = openJob(path, world);
  const none = () =>
    misuse('not-a-job', `${name} is no job file and no template.`, { template: name });
  if ('answer' in opened) return opened.none ? none() : opened.answer;
  const { job, file } = opened;
  const text = readFileSync(file, 'utf8');
  if (!IS_JOB.test(text)) return none();
  // A job that has happened: what it taught, without what happened.
  if (job.entries.length > 0) {
    const day = job.entries.at(-1)?.at.slice(0, 10);
    const learnt = learntFrom(text, job);
    const made = templateOf(learnt, {
      job: said.job ?? job.upper.job,
      machine: said.machine ?? modelOf(job.upper.machine),
      head: [`From ${job.upper.job}, ${day} (${basename(name)}).`],
    });
    return { lines: made.text.split('\n'), leftOut: made.leftOut };
  }
  const lines = text.split(/\r?\n/).filter((l) => !/^# yaml-language-server:/.test(l));
  return { lines: filledIn(lines, said), leftOut: [] };
}

/** A template with what was said on the command line. */
function filledIn(lines: readonly string[], said: Said): string[] {
  const missing = { ...said };
  const filled = lines.map((line) => {
    const key = /^(job|machine):/.exec(line)?.[1] as keyof Said | undefined;
    const value = key && said[key];
    if (key) delete missing[key];
    return key && value !== undefined ? `${key}: ${textOfScalar(value)}` : line;
  });
  if (missing.machine === undefined) return filled;
  const at = filled.findIndex((line) => line.startsWith('job:'));
  return filled.toSpliced(at + 1, 0, `machine: ${textOfScalar(missing.machine)}`);
}
