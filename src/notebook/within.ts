/** Waits for a promise, but not longer than so many milliseconds: `undefined` when the time is up. */
export async function within<T>(milliseconds: number, promise: Promise<T>): Promise<T | undefined> {
  let forget = () => {};
  const late = new Promise<undefined>((resolve) => {
    const timer = setTimeout(() => resolve(undefined), milliseconds);
    forget = () => clearTimeout(timer);
  });
  try {
    return await Promise.race([promise, late]);
  } finally {
    forget();
  }
}
