/** Nothing else in a report has it. */
export const NOTICE_COLOUR = "#8a3b13";

/** First part of the Typst template: the data, colours, fonts, page, headings and captions. */
const templateStyle = `#let doc = json("/document.json")
#let meta = doc.meta
#let words = doc.words
// a user's file, empty where there is none: what it defines stands in place of ours
#import "/own.typ" as own-file
#let own = dictionary(own-file)
#let part(name, ours) = own.at(name, default: ours)
#let serif = part("serif", ("Source Serif 4", "Source Sans 3")) + meta.families
#let sans = part("sans", ("Source Sans 3", "Source Serif 4")) + meta.families
#let mono = part("mono", ("DejaVu Sans Mono", "Source Sans 3", "Source Serif 4")) + meta.families
#let accent = part("accent", rgb(meta.accent))
#let soft = part("soft", rgb("#5f564c"))
#let hair = part("hair", rgb("#d8cec1"))
#let wash = part("wash", rgb("#f5f0e8"))
#let warn = part("warn", rgb("#8a3b12"))
#let warn-wash = part("warn-wash", rgb("#fbf1e9"))
#let logo = if meta.logo == "" { none } else {
  let drawn(..size) = image("/" + meta.logo, alt: meta.logoText, ..size)
  context { if measure(drawn(height: 1.8cm)).width > 12cm { drawn(width: 12cm) } else { drawn(height: 1.8cm) } }
}
// a text that begins with right-to-left letters runs that way
// made once: making it anew for each cell took a third of the time of a report
#let right-to-left-start = regex("^[^\\p{L}]*[\\p{Arabic}\\p{Hebrew}\\p{Syriac}\\p{Thaana}\\p{Nko}]")
#let right-to-left(words) = words.contains(right-to-left-start)
#let said(words) = if right-to-left(words) { text(dir: rtl, words) } else { words }
// in its own colour, by which it is counted when the pages are made
#let invented-notice = text(font: ("Source Sans 3", "Source Serif 4"), size: 8.5pt, weight: 600, dir: ltr, fill: rgb("${NOTICE_COLOUR}"), meta.inventedShort)
// a handout is larger throughout
#let k = if meta.handout { 1.3 } else { 1 }
// a report whose list of contents stands in its text has a short head, and its first section on the first page
#let brief = doc.nodes.any(node => node.kind == "contents")
// a sheet is read at arm's length
#let sized(page, sheet) = if meta.sheet { sheet } else { page }

#set document(
  title: meta.title,
  keywords: meta.keywords,
  description: meta.description,
  date: datetime(year: meta.year, month: meta.month, day: meta.day),
)
#set text(font: sized(serif, sans), size: sized(9.5pt * k, 14pt), lang: meta.language, fallback: false, number-type: "lining", fill: rgb("#1f1a15"))
#set par(leading: sized(0.65em, 0.55em), spacing: sized(0.95em, 0.8em))
#set page(
  paper: meta.paper,
  margin: sized((x: 2.1cm, top: 2.5cm, bottom: 2cm), (x: 1.6cm, top: 1.8cm, bottom: 1.6cm)),
  header: context {
    set text(font: sans, size: 8.5pt, fill: soft)
    if "running-head" in own { (own.running-head)(doc, counter(page).get().first()) }
    else if counter(page).get().first() > 1 and not meta.sheet {
      block(width: 100%, stroke: (bottom: 0.5pt + hair), inset: (bottom: 5pt), grid(
        columns: (1fr, auto), column-gutter: 2em,
        said(meta.running), meta.longDate,
      ))
    }
  },
  footer: context {
    set text(font: sans, size: 8.5pt, fill: soft, number-width: "tabular")
    let (here, all) = (counter(page).get().first(), counter(page).final().first())
    if "running-foot" in own { (own.running-foot)(doc, here, all) }
    else {
      grid(columns: (1fr, auto), column-gutter: 2em, if meta.sheet [#words.noApproval #meta.running  ·  #meta.madeWith] else { said(meta.foot) },
        words.pageOf.replace("<page>", str(here)).replace("<pages>", str(all)))
    }
  },
)

#show heading: set text(font: sans, weight: 600)
#show heading: set par(leading: 0.5em, justify: false)
#show heading: it => block(above: 1.5em, below: 0.75em, sticky: true, {
  if it.numbering != none {
    text(fill: soft, weight: 400, (it.numbering)())
    h(0.6em)
  }
  it.body
})
#show heading.where(level: 1): set text(size: 14pt * k, fill: accent)
#show heading.where(level: 1): set block(above: 1.6em, below: 0.8em)
#show heading.where(level: 2): set text(size: 11.5pt * k)
#show heading.where(level: 3): set text(size: 10pt * k)
#set strong(delta: 200)
#show raw: set text(font: mono)
#show raw.where(block: true): set text(size: 8pt)
#show table: set block(below: 0.75em)
#show raw.where(block: true): it => block(width: 100%, fill: wash, inset: 8pt, radius: 2pt, breakable: true, align(left, it))
#show figure: set align(left)
#show figure: set block(above: 1.3em, below: 1.3em)
#show figure.where(kind: table): set figure.caption(position: top)
#set figure(gap: 0.6em)
#show figure.caption: it => block(width: 100%, sticky: it.kind == table, {
  set text(font: sans, size: 9pt * k, fill: soft)
  set par(leading: 0.55em)
  text(fill: accent, weight: 600, [#it.supplement #it.counter.display(it.numbering)])
  h(0.6em)
  it.body
})
#set list(indent: 0.3em, body-indent: 0.7em, marker: text(fill: accent, "–"))
#set enum(indent: 0.3em, body-indent: 0.7em)
`;

