import { templateBlocks } from "./templateBlocks.js";
import { templateStyle } from "./templateStyle.js";

/** Third part: title page and contents, or the head of a sheet; body and annexes. */
const templatePages = `#let front-of-sheet = {
  show title: set text(font: sans, size: 28pt, weight: 700, fill: accent)
  show title: set block(above: 0pt, below: 0.5em)
  title()
  if meta.subtitle != "" { block(below: 0.45em, text(size: 15pt, weight: 600, meta.subtitle)) }
  block(above: 0pt, below: 0.8em, text(size: 11pt, fill: soft, meta.facts))
}
#let front-of-handout = {
  if logo != none { block(below: 1.6em, logo) }
  show title: set text(font: sans, size: 22pt, weight: 600, fill: accent)
  show title: set par(leading: 0.45em, justify: false)
  show title: set align(left)
  show title: set block(above: 0pt, below: 0.7em)
  title(said(meta.title))
  if meta.subtitle != "" { block(below: 0.9em, text(size: 13pt, fill: soft, said(meta.subtitle))) }
  block(above: 0pt, below: 1.6em, width: 100%, stroke: (bottom: 0.5pt + hair), inset: (bottom: 8pt), text(font: sans, size: 10pt, fill: soft, meta.facts))
}
#let title-of-report = {
  if logo != none { v(0.6cm); block(below: 1.4cm, logo) } else { v(2.2cm) }
  block(width: 1.6cm, height: 5pt, fill: accent, below: 16pt)
  {
    show title: set text(font: sans, size: 25pt, weight: 600)
    show title: set par(leading: 0.45em, justify: false)
    show title: set align(left)
    show title: set block(below: 0.6em)
    title(said(meta.title))
  }
  if meta.subtitle != "" { block(below: 1em, text(size: 14pt, fill: soft, said(meta.subtitle))) }
  block(above: 1.4em, below: 1.4em, text(font: sans, size: 10pt, fill: soft, meta.facts))
}
#let front-of-report = {
  if "title-page" in own { (own.title-page)(doc, logo) } else { title-of-report }
  if meta.invented { boxed(warn-wash, warn, par(text(weight: 600, fill: warn, meta.inventedLong))) }
  v(1cm)
  {
    show heading: set text(size: 12.5pt, fill: accent)
    heading(level: 1, numbering: none, outlined: false, bookmarked: false, words.contents)
  }
  {
    set text(font: sans, size: 10pt, number-width: "tabular")
    show outline.entry.where(level: 1): set block(above: 0.95em)
    show outline.entry.where(level: 1): set text(weight: 600)
    set outline.entry(fill: box(width: 1fr, inset: (x: 4pt), repeat(text(fill: hair, "."), gap: 3pt)))
    outline(title: none, depth: 2, indent: 1.6em)
  }
  pagebreak()
}
#show: part("dress", body => body)
#for file in doc.attached {
  pdf.attach(file.name, read("/attached/" + str(file.at), encoding: none), relationship: file.relationship, mime-type: file.mimeType, description: file.description)
}
#if meta.sheet { front-of-sheet } else if meta.handout {
  if "title-page" in own { (own.title-page)(doc, logo) } else { front-of-handout }
} else { front-of-report }
#show-blocks(doc.nodes, top: true)

#if meta.inputs.len() > 0 {
  heading(level: 1, numbering: none, words.annexFiles)
  grid-table((1, 0), ("left", "left"), (text(weight: 600, words.file), text(weight: 600, words.digest)),
    meta.inputs.map(input => (input.file, text(font: mono, size: 6.5pt, input.sha256))))
}
#if doc.annex.len() > 0 {
  pagebreak(weak: true)
  heading(level: 1, numbering: none, words.annexCode)
  for cell in doc.annex {
    block(above: 1.3em, below: 0.6em, sticky: true, text(font: sans, size: 9pt, fill: soft, cell.lead))
    raw(cell.text, block: true)
  }
}
`;

/**
 * Typst template of the PDF. It reads the whole report with `json(…)` from a virtual file, so
 * no text of a study is ever part of this source; only formulas that passed `typstMath` are
 * evaluated, and only as maths.
 */
export const template = [templateStyle, templateBlocks, templatePages].join("\n");
