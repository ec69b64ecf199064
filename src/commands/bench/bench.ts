/** Makes a folder a bench: git, how job files merge, the schema for editors, the settings. */
import { resolve } from 'node:path';
import { makeBench } from '../../diary/make-bench.ts';
import { answer, type Call, unsaved } from '../base/command.ts';

export async function run(call: Call) {
  const folder = resolve(call.world.folder, call.words[0] ?? '.');
  const did = await makeBench(folder, call.world.program, call.world.folder);
  if (!did.ok) return unsaved({ code: did.code, say: did.say });
  const { lines, open, left } = did;
  const said = lines.length === 0 ? ['Already a bench.'] : lines;
  return answer(
    { changed: lines.length > 0, did: [...lines, ...open], left },
    [...said, ...open, ...left].join('\n'),
  );
}
