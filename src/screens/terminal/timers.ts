/** Waiting, as the terminal's part asks for it. */
export interface Timers {
  /** Calls once after `ms`, unless taken back. */
  later(ms: number, call: () => void): () => void;
  /** Calls once as soon as everything that has arrived by now was read. */
  soon(call: () => void): void;
}

export const timers: Timers = {
  later(ms, call) {
    const timer = setTimeout(call, ms);
    return () => clearTimeout(timer);
  },
  soon: (call) => void setImmediate(call),
};
