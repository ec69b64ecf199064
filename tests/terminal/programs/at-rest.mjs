/**
 * Loaded into a program before anything else (`--import`). On SIGUSR2 it waits until no timer and nothing put off
 * is alive, not even such as keep no process running, and then makes a mark: from there on the program does nothing
 * until something comes from outside. Anything that looks again and again never lets it come to that.
 */
import { createHook } from 'node:async_hooks';
import { writeSync } from 'node:fs';

const LATER = new Set(['Timeout', 'Immediate', 'STATWATCHER']);
const alive = new Set();
/** While the timer is made by which this file itself looks. */
let own = false;

createHook({
  init(id, type) {
    if (LATER.has(type) && !own) alive.add(id);
  },
  destroy(id) {
    alive.delete(id);
  },
}).enable();

/** Node says that something is over with its next turn, and without another event there would be none. */
function look() {
  if (alive.size === 0) {
    writeSync(1, '\x1b]putback-test;at rest\x1b\\');
    return;
  }
  own = true;
  setTimeout(look, 10);
  own = false;
}

process.on('SIGUSR2', look);
