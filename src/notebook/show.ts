import { createRequire } from "node:module";
import type { Locale } from "../words/render.js";
import { enterStarted } from "./kernel/started.js";
import { HTML_MIME, type MimeBundle, TEXT_MIME, toBundle } from "./mimeBundle.js";

/**
 * Shows a value below the notebook cell that runs. A cell waits for it, `await show(x)`; one that forgets to
 * wait still gets it, and is told of its error.
 */
export type Show = (value: unknown) => Promise<void>;

/**
 * Makes the `show` of a notebook in the language of its study:
 * `const show = loam.showIn(study.config.language)`.
 *
 * It shows a figure, a part of a report, a table of a danfo.js frame or of a list of flat objects, or
 * text. Outside of a notebook the text form goes to standard output.
 *
 * @param locale such as `es-MX`
 * @returns a function that throws TypeError or RangeError when the value says that it is a figure or a
 * block of a report but has not the fields of one
 *
 * @example
 * await showIn("es")([{ sizeMm: 2, passingPct: 78 }]) // => undefined
 */
export function showIn(locale: Locale): Show {
  return showTo(locale, senderNow);
}

/**
 * Makes a `show` for whoever runs the cells.
 *
 * @param senderOf tells, when a cell asks to show something, how to send it
 */
export function showTo(locale: Locale, senderOf: () => Send): Show {
  return (value) => {
    // the sender of the cell that runs now: by the time the bundle is made it may be another
    const send = senderOf();
    return enterStarted(
      toBundle(value, locale).then((bundle) => {
        send(bundle);
      }),
    );
  };
}

/**
 * `showIn("en")`.
 *
 * @example
 * await show([{ sizeMm: 2, passingPct: 78 }]) // => undefined
 */
export const show: Show = showIn("en");

/** Sends what is to be shown to where it is shown. */
export type Send = (bundle: MimeBundle) => void;

/** The modules that the program has loaded, as `require.cache` holds them. */
type ModuleCache = Readonly<Record<string, { readonly exports: unknown } | undefined>>;

interface Tslab {
  readonly display: { html(text: string): void; text(text: string): void };
}

const KERNEL_MODULE = /[\\/]tslab[\\/]dist[\\/]jupyter\.js$/;

/**
 * Finds how to show a bundle in the running kernel; `undefined` when no kernel runs.
 *
 * tslab's own `display` sends one MIME type a call and no metadata. The function below it sends a
 * whole bundle; it is no part of tslab's public face, so where it is missing the HTML (or the text)
 * goes out by `display`. Seen in tslab 1.0.22.
 *
 * @param cache `require.cache`, which all modules of a program share
 * @param loadTslab loads the tslab that a module of it belongs to
 */
export function kernelSender(
  cache: ModuleCache,
  loadTslab: (path: string) => Tslab,
): Send | undefined {
  const kernels = Object.keys(cache).filter((path) => KERNEL_MODULE.test(path));
  if (kernels.length === 0) return undefined;
  for (const path of kernels) {
    const inner = cache[path]?.exports as { lastWriteDisplayData?: unknown };
    const send = inner.lastWriteDisplayData;
    if (typeof send === "function") {
      return ({ data, metadata }) => send({ data, metadata, transient: {} }, undefined);
    }
    // there, but no cell has run yet, or in a second copy of tslab that does not run
    if (send === null) continue;
    return ({ data }) => {
      const { display } = loadTslab(path);
      if (typeof data[HTML_MIME] === "string") display.html(data[HTML_MIME]);
      else display.text(String(data[TEXT_MIME]));
    };
  }
  return undefined;
}

/** How to show a bundle in the cell that runs; outside of a notebook its text is printed. */
function senderNow(): Send {
  const { cache } = createRequire(import.meta.url);
  // its own folder, because a tslab that is installed globally cannot be found by its name
  const send = kernelSender(cache, (path) => createRequire(path)(".."));
  if (send !== undefined) return send;
  return ({ data }) => {
    process.stdout.write(`${data[TEXT_MIME]}\n`);
  };
}
