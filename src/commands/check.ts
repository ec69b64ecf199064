/** What is wrong in job files: every fault, sorted, with its place and the way out. */
import { basename, resolve } from 'node:path';
import { BENCH_FILE } from '../diary/bench.ts';
import { printFault } from '../job/faults/faults.ts';
import { readNamed } from '../job/save/plain.ts';
import type { Fault } from '../model/types.ts';
import { checkAll } from '../plan/check.ts';
import { ownPresses } from '../screens/show/own-keys.ts';
import { readBenchSettings, readUserSettings } from '../settings/settings.ts';
import { SETTINGS_FILE } from '../settings/user.ts';
import { type Answer, type Call, faultsJson } from './command.ts';
import { noFile } from './open-job.ts';

/** A file of settings is known by its name; all others are jobs. */
function faultsOf(text: string, name: string): Fault[] {
  if (basename(name) === BENCH_FILE) return readBenchSettings(text, name).faults;
  if (basename(name) === SETTINGS_FILE)
    return readUserSettings(text, name, ({ keys }, report) => void ownPresses(keys, report)).faults;
  return checkAll(text, name);
}

export function run(call: Call): Answer {
  const faults: Fault[] = [];
  for (const name of call.words) {
    let bytes: Buffer;
    try {
      ({ bytes } = readNamed(resolve(call.world.folder, name)));
    } catch (error) {
      return noFile(name, call.world, error);
    }
    faults.push(...faultsOf(bytes.toString('utf8'), name));
  }
  const bad = faults.some((f) => f.severity === 'error');
  return {
    exit: bad ? 1 : 0,
    json: { ok: !bad, faults: faultsJson(faults) },
    text: faults.map(printFault).join('\n\n'),
  };
}
