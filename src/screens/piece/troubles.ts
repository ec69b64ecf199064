/** What can be wrong with a hole or its bolt, as it is offered. */
import { TROUBLES, troubleOf } from '../../model/states/troubles.ts';
import type { Trouble } from '../../model/types.ts';
import type { Press } from '../kit/press.ts';

/** In the order in which it is offered, each with its letter. */
export const CHOICES: readonly { letter: Press; trouble: Trouble; say: string }[] = TROUBLES.map(
  (trouble) => {
    const { letter, offered } = troubleOf(trouble);
    return { letter, trouble, say: offered };
  },
);
