/** Ctrl-Z: the program stops, with all of its group, and goes on when the shell says so. */
/** ms to wait for SIGCONT: the kernel does not stop a process that no shell could continue. */
const NOT_STOPPED = 50;

/** Settles when it goes on. */
export async function stopUntilContinued(): Promise<void> {
  const continued = Promise.withResolvers<void>();
  process.once('SIGCONT', continued.resolve);
  // To the whole group, as the terminal does it: npm above us has to stop too.
  process.kill(0, 'SIGTSTP');
  const timer = setTimeout(continued.resolve, NOT_STOPPED);
  await continued.promise;
  clearTimeout(timer);
  process.off('SIGCONT', continued.resolve);
}
