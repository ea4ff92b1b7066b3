/** Second part of the Typst template: one function for inline nodes, one for blocks, and tables. */
export const templateBlocks = `#let inlines(nodes) = {
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
#let grid-table(columns, align, header, rows) = {
  set text(font: sans, size: sized(9pt * k, if columns.len() > 4 { 12.5pt } else if rows.len() > 7 { 14.5pt } else { 16pt }), number-type: "lining", number-width: "tabular")
  set par(leading: sized(0.55em, 0.45em), justify: false)
  set table.cell(breakable: not meta.sheet)
  let cells = rows.enumerate().map(((at, row)) => {
    let parts = row.enumerate().map(((x, cell)) => if meta.sheet { sheet-cell(cell, align.at(x)) } else if type(cell) == str { [#said(cell)] } else { [#cell] })
    if at + 1 < rows.len() and not meta.sheet { parts + (table.hline(stroke: rules.row),) } else { parts }
  }).flatten()
  let head = if header == none { (table.hline(stroke: rules.top),) } else {
    (table.header(table.hline(stroke: rules.top), ..header, table.hline(stroke: rules.head)),)
  }
  table(
    columns: columns.map(c => if c == 0 { auto } else { c * 1fr }),
    align: (x, y) => (if align.at(x) == "right" { right } else if align.at(x) == "center" { center } else { left }) + (if header != none and y == 0 { bottom } else { top }),
    inset: (x, y) => (left: if x == 0 { 1pt } else { 6pt }, right: if x + 1 == columns.len() { 1pt } else { 6pt }, y: 5pt) + sized((:), (left: 7pt, right: 7pt, y: if rows.len() in range(8, 14) { 6pt } else { 7pt })),
    stroke: sized(none, 0.6pt + soft),
    ..head, ..cells, table.hline(stroke: rules.top),
  )
}
#let head-cell(column) = {
  text(weight: 600, column.header)
  if column.unit != "" { linebreak(); text(fill: soft, size: 0.92em, column.unit) }
}
// a short table stays on one page; a long one breaks, and its header is repeated
#let numbered(node, kind, supplement, body, rows: 0) = {
  if node.at("number", default: none) == none {
    block(above: 1.1em, below: 1.1em, {
      if node.caption != "" { block(below: 0.5em, sticky: true, text(font: sans, size: sized(11pt, 15pt), weight: 600, fill: accent, node.caption)) }
      body
    })
    return
  }
  show figure: set block(breakable: rows > 14)
  figure(
    body, kind: kind, supplement: supplement, caption: [#said(node.caption)],
    numbering: (..) => str(node.number),
  )
}
#let boxed(tint, edge, body, whole: true) = block(
  width: 100%, fill: tint, stroke: (left: 2pt + edge), inset: (x: 11pt, y: sized(9pt, 6pt)), above: sized(1.3em, 0.7em), below: sized(1.3em, 0.7em), breakable: not whole and not meta.sheet,
  { set text(font: sans, size: sized(9.5pt * k, 12pt)); set par(leading: sized(0.62em, 0.5em), spacing: sized(0.75em, 0.5em)); body },
)
// a longer box may not fit a page
#let long-text = 1500
#let tag(words, tint) = { text(weight: 600, fill: tint, words); h(0.6em) }
#let detail(words) = par(text(size: sized(0.92em, 0.75em), fill: soft, words))

#let show-blocks(nodes, top: false) = for node in nodes {
  let kind = node.kind
  // without it a list would cling to the paragraph before it
  if top { parbreak() }
  if kind == "list" {
    let items = node.items.map(item => show-blocks(item))
    if node.ordered { enum(start: node.start, ..items) } else { list(..items) }
  } else if kind == "quote" {
    block(inset: (left: 1em), stroke: (left: 1.5pt + hair), { set text(fill: soft); show-blocks(node.children) })
  } else if kind == "heading" {
    // a clause checklist asks for the page of a section by its id
    if node.id == "" { heading(level: node.level, inlines(node.inlines)) }
    else [#heading(level: node.level, inlines(node.inlines))#label(node.id)]
  }
  else if kind == "prose" {
    let words = node.inlines.filter(inline => inline.kind == "text").map(inline => inline.text).join("")
    set text(hyphenate: true, dir: if words != none and right-to-left(words) { rtl } else { auto })
    par(inlines(node.inlines))
  }
  else if kind == "paragraph" { par[#said(node.text)] }
  else if kind == "writingLines" {
    block(width: 100%, above: 1em, below: 1.6em, breakable: false, for _ in range(node.lines) { block(above: 0pt, below: 0pt, height: 0.9cm, width: 100%, stroke: (bottom: 0.6pt + soft)) })
  } else if kind == "rule" { line(length: 100%, stroke: 0.5pt + hair) }
  else if kind == "pageBreak" { pagebreak(weak: true) }
  else if kind == "mathBlock" {
    if node.typst == none { raw(node.tex, block: true) }
    else { math.equation(block: true, numbering: none, alt: node.tex, eval(node.typst, mode: "math").body) }
  } else if kind == "proseTable" {
    block(above: 1.5em, below: 1.5em, grid-table(node.widths, node.sides, node.header.map(c => text(weight: 600, inlines(c))), node.rows.map(row => row.map(inlines))))
  } else if kind == "table" {
    numbered(node, table, words.table, rows: node.rows.len(), {
      grid-table(node.widths, node.sides, if node.columns.all(c => c.header == "") { none } else { node.columns.map(head-cell) }, node.rows)
      if node.notes.len() > 0 {
        block(above: 0.8em, { set text(font: sans, size: sized(8.5pt, 11pt), fill: soft); set par(leading: 0.55em, spacing: 0.6em); for note in node.notes { par[#note] } })
      }
    })
  } else if kind == "keyValues" {
    numbered(node, table, words.table, grid-table(node.widths, node.sides, none, node.items.map(item => (text(fill: soft, item.label), item.value))), rows: node.items.len())
  } else if kind == "checklist" {
    let answer(row) = if row.label == "" { text(fill: warn, weight: 600, row.words) } else { link(label(row.label), text(fill: accent, row.section)) }
    let page-of(row) = if row.label != "" { context link(label(row.label), str(counter(page).at(label(row.label)).first())) }
    numbered(node, table, words.table, rows: node.rows.len(), grid-table(
      (2, 5, 3.4, 0, 2.6), ("left", "left", "left", "right", "left"),
      node.header.map(words => text(weight: 600, words)),
      node.rows.map(row => (row.clause, row.requirement, answer(row), page-of(row), row.remark)),
    ))
  } else if kind == "figure" {
    numbered(node, image, words.figure, image("/figures/" + str(node.number) + ".svg", alt: node.alt, width: 100%))
  } else if kind == "stream" {
    if node.warning {
      boxed(warn-wash, warn, whole: false, { par({ tag(words.warning, warn); node.lead }); raw(node.text, block: true) })
    } else { raw(node.text, block: true) }
  } else if kind == "note" {
    if node.tone == "warning" { boxed(warn-wash, warn, whole: node.text.len() < long-text, par({ tag(words.warning, warn); said(node.text) })) }
    else { boxed(wash, accent, whole: node.text.len() < long-text, par({ tag(words.note, accent); said(node.text) })) }
  } else if kind == "findings" {
    for finding in node.findings {
      let grave = finding.grave
      boxed(if grave { warn-wash } else { wash }, if grave { warn } else { accent }, whole: (finding.message + finding.detail).len() < long-text, {
        par({ tag(finding.severity, if grave { warn } else { accent }); finding.message })
        detail(finding.detail)
      })
    }
  } else if kind == "cautions" {
    for item in node.items {
      boxed(warn-wash, warn, whole: item.text.len() < long-text, { par(text(weight: 600, fill: warn, item.title)); par[#item.text]; detail(item.source) })
    }
  } else if kind == "signature" {
    block(width: 100%, breakable: false, stroke: 0.5pt + hair, inset: (x: 16pt, top: 14pt, bottom: 16pt), above: 2em, below: 2em, {
      set text(font: sans, size: 9.5pt)
      par(text(weight: 600, fill: accent, node.label))
      for words in node.lines {
        v(26pt)
        line(length: 100%, stroke: 0.5pt + soft)
        v(-7pt)
        par(text(size: 8.5pt, fill: soft, words))
      }
    })
  } else if kind == "references" {
    enum(..node.items.map(item => { [#item.text]; text(font: sans, size: 0.88em, fill: soft, " " + item.mark) }))
  }
}
`;
