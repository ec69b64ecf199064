/** The table of keys of the screens, with the presses that the user has given to them. */
import { findUser } from '../../diary/user.ts';
import { keyTable } from '../../screens/show/key-table.ts';
import { ownPresses } from '../../screens/show/own-keys.ts';
import { answer, type Call } from '../base/command.ts';

export function run({ world }: Call) {
  let own = {};
  const { file, faults } = findUser(world.env, ({ keys }, report) => {
    own = ownPresses(keys, report);
  });
  const keys = keyTable(own);
  const [id, press] = [keys.map((k) => k.key), keys.map((k) => k.shown)].map((texts) =>
    Math.max(...texts.map((t) => t.length)),
  );
  const lines = keys.map(
    (k) => `${k.key.padEnd(id ?? 0)}  ${k.shown.padEnd(press ?? 0)}  ${k.help}`,
  );
  const where =
    file === null
      ? []
      : ['', `Other presses: in ${file}, under keys: {${keys[0]?.key ?? 'undo'}: [press, press]}`];
  const wrong = faults.map((f) => `${f.file}:${f.line}:${f.column}: ${f.say}. ${f.fix}`);
  return answer({ keys, file, faults: wrong }, [...lines, ...where, ...wrong].join('\n'));
}
