/** What is wrong in job files: every fault, sorted, with its place and the way out. */
import { resolve } from 'node:path';
import { printFault } from '../job/faults/faults.ts';
import { readNamed } from '../job/save/plain.ts';
import type { Fault } from '../model/types.ts';
import { checkAll } from '../plan/check.ts';
import { type Answer, type Call, faultsJson } from './command.ts';
import { noFile } from './open-job.ts';

export function run(call: Call): Answer {
  const faults: Fault[] = [];
  for (const name of call.words) {
    let bytes: Buffer;
    try {
      ({ bytes } = readNamed(resolve(call.world.folder, name)));
    } catch (error) {
      return noFile(name, call.world, error);
    }
    faults.push(...checkAll(bytes.toString('utf8'), name));
  }
  const bad = faults.some((f) => f.severity === 'error');
  return {
    exit: bad ? 1 : 0,
    json: { ok: !bad, faults: faultsJson(faults) },
    text: faults.map(printFault).join('\n\n'),
  };
}