/** Second part of the Typst template: one function for inline nodes, one for blocks, and tables. */
const templateBlocks = `#let inlines(nodes) = {
  for node in nodes {
    if node.kind == "text" { [#node.text] }
    else if node.kind == "code" { raw(node.text) }
    else if node.kind == "math" { math.equation(alt: node.tex, eval(node.typst, mode: "math").body) }
    else if node.kind == "break" { linebreak() }
    else if node.kind == "emphasis" { emph(inlines(node.children)) }
    else if node.kind == "strong" { strong(inlines(node.children)) }
    else {
      inlines(node.children)
      if node.shown != "" { [ (#text(font: sans, size: 0.9em, fill: soft, node.shown))] }
    }
  }
}

#let rules = (top: 1pt + accent, head: 0.7pt + accent, row: 0.4pt + hair)
// an empty cell is to be written in, a number to be seen from afar
#let sheet-cell(cell, side) = {
  if cell == "" { box(height: 1.1em) }
  else if type(cell) == str and cell.contains("\n") { set par(leading: 0.8em); cell }
  else if side == "right" { text(weight: 700, cell) }
  else { [#cell] }
}
// rows that a page does not part: the first two, and the last two; of three all
#let kept-together(count) = if count < 2 { (:) } else if count == 3 { ("0": 3) } else { ("0": 2, str(count - 2): 2) }
// a row is parted only where a cell is as long as a paragraph
#let grid-table(columns, align, header, rows, parted: false) = {
  set text(font: sans, size: sized(8.2pt * k, if columns.len() > 4 { 12.5pt } else if rows.len() > 7 { 14.5pt } else { 16pt }), number-type: "lining", number-width: "tabular")
  set par(leading: sized(0.55em, 0.45em), justify: false)
  set table.cell(breakable: parted and not meta.sheet)
  // an empty column without width, whose cells hold rows together
  let tied = not parted and not meta.sheet
  let ties = kept-together(rows.len())
  let tie-of(at) = if not tied { () } else if str(at) in ties { (table.cell(rowspan: ties.at(str(at)), breakable: false, inset: 0pt, none),) } else if ties.pairs().any(((from, span)) => int(from) < at and at < int(from) + span) { () } else { (table.cell(inset: 0pt, none),) }
  let cells = rows.enumerate().map(((at, row)) => {
    let parts = row.enumerate().map(((x, cell)) => if meta.sheet { sheet-cell(cell, align.at(x)) } else if type(cell) == str { [#said(cell)] } else { [#cell] }) + tie-of(at)
    if at + 1 < rows.len() and not meta.sheet { parts + (table.hline(stroke: rules.row),) } else { parts }
  }).flatten()
  let head = if header == none { (table.hline(stroke: rules.top),) } else {
    (table.header(table.hline(stroke: rules.top), ..header, ..if tied { (table.cell(inset: 0pt, none),) }, table.hline(stroke: rules.head)),)
  }
  table(
    columns: columns.map(c => if c == 0 { auto } else { c * 1fr }) + if tied { (0pt,) },
    align: (x, y) => (if x == columns.len() { left } else if align.at(x) == "right" { right } else if align.at(x) == "center" { center } else { left }) + (if header != none and y == 0 { bottom } else { top }),
    inset: (x, y) => (left: if x == 0 { 1pt } else { 6pt }, right: if x + 1 == columns.len() { 1pt } else { 6pt }, y: 2.9pt * k) + sized((:), (left: 7pt, right: 7pt, y: if rows.len() in range(8, 14) { 6pt } else { 7pt })),
    stroke: sized(none, 0.6pt + soft),
    ..head, ..cells, table.hline(stroke: rules.top),
  )
}
// a plain text stays one: a sheet looks at what is written in its cells
#let grid-cell(cell, quiet: false) = {
  if cell.id != "" { [#metadata(none)#label(cell.id)] }
  if cell.pageOf != "" { context link(label(cell.pageOf), str(counter(page).at(label(cell.pageOf)).first())) }
  else if cell.to != "" { link(label(cell.to), text(fill: accent, cell.text)) }
  else if cell.strong { text(fill: warn, weight: 600, cell.text) }
  else if quiet { text(fill: soft, cell.text) }
  else { cell.text }
}
#let head-cell(column) = {
  text(weight: 600, column.header)
  if column.unit != "" { linebreak(); text(fill: soft, size: 0.92em, column.unit) }
}
// a short table stays on one page; a long one breaks, and its header is repeated
#let numbered(node, kind, supplement, body, whole: true) = {
  if node.at("number", default: none) == none {
    block(above: 1.1em, below: 1.1em, {
      if node.caption != "" { block(below: 0.5em, sticky: true, text(font: sans, size: sized(11pt, 15pt), weight: 600, fill: accent, node.caption)) }
      body
    })
    return
  }
  show figure: set block(breakable: not whole)
  [#figure(
    body, kind: kind, supplement: supplement, caption: [#said(node.caption)],
    numbering: (..) => str(node.number),
  )#label((if kind == table { "table-" } else { "figure-" }) + str(node.number))]
}
#let drawing(node, width: 100%) = numbered(node, image, words.figure, image("/figures/" + str(node.number) + ".svg", alt: node.alt, width: width))
#let boxed(tint, edge, body, whole: true) = block(
  width: 100%, fill: tint, stroke: (left: 2pt + edge), inset: (x: 10pt, y: sized(7pt, 6pt)), above: sized(1em, 0.7em), below: sized(1em, 0.7em), breakable: not whole and not meta.sheet,
  { set text(font: sans, size: sized(9pt * k, 12pt)); set par(leading: sized(0.58em, 0.5em), spacing: sized(0.65em, 0.5em)); body },
)
// a longer box may not fit a page
#let long-text = 1500
#let tag(words, tint) = { text(weight: 600, fill: tint, words); h(0.6em) }
#let detail(words) = par(text(size: sized(0.92em, 0.75em), fill: soft, words))

// main sections, in two columns
#let contents-list = {
  block(above: 1em, below: 0.7em, sticky: true, text(font: sans, size: 11.5pt, weight: 600, fill: accent, words.contents))
  set text(font: sans, size: 9pt, number-width: "tabular")
  set par(leading: 0.5em)
  set outline.entry(fill: box(width: 1fr, inset: (x: 4pt), repeat(text(fill: hair, "."), gap: 3pt)))
  show outline.entry: set block(above: 0.6em)
  context {
    let lines = calc.ceil(query(heading.where(level: 1, outlined: true)).len() / 2)
    block(height: lines * 1.5em, columns(2, gutter: 2em, outline(title: none, depth: 1)))
  }
}

#let show-blocks(nodes, top: false) = for (at, node) in nodes.enumerate() {
  let kind = node.kind
  // a sentence stays with the findings or the lines for a signature that it leads to, and one between headings with both
  let kind-at(at) = if at >= 0 and at < nodes.len() { nodes.at(at).kind } else { "" }
  let leads = kind-at(at + 1) in ("blanks", "entries") or kind-at(at - 1) == "heading" and kind-at(at + 1) == "heading"
  // without it a list would cling to the paragraph before it
  if top { parbreak() }
  if kind == "list" {
    let items = node.items.map(item => show-blocks(item))
    if node.ordered { enum(start: node.start, ..items) } else { list(..items) }
  } else if kind == "quote" {
    block(inset: (left: 1em), stroke: (left: 1.5pt + hair), { set text(fill: soft); show-blocks(node.children) })
  } else if kind == "heading" {
    // a clause checklist asks for the page of a section by its id
    let numbering = if node.number == "" { none } else { (..) => node.number }
    let made = heading(level: node.level, numbering: numbering, inlines(node.inlines))
    if node.id == "" { made } else [#made#label(node.id)]
  }
  else if kind == "prose" {
    let words = node.inlines.filter(inline => inline.kind == "text").map(inline => inline.text).join("")
    set text(hyphenate: true, dir: if words != none and right-to-left(words) { rtl } else { auto })
    if leads { block(sticky: true, par(inlines(node.inlines))) } else { par(inlines(node.inlines)) }
  }
  else if kind == "text" {
    let cited = node.cites.map(place => link(label(place.to), text(fill: accent, place.text)))
    // what cites a table leads to it
    block(sticky: leads or cited.len() > 0, par[#said(node.text)#if cited.len() > 0 [ (#cited.join([, ]))]#node.behind])
  }
  else if kind == "contents" { contents-list }
  else if kind == "writingLines" {
    block(width: 100%, above: 1em, below: 1.6em, breakable: false, for _ in range(node.lines) { block(above: 0pt, below: 0pt, height: 0.9cm, width: 100%, stroke: (bottom: 0.6pt + soft)) })
  } else if kind == "rule" { line(length: 100%, stroke: 0.5pt + hair) }
  else if kind == "break" { pagebreak(weak: true) }
  else if kind == "mathBlock" {
    if node.typst == none { raw(node.tex, block: true) }
    else { math.equation(block: true, numbering: none, alt: node.tex, eval(node.typst, mode: "math").body) }
  } else if kind == "proseTable" {
    block(above: 1.5em, below: 1.5em, grid-table(node.widths, node.sides, node.header.map(c => text(weight: 600, inlines(c))), node.rows.map(row => row.map(inlines)), parted: true))
  } else if kind == "grid" {
    numbered(node, table, words.table, whole: node.whole, {
      grid-table(node.widths, node.sides, if node.columns.all(c => c.header == "") { none } else { node.columns.map(head-cell) }, node.rows.map(row => row.enumerate().map(((x, cell)) => grid-cell(cell, quiet: node.pairs and x == 0))), parted: node.rows.any(row => row.any(cell => cell.text.len() > 700)))
      if node.notes.len() > 0 {
        block(above: 0.6em, { set text(font: sans, size: sized(8pt * k, 11pt), fill: soft); set par(leading: 0.5em, spacing: 0.5em); for note in node.notes { par[#note] } })
      }
    })
  } else if kind == "figure" {
    drawing(node, width: if node.half { 60% } else { 100% })
  } else if kind == "pair" {
    grid(columns: (1fr, 1fr), column-gutter: 1.4em, ..node.figures.map(one => drawing(one)))
  } else if kind == "stream" {
    if node.warning {
      boxed(warn-wash, warn, whole: false, { par({ tag(words.warning, warn); node.lead }); raw(node.text, block: true) })
    } else { raw(node.text, block: true) }
  } else if kind == "box" {
    let grave = node.tone == "warning"
    boxed(if grave { warn-wash } else { wash }, if grave { warn } else { accent }, whole: node.text.len() < long-text, par({ tag(node.tag, if grave { warn } else { accent }); said(node.text) }))
  } else if kind == "entries" and node.entries.len() == 0 {
    if node.whenEmpty != "" { par(node.whenEmpty) }
  } else if kind == "entries" and node.ordered {
    set text(font: sans, size: 9pt * k)
    set par(leading: 0.55em, spacing: 0.6em)
    enum(..node.entries.map(entry => { [#entry.text]; text(size: 0.92em, fill: soft, " (" + entry.mark + ")") }))
  } else if kind == "entries" {
    for entry in node.entries {
      let (tint, edge) = if entry.grave { (warn-wash, warn) } else { (wash, accent) }
      boxed(tint, edge, whole: (entry.text + entry.detail).len() < long-text, {
        if entry.title != "" { par(text(weight: 600, fill: edge, entry.title)) }
        par({ if entry.tag != "" { tag(entry.tag, edge) }; entry.text })
        if entry.detail != "" { detail(entry.detail) }
      })
    }
  } else if kind == "blanks" {
    block(width: 100%, breakable: false, stroke: 0.5pt + hair, inset: (x: 16pt, top: 10pt, bottom: 8pt), above: 1em, below: 1em, {
      set text(font: sans, size: 9.5pt)
      par(text(weight: 600, fill: accent, node.label))
      // two to a line; the last alone, with room for remarks
      grid(columns: (1fr, 1fr), column-gutter: 18pt, ..node.lines.enumerate().map(((at, words)) => grid.cell(colspan: if at + 1 == node.lines.len() and calc.even(at) { 2 } else { 1 }, {
        v(19pt)
        line(length: 100%, stroke: 0.5pt + soft)
        v(-7pt)
        par(text(size: 8.5pt, fill: soft, words))
      })))
    })
  } else { panic("unknown part: " + kind) }
}
`;

