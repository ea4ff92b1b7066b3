import type { ReportBlock } from "../../blocks/block.js";
import type { Text } from "../../words/message.js";
import type { App } from "./app.js";

/** What an element is made with: attributes, and listeners under `on…`. */
export type Props = Readonly<
  Record<string, string | number | boolean | ((event: Event) => void) | undefined>
>;

export type Child = Node | string | undefined | false;

/**
 * Makes an element. Texts become text nodes, so that nothing of a study is ever read as markup.
 *
 * @param props an attribute that is false or undefined is left out, one that is true has no value.
 */
export function el<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  props: Props = {},
  ...children: readonly Child[]
): HTMLElementTagNameMap[K] {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(props)) {
    if (value === undefined || value === false) continue;
    if (typeof value === "function") made.addEventListener(name.slice(2), value);
    else made.setAttribute(name, value === true ? "" : String(value));
  }
  made.append(...children.filter((child): child is Node | string => !!child));
  return made;
}

/** A small picture of paths, which says nothing that does not stand beside it in words. */
export function drawing(
  name: string,
  viewBox: string,
  paths: readonly Readonly<Record<string, string>>[],
): SVGSVGElement {
  const space = "http://www.w3.org/2000/svg";
  const svg = document.createElementNS(space, "svg");
  for (const [key, value] of Object.entries({ class: name, viewBox, "aria-hidden": "true" })) {
    svg.setAttribute(key, value);
  }
  for (const attributes of paths) {
    const path = document.createElementNS(space, "path");
    for (const [key, value] of Object.entries(attributes)) path.setAttribute(key, value);
    svg.append(path);
  }
  return svg;
}

/** An element whose inside is markup of our own writers, which escape every text. */
export function written(
  tag: "div" | "section" | "figure",
  props: Props,
  html: string,
): HTMLElement {
  const made = el(tag, props);
  made.innerHTML = html;
  return made;
}

export function card(
  { t }: App,
  { name = "", id, title }: { readonly name?: string; readonly id: string; readonly title: Text },
  ...children: readonly Child[]
): HTMLElement {
  return el(
    "section",
    { class: `card ${name}`.trim(), "aria-labelledby": `${id}-title` },
    el("h2", { id: `${id}-title` }, t(title)),
    ...children,
  );
}

/** A block of a report. */
export function blockOf(app: App, block: ReportBlock, props: Props = {}): HTMLElement {
  return written("div", props, app.html(block));
}

export function button(
  { t }: App,
  label: Text,
  click: () => void,
  props: Props = {},
): HTMLButtonElement {
  return el("button", { type: "button", ...props, onclick: click }, t(label));
}

/** A sentence in small letters. */
export function remark({ t }: App, text: Text): HTMLElement {
  return el("p", { class: "sum" }, t(text));
}

/** A box with its name before it. */
export function field({ t }: App, label: Text, box: HTMLElement): HTMLElement {
  return el("div", { class: "field" }, el("label", { for: box.id }, t(label)), box);
}

/** What is unfolded by its title. */
export function folded(
  { t }: App,
  title: Text,
  props: Props,
  ...children: readonly Child[]
): HTMLElement {
  return el("details", props, el("summary", {}, t(title)), ...children);
}

/** A list of choices, the present one chosen. */
export function choices(
  props: Props,
  options: readonly (readonly [value: string, shown: string])[],
  now: string,
): HTMLSelectElement {
  const shown = options.map(([value, name]) =>
    el("option", { value, selected: value === now }, name),
  );
  return el("select", props, ...shown);
}

export function tableHead({ t }: App, ...columns: readonly Text[]): HTMLElement {
  const cells = columns.map((name) => el("th", { scope: "col" }, t(name)));
  return el("thead", {}, el("tr", {}, ...cells));
}

export function factsOf({ t }: App, facts: readonly (readonly [Text, Text])[]): HTMLElement[] {
  return facts.map(([name, value]) => el("div", {}, el("dt", {}, t(name)), el("dd", {}, t(value))));
}

/** Puts children in place of those that are there. */
export function fill(parent: Element, ...children: readonly Child[]): void {
  parent.replaceChildren(...children.filter((child): child is Node | string => !!child));
}

/** Hands bytes to the person as a file. */
export function download(name: string, content: BlobPart, type: string): void {
  const address = URL.createObjectURL(new Blob([content], { type }));
  const link = el("a", { href: address, download: name });
  document.body.append(link);
  link.click();
  link.remove();
  // The browser reads the address after the click.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

/** Calls back when an element that was there before gets another width. */
export function whenWidthChanges(element: Element, call: () => void): void {
  let width: number | undefined;
  new ResizeObserver(() => {
    const now = element.clientWidth;
    if (width !== undefined && now !== width) call();
    width = now;
  }).observe(element);
}

/** Tells whether somebody types in a box just now: what comes meanwhile must not overwrite it. */
export function typingIn(box: HTMLInputElement): () => boolean {
  let typing = false;
  box.addEventListener("input", () => {
    typing = true;
  });
  for (const end of ["change", "blur"]) {
    box.addEventListener(end, () => {
      typing = false;
    });
  }
  return () => typing;
}

type TextBox = HTMLInputElement | HTMLTextAreaElement;

/** Boxes with text that somebody typed. */
function typedIn(root: HTMLElement): TextBox[] {
  const boxes = root.querySelectorAll<TextBox>("input[type=text][id]:not([readonly]),textarea[id]");
  return [...boxes].filter(({ value, defaultValue }) => value !== defaultValue);
}

/** Whether something was typed that nobody handed over yet; a form that was is marked `data-sent`. */
export function holdsTyped(root: HTMLElement): boolean {
  return typedIn(root).some((box) => !box.closest("[data-sent]"));
}

/** Makes what is inside anew: what was typed, unfolded or handed over stays so, and so does the place of the keys. */
export function keepingTyped(root: HTMLElement, make: () => void): void {
  const ids = (selector: string) => [...root.querySelectorAll(selector)].map(({ id }) => id);
  const marked = { open: ids("details[open][id]"), "data-sent": ids("[data-sent]") };
  const typed = typedIn(root);
  const focused = document.activeElement?.id;
  make();
  for (const { id, value, defaultValue } of typed) {
    const box = document.getElementById(id) as TextBox | null;
    // What has changed meanwhile is not overwritten.
    if (box?.defaultValue !== defaultValue) continue;
    box.value = value;
    box.dispatchEvent(new Event("input", { bubbles: true }));
  }
  for (const [mark, places] of Object.entries(marked)) {
    for (const id of places) document.getElementById(id)?.setAttribute(mark, "");
  }
  // Who worked on something that is gone stays on the page.
  if (focused) (document.getElementById(focused) ?? document.getElementById("main"))?.focus();
}
