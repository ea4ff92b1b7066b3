/** First part of the Typst template: the data, colours, fonts, page, headings and captions. */
export const templateStyle = `#let doc = json("/document.json")
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
#let right-to-left(words) = words.contains(regex("^[^\\p{L}]*[\\p{Arabic}\\p{Hebrew}\\p{Syriac}\\p{Thaana}\\p{Nko}]"))
#let said(words) = if right-to-left(words) { text(dir: rtl, words) } else { words }
// a handout is larger throughout
#let k = if meta.handout { 1.18 } else { 1 }
// a sheet is read at arm's length
#let sized(page, sheet) = if meta.sheet { sheet } else { page }

#set document(
  title: meta.title,
  keywords: meta.keywords,
  description: meta.description,
  date: datetime(year: meta.year, month: meta.month, day: meta.day),
)
#set text(font: sized(serif, sans), size: sized(10.5pt * k, 14pt), lang: meta.language, fallback: false, number-type: "lining", fill: rgb("#1f1a15"))
#set par(leading: sized(0.72em, 0.55em), spacing: sized(1.15em, 0.8em))
#set page(
  paper: meta.paper,
  margin: sized((x: 2.5cm, top: 2.9cm, bottom: 2.5cm), (x: 1.6cm, top: 1.8cm, bottom: 1.6cm)),
  header: context {
    set text(font: sans, size: 8.5pt, fill: soft)
    if meta.invented {
      block(width: 100%, below: 5pt, text(fill: warn, weight: 600, meta.inventedShort))
    }
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
      grid(columns: (1fr, auto), column-gutter: 2em, if meta.sheet [#meta.running  ·  #meta.madeWith] else { said(meta.foot) },
        words.pageOf.replace("<page>", str(here)).replace("<pages>", str(all)))
    }
  },
)

#set heading(numbering: "1.1")
#show heading: set text(font: sans, weight: 600)
#show heading: set par(leading: 0.5em, justify: false)
#show heading: it => block(above: 1.7em, below: 0.8em, sticky: true, {
  if it.numbering != none {
    text(fill: soft, weight: 400, counter(heading).display(it.numbering))
    h(0.6em)
  }
  it.body
})
#show heading.where(level: 1): set text(size: 16pt * k, fill: accent)
#show heading.where(level: 1): set block(above: 2.4em, below: 1em)
#show heading.where(level: 2): set text(size: 12.5pt * k)
#show heading.where(level: 3): set text(size: 10.5pt * k)
#set strong(delta: 200)
#show raw: set text(font: mono)
#show raw.where(block: true): set text(size: 8pt)
#show table: set block(below: 0.75em)
#show raw.where(block: true): it => block(width: 100%, fill: wash, inset: 8pt, radius: 2pt, breakable: true, align(left, it))
#show figure: set align(left)
#show figure: set block(above: 1.9em, below: 1.9em)
#show figure.where(kind: table): set figure.caption(position: top)
#set figure(gap: 0.8em)
#show figure.caption: it => block(width: 100%, sticky: it.kind == table, {
  set text(font: sans, size: 9.5pt * k, fill: soft)
  set par(leading: 0.6em)
  text(fill: accent, weight: 600, [#it.supplement #it.counter.display(it.numbering)])
  h(0.6em)
  it.body
})
#set list(indent: 0.3em, body-indent: 0.7em, marker: text(fill: accent, "–"))
#set enum(indent: 0.3em, body-indent: 0.7em)
`;
