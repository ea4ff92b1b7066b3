/**
 * The part of a browser's document that plotly draws into: elements with attributes, styles and text, found
 * by selectors, written as XML. Nothing is laid out, loaded or run, so it is made in no time and a figure
 * is drawn faster than in a whole imitation of a browser.
 *
 * Why it is our own: processor time for the eleven figures of `mix-design.ipynb`, loading included, was 1.5 s
 * here, 2.2 s in linkedom 0.18, 3.2 s in happy-dom 21 and 3.7 s in jsdom 26. linkedom writes attributes in
 * reverse order, happy-dom leaves marks of its own in the names of fonts; svgdom 0.1 does not carry plotly, and
 * @xmldom/xmldom and slimdom know no selectors.
 *
 * Source: DOM Standard and CSSOM of the WHATWG and the CSS working group, from memory.
 */

export const SVG_NAMESPACE = "http://www.w3.org/2000/svg";
const HTML_NAMESPACE = "http://www.w3.org/1999/xhtml";

const ELEMENT = 1;
const TEXT = 3;
const DOCUMENT = 9;

/** A node in the tree: each knows its neighbours, so that a child is put in or taken out in one step. */
abstract class DrawnNode {
  abstract readonly nodeType: number;
  parentNode: DrawnElement | DrawnDocument | null = null;
  previousSibling: DrawnNode | null = null;
  nextSibling: DrawnNode | null = null;

  abstract get textContent(): string;

  get parentElement(): DrawnElement | null {
    return this.parentNode instanceof DrawnElement ? this.parentNode : null;
  }

  remove(): void {
    this.parentNode?.removeChild(this);
  }
}

export class DrawnText extends DrawnNode {
  readonly nodeType = TEXT;
  readonly nodeName = "#text";
  readonly childNodes: readonly DrawnNode[] = [];
  readonly firstChild = null;

  constructor(
    public nodeValue: string,
    readonly ownerDocument: DrawnDocument,
  ) {
    super();
  }

  get textContent(): string {
    return this.nodeValue;
  }
}

/** What holds other nodes. */
abstract class DrawnParent extends DrawnNode {
  firstChild: DrawnNode | null = null;
  lastChild: DrawnNode | null = null;

  get childNodes(): DrawnNode[] {
    const nodes: DrawnNode[] = [];
    for (let node = this.firstChild; node !== null; node = node.nextSibling) nodes.push(node);
    return nodes;
  }

  get children(): DrawnElement[] {
    return this.childNodes.filter((node) => node instanceof DrawnElement);
  }

  append(...nodes: DrawnNode[]): void {
    for (const node of nodes) this.appendChild(node);
  }

  appendChild<T extends DrawnNode>(node: T): T {
    return this.insertBefore(node, null);
  }

  insertBefore<T extends DrawnNode>(node: T, before: DrawnNode | null | undefined): T {
    if (node === (before as DrawnNode | null)) return node;
    if (before && before.parentNode !== (this as unknown)) {
      throw new TypeError("invalid `before`: no child of this node; expected one of its children");
    }
    if (node instanceof DrawnParent && node.contains(this)) {
      throw new TypeError("invalid `node`: it holds its new parent; expected a node outside of it");
    }
    node.remove();
    const next = before ?? null;
    const previous = next === null ? this.lastChild : next.previousSibling;
    node.parentNode = this as unknown as DrawnElement;
    node.previousSibling = previous;
    node.nextSibling = next;
    if (previous === null) this.firstChild = node;
    else previous.nextSibling = node;
    if (next === null) this.lastChild = node;
    else next.previousSibling = node;
    return node;
  }

  removeChild<T extends DrawnNode>(node: T): T {
    if (node.parentNode !== (this as unknown)) {
      throw new TypeError("invalid `node`: no child of this node; expected one of its children");
    }
    const { previousSibling, nextSibling } = node;
    if (previousSibling === null) this.firstChild = nextSibling;
    else previousSibling.nextSibling = nextSibling;
    if (nextSibling === null) this.lastChild = previousSibling;
    else nextSibling.previousSibling = previousSibling;
    node.parentNode = null;
    node.previousSibling = null;
    node.nextSibling = null;
    return node;
  }

  contains(node: DrawnNode | null): boolean {
    for (let at = node; at !== null; at = at.parentNode) if (at === (this as unknown)) return true;
    return false;
  }

