/**
 * What a cell has begun to show and has not shown yet. The kernel puts the set up, `show` enters its work;
 * both find it by this name, because the package of a notebook's folder may be another copy.
 */
const NAME = Symbol.for("loambook.started");

interface Started {
  /** Work under way; none of it is ever rejected. */
  readonly work: Set<Promise<unknown>>;
  /** What was handed to the cells. */
  readonly handed: WeakSet<object>;
}

type Place = { [NAME]?: Started };

/** Called once by the kernel. */
export function keepStarted(): Started {
  const started: Started = { work: new Set(), handed: new WeakSet() };
  (globalThis as Place)[NAME] = started;
  return started;
}

/**
 * Enters work that a cell may forget to wait for.
 *
 * @returns a promise of the same, which nobody has looked at yet: where the cell forgets it, Node.js tells
 */
export function enterStarted<T>(work: Promise<T>): Promise<T> {
  const started = (globalThis as Place)[NAME];
  if (started === undefined) return work;
  const over = work.then(
    () => {},
    () => {},
  );
  started.work.add(over);
  void over.then(() => started.work.delete(over));
  const handed = work.then((value) => value);
  started.handed.add(handed);
  return handed;
}
