/** What is wrong in job files: every fault, sorted, with its place and the way out. */
import { resolve } from 'node:path';
import { printFault } from '../job/faults/faults.ts';
import { readBounded } from '../job/save/bounded.ts';
import type { Fault } from '../model/types.ts';
import { checkAll } from '../plan/check.ts';
import { type Answer, type Call, faultsJson } from './command.ts';
import { noFile } from './open-job.ts';

export function run(call: Call): Answer {
  const faults: Fault[] = [];
  for (const name of call.words) {
    let bytes: Buffer;
    try {
      bytes = readBounded(resolve(call.world.folder, name));
    } catch {
      return noFile(name, call.world);
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