  querySelector(selector: string): DrawnElement | null {
    const wanted = parsedSelector(selector);
    for (let at = following(this, this); at !== null; at = following(at, this)) {
      if (at instanceof DrawnElement && matchesAny(at, wanted)) return at;
    }
    return null;
  }

  querySelectorAll(selector: string): DrawnElement[] {
    const wanted = parsedSelector(selector);
    const found: DrawnElement[] = [];
    for (let at = following(this, this); at !== null; at = following(at, this)) {
      if (at instanceof DrawnElement && matchesAny(at, wanted)) found.push(at);
    }
    return found;
  }
}

/** The next node in the order of the document, inside `root`. */
function following(node: DrawnNode, root: DrawnNode): DrawnNode | null {
  if (node instanceof DrawnParent && node.firstChild !== null) return node.firstChild;
  for (let at: DrawnNode | null = node; at !== null && at !== root; at = at.parentNode) {
    if (at.nextSibling !== null) return at.nextSibling;
  }
  return null;
}

interface DrawnAttribute {
  readonly name: string;
  readonly value: string;
}

export class DrawnElement extends DrawnParent {
  readonly nodeType = ELEMENT;
  readonly localName: string;
  readonly tagName: string;
  readonly nodeName: string;
  private readonly held = new Map<string, string>();
  private ownStyle: DrawnStyle | undefined;
  private ownClasses: ClassList | undefined;

  constructor(
    readonly namespaceURI: string,
    name: string,
    readonly ownerDocument: DrawnDocument,
  ) {
    super();
    this.localName = name;
    this.tagName = namespaceURI === HTML_NAMESPACE ? name.toUpperCase() : name;
    this.nodeName = this.tagName;
  }

  get textContent(): string {
    let text = "";
    for (let at = following(this, this); at !== null; at = following(at, this)) {
      if (at instanceof DrawnText) text += at.nodeValue;
    }
    return text;
  }

  set textContent(text: string | null) {
    while (this.firstChild !== null) this.removeChild(this.firstChild);
    const words = String(text ?? "");
    if (words !== "") this.appendChild(this.ownerDocument.createTextNode(words));
  }

  get id(): string {
    return this.held.get("id") ?? "";
  }

  set id(id: string) {
    this.held.set("id", String(id));
  }

  get className(): string {
    return this.held.get("class") ?? "";
  }

  set className(names: string) {
    this.setAttribute("class", names);
  }

  get classList(): ClassList {
    this.ownClasses ??= new ClassList(this);
    return this.ownClasses;
  }

  get style(): DrawnStyle {
    this.ownStyle ??= new DrawnStyle(() => {
      if (!this.held.has("style")) this.held.set("style", "");
    });
    return this.ownStyle;
  }

  /** In the order in which they were set. */
  get attributes(): DrawnAttribute[] {
    return Array.from(this.held.keys(), (name) => ({
      name,
      value: this.getAttribute(name) as string,
    }));
  }

  getAttribute(name: string): string | null {
    const value = this.held.get(name) ?? null;
    return name === "style" && value !== null ? this.style.cssText : value;
  }

  hasAttribute(name: string): boolean {
    return this.held.has(name);
  }

  setAttribute(name: string, value: unknown): void {
    this.held.set(name, String(value));
    if (name === "style") this.style.cssText = String(value);
    if (name === "class") this.ownClasses?.forget();
  }

  removeAttribute(name: string): void {
    this.held.delete(name);
    if (name === "style") this.style.cssText = "";
    if (name === "class") this.ownClasses?.forget();
  }

  getAttributeNS(_namespace: string | null, name: string): string | null {
    return this.getAttribute(this.held.has(name) ? name : (this.withPrefix(name) ?? name));
  }

  setAttributeNS(_namespace: string | null, name: string, value: unknown): void {
    this.setAttribute(name, value);
  }

  removeAttributeNS(_namespace: string | null, name: string): void {
    this.removeAttribute(this.held.has(name) ? name : (this.withPrefix(name) ?? name));
  }

  private withPrefix(localName: string): string | undefined {
    return [...this.held.keys()].find((name) => name.endsWith(`:${localName}`));
  }

  matches(selector: string): boolean {
    return matchesAny(this, parsedSelector(selector));
  }

  cloneNode(deep = false): DrawnElement {
    const copy = new DrawnElement(this.namespaceURI, this.localName, this.ownerDocument);
    for (const { name, value } of this.attributes) copy.setAttribute(name, value);
    if (!deep) return copy;
    for (const child of this.childNodes) {
      if (child instanceof DrawnElement) copy.append(child.cloneNode(true));
      else copy.append(this.ownerDocument.createTextNode(child.textContent));
    }
    return copy;
  }

