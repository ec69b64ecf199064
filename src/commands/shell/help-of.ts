/** Help by a command of its own, and the page for man. */
import { near } from '../../model/nearword.ts';
import { answer, type Call, misuse } from '../base/command.ts';
import { commandHelp, help, manPage } from './help.ts';

export function run({ words: [name], options, commands }: Call) {
  if (options.man) {
    const man = manPage(commands);
    return answer({ man }, man);
  }
  if (name === undefined) return answer({ help: help(commands) }, help(commands));
  const command = commands.find((c) => c.names.includes(name));
  if (command) return answer({ help: commandHelp(command) }, commandHelp(command));
  const close = near(
    name,
    commands.flatMap((c) => c.names),
  );
  const hint = close ? `Did you mean ${close}?` : 'putback help says what there is.';
  return misuse('no-such-command', `No command ${name}. ${hint}`);
}
