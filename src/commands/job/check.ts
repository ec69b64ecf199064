/** What is wrong in job files: every fault, sorted, with its place and the way out. */
import { basename, resolve } from 'node:path';
import { BENCH_FILE } from '../../diary/bench.ts';
import { printFault } from '../../job/faults/faults.ts';
import { readNamed } from '../../job/save/plain.ts';
import type { Fault } from '../../model/types.ts';
import { checkAll } from '../../plan/check.ts';
import { readBenchSettings, readUserSettings } from '../../settings/settings.ts';
import { SETTINGS_FILE } from '../../settings/user.ts';
import { type Answer, type Call, faultsJson } from '../base/command.ts';
import { noFile } from '../base/open-job.ts';

/** A file of settings is known by its name; all others are jobs. */
async function faultsOf(text: string, name: string): Promise<Fault[]> {
  if (basename(name) === BENCH_FILE) return readBenchSettings(text, name).faults;
  if (basename(name) === SETTINGS_FILE) {
    // Which keys there are the screens know: a job is checked without them.
    const { ownPresses } = await import('../../screens/show/own-keys.ts');
    return readUserSettings(text, name, ({ keys }, report) => void ownPresses(keys, report)).faults;
  }
  return checkAll(text, name);
}

export async function run(call: Call): Promise<Answer> {
  const faults: Fault[] = [];
  const unopened: Answer[] = [];
  for (const name of call.words) {
    let bytes: Buffer;
    try {
      ({ bytes } = readNamed(resolve(call.world.folder, name)));
    } catch (error) {
      unopened.push(noFile(name, call.world, error));
      continue;
    }
    faults.push(...(await faultsOf(bytes.toString('utf8'), name)));
  }
  const bad = faults.some((f) => f.severity === 'error');
  const text = faults.map(printFault).join('\n\n');
  const [first] = unopened;
  if (first) {
    const told = unopened.map(({ json }) => json.refused);
    return {
      exit: 2,
      json: { ok: false, faults: faultsJson(faults), refused: told[0], unopened: told },
      text,
      error: unopened.map(({ error }) => error).join('\n'),
    };
  }
  return {
    exit: bad ? 1 : 0,
    json: { ok: !bad, faults: faultsJson(faults) },
    text,
  };
}
