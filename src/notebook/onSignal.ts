/** Signals that end a program which does not listen to them. */
const SIGNALS = ["SIGINT", "SIGTERM", "SIGHUP"] as const;

/**
 * Tidies up where a signal is about to end the program, and lets it end by that signal, unless somebody else
 * listens to it and decides.
 *
 * @param tidy must not wait for anything
 * @returns a function that ends the listening
 */
export function onSignal(tidy: () => void): () => void {
  const stop = (signal: NodeJS.Signals): void => {
    end();
    tidy();
    if (process.listenerCount(signal) === 0) process.kill(process.pid, signal);
  };
  const end = (): void => {
    for (const signal of SIGNALS) process.off(signal, stop);
  };
  for (const signal of SIGNALS) process.on(signal, stop);
  return end;
}