/** Third part: title page and contents, or the head of a sheet; body and annexes. */
const templatePages = `#let front-of-sheet = {
  show title: set text(font: sans, size: 28pt, weight: 700, fill: accent)
  show title: set block(above: 0pt, below: 0.5em)
  title()
  if meta.subtitle != "" { block(below: 0.45em, text(size: 15pt, weight: 600, meta.subtitle)) }
  block(above: 0pt, below: 0.8em, text(size: 11pt, fill: soft, meta.facts))
}
// the largest size at which the sheet keeps to its page; what no size brings onto one page keeps its own
#let one-page(body) = layout(page => {
  let fits(part) = measure(width: page.width / part, body).height * part <= page.height
  let part = (1, 0.95, 0.9, 0.85, 0.8, 0.75, 0.7).find(fits)
  if part == none { part = 1 }
  [#metadata(part) <print-scale>]
  if part == 1 { body } else { scale(part * 100%, origin: top + left, reflow: true, block(width: page.width / part, body)) }
})
#let title-of(size, below, ..look) = {
  show title: set text(font: sans, size: size, weight: 600, ..look)
  show title: set par(leading: 0.45em, justify: false)
  show title: set align(left)
  show title: set block(above: 0pt, below: below)
  title(said(meta.title))
}
#let front-of-handout = {
  if logo != none { block(below: 1.6em, logo) }
  title-of(22pt, 0.7em, fill: accent)
  if meta.subtitle != "" { block(below: 0.9em, text(size: 13pt, fill: soft, said(meta.subtitle))) }
  block(above: 0pt, below: 1.6em, width: 100%, stroke: (bottom: 0.5pt + hair), inset: (bottom: 8pt), text(font: sans, size: 10pt, fill: soft, meta.facts))
}
#let title-of-report = {
  if logo != none { block(above: 0pt, below: if brief { 0.5cm } else { 1.4cm }, logo) } else if not brief { v(2.2cm) }
  if not brief { block(width: 1.6cm, height: 5pt, fill: accent, below: 16pt) }
  title-of(if brief { 18pt } else { 25pt }, 0.6em)
  if meta.subtitle != "" { block(above: 0pt, below: if brief { 0.5em } else { 1em }, text(size: if brief { 11pt } else { 14pt }, fill: soft, said(meta.subtitle))) }
  block(above: if brief { 0.5em } else { 1.4em }, below: if brief { 0.8em } else { 1.4em }, text(font: sans, size: if brief { 9pt } else { 10pt }, fill: soft, meta.facts))
}
#let contents-of-report = {
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
#let front-of-report = {
  if "title-page" in own { (own.title-page)(doc, logo) } else { title-of-report }
  if meta.invented { boxed(warn-wash, warn, par(text(weight: 600, fill: warn, meta.inventedLong))) }
  if not brief { contents-of-report }
}
#show: part("styling", body => body)
// behind a maker's rules and above all that is drawn, so that it cannot be replaced or covered
#set page(foreground: if meta.invented {
  pdf.artifact(kind: "page", place(top + left, dx: sized(2.1cm, 1.6cm), dy: sized(1cm, 0.8cm), invented-notice))
})
#for file in doc.attached {
  pdf.attach(file.name, read("/attached/" + str(file.at), encoding: none), relationship: file.relationship, mime-type: file.mimeType, description: file.description)
}
#if meta.onePage { one-page({ front-of-sheet; show-blocks(doc.nodes, top: true) }) } else {
  if meta.sheet { front-of-sheet } else if meta.handout {
    if "title-page" in own { (own.title-page)(doc, logo) } else { front-of-handout }
  } else { front-of-report }
  show-blocks(doc.nodes, top: true)
}

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

/** The notice of invented data alone, as it must stand on each page. */
export const noticeTemplate = `${templateStyle}\n#invented-notice`;
