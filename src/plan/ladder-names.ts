/** How the rows of a job are told apart: a piece by its key, a task by its name behind a colon. */

export function taskName(key: string): string {
  return `:${key}`;
}

/** The task that a row's name stands for; null for a piece. */
export function taskOf(name: string | null): string | null {
  return name?.startsWith(':') ? name.slice(1) : null;
}