  // nobody points at a still drawing
  addEventListener(): void {}
  removeEventListener(): void {}
  /** Rules for a drawing that is looked at with a mouse: they style nothing of a still one. */
  readonly sheet = { insertRule(): void {} };
  /** A canvas, which plotly asks whether it can paint: nothing is painted here. */
  getContext(): null {
    return null;
  }
}

/** Classes of an element. */
class ClassList {
  private names: Set<string> | undefined;

  constructor(private readonly element: DrawnElement) {}

  forget(): void {
    this.names = undefined;
  }

  private get set(): Set<string> {
    this.names ??= new Set(this.element.className.split(/\s+/).filter((name) => name !== ""));
    return this.names;
  }

  contains(name: string): boolean {
    return this.set.has(name);
  }

  add(...names: string[]): void {
    const missing = names.filter((name) => !this.contains(name));
    if (missing.length > 0) this.element.className = [...this.set, ...missing].join(" ");
  }

  remove(...names: string[]): void {
    if (!names.some((name) => this.contains(name))) return;
    this.element.className = [...this.set].filter((name) => !names.includes(name)).join(" ");
  }
}

/** The style of one element: no cascade, no check of the values. */
export class DrawnStyle {
  private readonly values = new Map<string, string>();

  /** @param changed told of each change */
  constructor(private readonly changed: () => void) {}

  setProperty(name: string, value: unknown): void {
    const text = value === null || value === undefined ? "" : String(value).trim();
    if (text === "") this.values.delete(name);
    else this.values.set(name, text);
    this.changed();
  }

  getPropertyValue(name: string): string {
    return this.values.get(name) ?? "";
  }

  removeProperty(name: string): void {
    this.values.delete(name);
  }

  get cssText(): string {
    return Array.from(this.values, ([name, value]) => `${name}: ${value};`).join(" ");
  }

