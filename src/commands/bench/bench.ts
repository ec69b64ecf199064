/** Makes a folder a bench: git, how job files merge, the schema for editors, the settings. */
import { resolve } from 'node:path';
import { makeBench } from '../../diary/make-bench.ts';
import { answer, type Call, unsaved } from '../base/command.ts';

export async function run(call: Call) {
  const folder = resolve(call.world.folder, call.words[0] ?? '.');
  const did = await makeBench(folder, call.world.program, call.world.folder);
  if (!did.ok) return unsaved({ code: did.code, say: did.say });
  return answer(
    { changed: did.lines.length > 0, did: did.lines, left: did.left },
    [...did.lines, ...did.left].join('\n') || 'Already a bench.',
  );
}
