import { setTimeout as wait } from "node:timers/promises";

/** What the sockets hold when a cell fails has reached the queue after this time. */
const DRAIN_MS = 20;

/**
 * Makes a queue in which cells run one after the other. When one fails and asks for it, those that wait
 * by then are aborted; whatever is asked later runs. The failure is told only after the queue is cleared,
 * so that nobody who has heard of it is aborted.
 *
 * Source: `stop_on_error` of `execute_request`, Jupyter messaging 5.3, from memory.
 */
export function takeTurns(): <T extends { readonly status: string }>(
  run: () => Promise<T>,
  stopOnError: boolean,
) => Promise<T | "aborted"> {
  let last: Promise<unknown> = Promise.resolve();
  const waiting = new Set<{ aborted: boolean }>();
  return async (run, stopOnError) => {
    const turn = { aborted: false };
    waiting.add(turn);
    const before = last;
    let finish = () => {};
    last = new Promise<void>((resolve) => {
      finish = resolve;
    });
    await before;
    waiting.delete(turn);
    try {
      if (turn.aborted) return "aborted";
      const reply = await run();
      if (reply.status === "error" && stopOnError) {
        await wait(DRAIN_MS);
        for (const other of waiting) other.aborted = true;
      }
      return reply;
    } finally {
      finish();
    }
  };
}
