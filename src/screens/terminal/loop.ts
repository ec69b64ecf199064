/**
 * The loop: what happens goes through `update`, in order, and what that asks for is carried out, in order.
 * State lies outside React, so that two hundred presses in one piece meet two hundred states.
 */
import type { Effect, Happening } from '../base/state.ts';

/** Something that can be played: the first state, what is asked for at once, and how it goes on. */
export interface Play<S> {
  first: S;
  effects: readonly Effect[];
  update(state: S, happening: Happening): { state: S; effects: readonly Effect[] };
}

type Asked<D extends Effect['do']> = Extract<Effect, { do: D }>;

export type Tell = (happening: Happening) => void;

/** What carries out effects. Each answer is what happened; a rejection ends the loop. */
export interface Hands {
  record(effect: Asked<'record'>): Promise<Happening>;
  open(effect: Asked<'open'>): Promise<Happening>;
  start(effect: Asked<'start'>): Promise<Happening>;
  /** These three answer more than once, as far as they have come: `tell` each time, and the last one is the answer. */
  list(effect: Asked<'list'>, tell?: Tell): Promise<Happening | null>;
  earlier(effect: Asked<'earlier'>): Promise<Happening | null>;
  find(effect: Asked<'find'>, tell?: Tell): Promise<Happening | null>;
  due(): Promise<Happening | null>;
  /** Null: nothing to say about it. */
  milestone(effect: Asked<'milestone'>): Promise<Happening | null>;
  /** Null: nothing to say about it. */
  print(effect: Asked<'print'>): Promise<Happening | null>;
  show(effect: Asked<'show'>): Promise<Happening | null>;
  ring(): void;
  /** Calls `call` once everything that needs no waiting has been done. */
  soon(call: () => void): void;
}

export interface Loop<S> {
  state(): S;
  /**
   * Calls after every change, with all that happened at once in one call; a mark that a quick disk takes at
   * once is one change with the key that made it. Answers how to stop that.
   */
  subscribe(changed: () => void): () => void;
  /** All of these one after the other, and one call of the subscribers at the end. */
  happen(...happenings: Happening[]): void;
  /** Asked for from outside `update`; its answer goes through `update` like any other happening. */
  ask(effect: Effect): void;
  /** Settles when all that was asked for so far is done, commits apart; of a list, when there is some to show. */
  idle(): Promise<unknown>;
  /** Settles when lists and what was looked for are whole too: for keys that nobody presses by what they see. */
  whole(): Promise<unknown>;
  /** Ends the loop at once: the program has a fault. */
  fail(error: unknown): void;
  /** Takes no more keys and ends when all that was asked for is done; called again, it ends at once. */
  quit(): void;
  /** No more keys are taken. */
  isLeaving(): boolean;
  /** Settles when the loop has ended: true if everything that was asked for was done. Rejects with the fault. */
  readonly ended: Promise<boolean>;
}

export function createLoop<S>(play: Play<S>, hands: Hands): Loop<S> {
  let state = play.first;
  let quitting = false;
  let failed = false;
  /** Effects on their way, and those of them whose answer will change what is shown. */
  let under = 0;
  let asked = 0;
  /** Changed, and the subscribers not yet told. */
  let stale = false;
  const subscribers = new Set<() => void>();
  const end = Promise.withResolvers<boolean>();
  /** Marks and reading keep their order. */
  let work: Promise<unknown> = Promise.resolve();
  /** The rows of a bench that are asked for, as far as there are some to show. */
  let shown: Promise<unknown> = Promise.resolve();
  /** What only looks at files, as far as it has not come to its end. */
  const looking = new Set<Promise<unknown>>();
  /** Commits keep an order of their own, so that no mark waits for git. */
  let commits: Promise<unknown> = Promise.resolve();

  function fail(error: unknown): void {
    failed = true;
    end.reject(error);
  }

  function quit(): void {
    if (quitting || under === 0) end.resolve(under === 0);
    quitting = true;
  }

  /** Does it after `before`; its answer goes through `update` before the next one in the queue starts. */
  function after(before: Promise<unknown>, does: () => Promise<Happening | null>): Promise<void> {
    under += 1;
    return before
      .then(() => (failed ? null : does()))
      .then((happening) => {
        if (happening !== null) happen(happening);
      })
      .catch(fail)
      .finally(() => {
        under -= 1;
        if (quitting && under === 0) end.resolve(true);
      });
  }

  function ask(does: () => Promise<Happening>): void {
    asked += 1;
    work = after(work, async () => {
      const answer = await does();
      asked -= 1;
      return answer;
    });
  }

  /**
   * What only looks at files runs beside marks and keys, and nobody waits for its end, to leave least of all. Settles
   * when it has something to show.
   */
  function beside(does: (tell: Tell) => Promise<Happening | null>): Promise<unknown> {
    const first = Promise.withResolvers<void>();
    const tell = (happening: Happening | null) => {
      if (happening !== null && !quitting) happen(happening);
      first.resolve();
    };
    // Behind what is done already, so that it sees the files with that.
    const all = work
      .then(() => (failed ? null : does(tell)))
      .then(tell)
      .catch(fail)
      .finally(() => looking.delete(all));
    looking.add(all);
    return first.promise;
  }

  function carryOut(effect: Effect): void {
    switch (effect.do) {
      case 'ring':
        hands.ring();
        break;
      case 'quit':
        quit();
        break;
      case 'milestone':
        // Only what is on disk is committed: the mark that made it comes first.
        commits = after(Promise.all([work, commits]), () => hands.milestone(effect));
        break;
      case 'print':
        // Made from what is on disk.
        commits = after(Promise.all([work, commits]), () => hands.print(effect));
        break;
      case 'show':
        commits = after(commits, () => hands.show(effect));
        break;
      case 'record':
        ask(() => hands.record(effect));
        break;
      case 'open':
        ask(() => hands.open(effect));
        break;
      case 'start':
        ask(() => hands.start(effect));
        break;
      case 'list':
        shown = beside((tell) => hands.list(effect, tell));
        break;
      case 'earlier':
        void beside(() => hands.earlier(effect));
        break;
      case 'due':
        void beside(() => hands.due());
        break;
      case 'find':
        void beside((tell) => hands.find(effect, tell));
        break;
    }
  }

  function happen(...happenings: Happening[]): void {
    const before = state;
    try {
      for (const happening of happenings) {
        if (failed) return;
        // Once quitting, no more keys are taken: only what was asked for before goes on.
        if (quitting && (happening.on === 'press' || happening.on === 'paste')) continue;
        const next = play.update(state, happening);
        state = next.state;
        for (const effect of next.effects) carryOut(effect);
      }
    } catch (error) {
      fail(error);
      return;
    }
    if (state === before) return;
    stale = true;
    if (asked === 0) tell();
    else hands.soon(tell);
  }

  function tell(): void {
    if (!stale) return;
    stale = false;
    for (const changed of subscribers) changed();
  }

  /** What one answer leads to is waited for too. */
  async function whole(): Promise<void> {
    do await Promise.all([work, ...looking]);
    while (looking.size > 0);
  }

  for (const effect of play.effects) carryOut(effect);
  return {
    state: () => state,
    subscribe(changed) {
      subscribers.add(changed);
      return () => subscribers.delete(changed);
    },
    happen,
    ask: carryOut,
    idle: () => Promise.all([work, shown]),
    whole,
    fail,
    quit,
    isLeaving: () => quitting,
    ended: end.promise,
  };
}