  set cssText(text: string) {
    this.values.clear();
    for (const declaration of text.split(/;(?=(?:[^"']|"[^"]*"|'[^']*')*$)/)) {
      const colon = declaration.indexOf(":");
      if (colon > 0) {
        this.setProperty(declaration.slice(0, colon).trim(), declaration.slice(colon + 1));
      }
    }
  }
}

export class DrawnDocument extends DrawnParent {
  readonly nodeType = DOCUMENT;
  readonly nodeName = "#document";
  readonly documentElement: DrawnElement;
  readonly head: DrawnElement;
  readonly body: DrawnElement;
  defaultView: object | null = null;

  constructor() {
    super();
    this.documentElement = this.appendChild(this.createElement("html"));
    this.head = this.documentElement.appendChild(this.createElement("head"));
    this.body = this.documentElement.appendChild(this.createElement("body"));
  }

  get textContent(): string {
    return this.documentElement.textContent;
  }

  createElement(name: string): DrawnElement {
    return new DrawnElement(HTML_NAMESPACE, name.toLowerCase(), this);
  }

  createElementNS(namespace: string, name: string): DrawnElement {
    return new DrawnElement(namespace, name, this);
  }

  createTextNode(text: unknown): DrawnText {
    return new DrawnText(String(text), this);
  }

  getElementById(id: string): DrawnElement | null {
    for (let at = following(this, this); at !== null; at = following(at, this)) {
      if (at instanceof DrawnElement && at.id === id) return at;
    }
    return null;
  }

  addEventListener(): void {}
  removeEventListener(): void {}
}

type Test = (element: DrawnElement) => boolean;

/** What one step of a selector asks of an element. */
interface Step {
  readonly tests: readonly Test[];
  /** Whether the step before it has to be the parent, or may stand anywhere above. */
  readonly child: boolean;
}

const selectors = new Map<string, readonly (readonly Step[])[]>();
const BEFORE_STEP = /\s*(>?)\s*/y;
const SIMPLE =
  /(\*)|([\w-]+)|#([\w-]+)|\.([\w-]+)|(:first-child)|:not\(\[([\w:-]+)\]\)|\[([\w:-]+)(?:([*^]?=)["']?([^\]"']*)["']?)?\]/y;

/**
 * Reads a selector: tags, `#id`, `.class`, `[name]`, `[name=value]`, `[name*=part]`, `[name^=start]`,
 * `:not([name])`, `:first-child`, with steps inside each other or as children, and several by commas.
 *
 * @throws SyntaxError for what is beyond that, so that nothing is silently not found
 */
function parsedSelector(selector: string): readonly (readonly Step[])[] {
  const known = selectors.get(selector);
  if (known !== undefined) return known;
  const parsed = selector.split(",").map((branch) => {
    const steps: Step[] = [];
    const words = branch.trim();
    for (let at = 0; at < words.length || steps.length === 0; ) {
      BEFORE_STEP.lastIndex = at;
      const child = BEFORE_STEP.exec(words)?.[1] === ">";
      const tests: Test[] = [];
      SIMPLE.lastIndex = BEFORE_STEP.lastIndex;
      for (let found = SIMPLE.exec(words); found !== null; found = SIMPLE.exec(words)) {
        at = SIMPLE.lastIndex;
        tests.push(testOf(found));
      }
      if (tests.length === 0) {
        throw new SyntaxError(
          `invalid \`selector\`: ${selector}; expected tags, ids, classes, attributes`,
        );
      }
      steps.push({ tests, child });
    }
    return steps;
  });
  selectors.set(selector, parsed);
  return parsed;
}

function testOf(found: RegExpExecArray): Test {
  const [, any, tag, id, className, first, absent, name, sign, value = ""] = found;
  if (any !== undefined) return () => true;
  if (tag !== undefined) return ({ localName }) => localName === tag;
  if (id !== undefined) return (element) => element.id === id;
  if (className !== undefined) return ({ classList }) => classList.contains(className);
  if (first !== undefined) return (element) => element.parentNode?.children[0] === element;
  if (absent !== undefined) return (element) => !element.hasAttribute(absent);
  const held = (element: DrawnElement) => element.getAttribute(name as string);
  if (sign === "=") return (element) => held(element) === value;
  if (sign === "*=") return (element) => held(element)?.includes(value) === true;
  if (sign === "^=") return (element) => held(element)?.startsWith(value) === true;
  return (element) => held(element) !== null;
}

function matchesAny(element: DrawnElement, branches: readonly (readonly Step[])[]): boolean {
  return branches.some((steps) => matchesFrom(element, steps, steps.length - 1));
}

/** Whether an element is what the step asks, and stands in what the steps before it ask. */
function matchesFrom(element: DrawnElement, steps: readonly Step[], at: number): boolean {
  const step = steps[at] as Step;
  if (!step.tests.every((test) => test(element))) return false;
  if (at === 0) return true;
  for (let above = element.parentElement; above !== null; above = above.parentElement) {
    if (matchesFrom(above, steps, at - 1)) return true;
    if (step.child) return false;
  }
  return false;
}

const ESCAPES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "\t": "&#9;",
  "\n": "&#xA;",
  "\r": "&#xD;",
};

const escaped = (text: string, signs: RegExp) =>
  text.replace(signs, (sign) => ESCAPES[sign] as string);

/**
 * Writes an element as XML that stands by itself.
 *
 * Source: DOM Parsing and Serialization, XML serialization, from memory.
 *
 * @example
 * const root = new DrawnDocument().createElementNS(SVG_NAMESPACE, "svg");
 * root.textContent = "a < b";
 * serializedXml(root) // => '<svg xmlns="http://www.w3.org/2000/svg">a &lt; b</svg>'
 */
export function serializedXml(element: DrawnElement): string {
  const names = new Set(
    [element, ...element.querySelectorAll("*")].flatMap(({ attributes }) =>
      attributes.map(({ name }) => name),
    ),
  );
  const linked = [...names].some((name) => name.startsWith("xlink:"));
  const declared = [
    names.has("xmlns") ? "" : ` xmlns="${element.namespaceURI}"`,
    linked && !names.has("xmlns:xlink") ? ' xmlns:xlink="http://www.w3.org/1999/xlink"' : "",
  ];
  return written(element, declared.join(""));
}

function written(element: DrawnElement, declared: string): string {
  const { localName } = element;
  let text = `<${localName}${declared}`;
  for (const { name, value } of element.attributes) {
    text += ` ${name}="${escaped(value, /[&<>"\t\n\r]/g)}"`;
  }
  if (element.firstChild === null) return `${text}/>`;
  text += ">";
  for (let at: DrawnNode | null = element.firstChild; at !== null; at = at.nextSibling) {
    if (at instanceof DrawnText) text += escaped(at.nodeValue, /[&<>]/g);
    else if (at instanceof DrawnElement) text += written(at, "");
  }
  return `${text}</${localName}>`;
}
