import { JSDOM } from "jsdom";
import { describe, expect, test } from "vitest";
import {
  DrawnDocument,
  type DrawnElement,
  SVG_NAMESPACE,
  serializedXml,
} from "../../src/figures/svg/drawingDom.js";

interface Tree {
  readonly name: string;
  readonly attributes?: Readonly<Record<string, string>>;
  readonly children?: readonly (Tree | string)[];
}

const TREE: Tree = {
  name: "svg",
  attributes: { class: "main-svg", width: "10" },
  children: [
    { name: "defs" },
    {
      name: "g",
      attributes: { class: "traces  first", id: "t1" },
      children: [
        { name: "path", attributes: { class: "js-line", d: "M0,0" } },
        { name: "path", attributes: { class: "point" } },
        {
          name: "g",
          attributes: { class: "x-math-group" },
          children: [{ name: "text", children: ['a < b & "c"', { name: "tspan" }, " end"] }],
        },
      ],
    },
    { name: "g", attributes: { id: "t2" }, children: [{ name: "path", attributes: { d: "" } }] },
  ],
};

function build(document: Document | DrawnDocument, tree: Tree): Element {
  const made = document.createElementNS(SVG_NAMESPACE, tree.name) as Element;
  for (const [name, value] of Object.entries(tree.attributes ?? {})) made.setAttribute(name, value);
  for (const child of tree.children ?? []) {
    const node =
      typeof child === "string" ? document.createTextNode(child) : build(document, child);
    made.appendChild(node as Node);
  }
  return made;
}

const { window } = new JSDOM("");

/** The same tree here and in jsdom. */
function both(): { ours: DrawnElement; theirs: Element } {
  const ours = build(new DrawnDocument(), TREE) as unknown as DrawnElement;
  return { ours, theirs: build(window.document, TREE) };
}

const written = (theirs: Element) => new window.XMLSerializer().serializeToString(theirs);

describe("the document that plotly draws into", () => {
  test.each([
    ["path"],
    ["*"],
    [".traces path.js-line"],
    ["g>path"],
    ["svg > g > g text"],
    ["#t2 path, defs"],
    ["path:not([d])"],
    ["g[class*=math-group]"],
    ["[class^='traces']"],
    ["path[d='']"],
    [":first-child"],
    ["g:first-child"],
    [".nothing"],
  ])("finds what a browser's finds: %s", (selector) => {
    const { ours, theirs } = both();
    const names = (found: Iterable<DrawnElement | Element>) =>
      Array.from(found, (element) => `${element.localName} ${element.getAttribute("class")}`);
    expect(names(ours.querySelectorAll(selector))).toEqual(
      names(theirs.querySelectorAll(selector)),
    );
    expect(ours.querySelector(selector)?.localName).toBe(theirs.querySelector(selector)?.localName);
  });

  test("tells of a selector that it does not know, instead of finding nothing", () => {
    expect(() => both().ours.querySelector("g:nth-child(2)")).toThrow(/nth-child/);
    for (const unknown of ["g + path", "[class$=a]", "g:not(.a)", "", "g,"]) {
      expect(() => both().ours.querySelector(unknown), unknown).toThrow(SyntaxError);
    }
  });

  test("changes and writes as a browser's does", () => {
    const { ours, theirs } = both();
    const change = (svg: Element) => {
      const [first, second] = Array.from(svg.querySelectorAll("g"));
      first.insertBefore(second as Element, first.firstChild);
      (svg.querySelector("path") as SVGElement).style.setProperty("fill", "none");
      svg.setAttribute("style", "opacity: 1; font-family: 'A; B'");
      (svg as SVGElement).style.setProperty("opacity", "0.5");
      svg.querySelector(".point")?.remove();
      const text = svg.querySelector("text") as Element;
      text.insertBefore(svg.querySelector("defs") as Element, text.lastChild);
      text.classList.add("one");
      text.classList.add("two");
      text.classList.remove("one");
      svg.appendChild(first.cloneNode(true));
    };
    change(ours as unknown as Element);
    change(theirs);
    expect(serializedXml(ours).replaceAll("'", "&quot;")).toBe(written(theirs));
    expect(ours.textContent).toBe(theirs.textContent);
  });

  test("lets nobody put a node into itself, or take out what is not there", () => {
    const { ours } = both();
    const group = ours.querySelector("g") as DrawnElement;
    expect(() => group.appendChild(ours)).toThrow(TypeError);
    expect(() => group.removeChild(ours.querySelector("defs") as DrawnElement)).toThrow(TypeError);
  });
});
