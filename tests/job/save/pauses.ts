/** How long something waits, whatever the machine does meanwhile. */
import { createHook } from 'node:async_hooks';

/** Does it; answers how many ms in all it asked timers for. */
export async function pauses(what: () => Promise<unknown>): Promise<number> {
  let asked = 0;
  const hook = createHook({
    init(_id, type, _trigger, resource) {
      if (type === 'Timeout') asked += (resource as { _idleTimeout: number })._idleTimeout;
    },
  }).enable();
  try {
    await what();
  } finally {
    hook.disable();
  }
  return asked;
}
