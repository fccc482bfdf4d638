"""The frame of every PDF: how content is set. User's words come in as data only, never as part of this text."""

from __future__ import annotations

PDF_TEMPLATE = """
#let paper = json("paper.json")
#set document(title: paper.title + ": " + paper.house, date: auto)
#let body = if paper.large { 12pt } else { 9pt }
#set text(font: "Liberation Sans", size: body, lang: "en", region: "GB", fill: rgb("#1b1a17"))
#set par(leading: 0.55em, spacing: 0.8em)
#set page(
  paper: paper.size,
  flipped: paper.landscape,
  margin: (left: 15mm, right: 15mm, top: 13mm, bottom: 17mm),
  footer: context {
    set text(size: 7.5pt)
    line(length: 100%, stroke: 0.4pt)
    v(-0.5em)
    grid(columns: (1fr, auto, 1fr), align: (left, center, right),
      [#paper.stamp], [#paper.house], [Drawn up #paper.at("drawn-up"), page
        #counter(page).display("1 of 1", both: true)])
  },
)
#show heading.where(level: 1): set text(size: 17pt, weight: "bold")
#show heading.where(level: 2): set text(size: body + 2pt, weight: "bold")
#show heading.where(level: 2): set block(above: 1.5em, below: 0.7em)
#set table.cell(breakable: false)
#let plain(words) = text(words)
#let head = block(width: 100%, stroke: (bottom: 1.2pt), inset: (bottom: 2mm), below: 3mm)[
  #if paper.logo != none [#image(paper.logo.file, height: 12mm, fit: "contain", alt: paper.logo.words) #v(1mm)]
  #grid(columns: (1fr, 62mm), column-gutter: 6mm,
    [#heading(level: 1, plain(paper.title)) #v(-0.4em) #text(size: 11pt, plain(paper.house))
      #if paper.foot != "" [#v(-0.1em) #plain(paper.foot)]],
    block(stroke: 0.8pt, inset: 1.6mm, width: 100%, text(size: 7.5pt)[*#plain(paper.stamp)* #linebreak()
      #plain(paper.warning)]))
]
#let box-to-tick = box(width: 3mm, height: 3mm, stroke: 0.6pt)
#let ruled(count) = for _ in range(count) { block(above: 8mm, below: 0mm, line(length: 100%, stroke: 0.4pt)) }
#let tabled(one) = {
  let before = if one.ticked { (11mm,) } else { () }
  let sizes = before + one.shares.map(share => share * 1fr)
  let first = if one.ticked { ([Done],) } else { () }
  set text(size: 8pt)
  set par(leading: 0.45em, justify: false)
  block(breakable: not one.whole, table(
    columns: sizes,
    inset: (x: 1.5mm, y: if one.filled { 2.8mm } else { 1.1mm }),
    stroke: (x, y) => (top: if y < 2 { 0.8pt } else { 0.3pt + rgb("#777") }, bottom: 0.3pt + rgb("#777"),
      left: if one.filled and x > 0 { 0.3pt + rgb("#777") } else { 0pt }),
    align: (x, y) => {
      let column = x - before.len()
      if column >= 0 and one.numbers.at(column) { right } else { left }
    },
    table.header(..(first + one.headings.map(words => strong(plain(words))))),
    ..one.rows.map(row => (if one.ticked { (box-to-tick,) } else { () }) + row.map(plain)).flatten(),
  ))
}
#let keyed(lines, abreast) = {
  set text(size: 8pt)
  set par(leading: 0.4em)
  grid(columns: (1fr,) * abreast, column-gutter: 5mm, row-gutter: 2.2mm,
    ..lines.map(line => grid(columns: (11mm, 1fr), strong(plain(line.at(0))), plain(line.at(1)))))
}
#let blank(words) = grid(
  columns: (if paper.landscape { 86mm } else { 70mm }, 1fr),
  column-gutter: 2mm,
  align: bottom,
  plain(words),
  line(length: 100%, stroke: 0.4pt))

#let labelled(labels) = grid(columns: (1fr, 1fr), gutter: 0mm,
  ..labels.map(label => block(width: 100%, height: 31mm, breakable: false, inset: 2mm,
    stroke: (paint: rgb("#777"), thickness: 0.4pt, dash: "dashed"),
    grid(columns: (26mm, 1fr), column-gutter: 2mm, align: horizon,
      image(label.file, width: 26mm, alt: "Code for a reader: " + label.words),
      [#text(size: 11pt, strong(plain(label.title))) #for line in label.lines [#linebreak() #plain(line)]]))))

#head
#for (i, section) in paper.sections.enumerate() {
  if (section.drawing != none or section.form) and i > 0 {
    pagebreak(weak: true)
    head
  }
  heading(level: 2, plain(section.heading))
  for words in section.text { par(plain(words)) }
  if section.points.len() > 0 { list(tight: false, spacing: 0.7em, ..section.points.map(plain)) }
  if section.drawing != none {
    let drawn = image(section.drawing.file, width: section.drawing.width * 1mm, alt: section.drawing.words)
    if section.drawing.width <= paper.at("beside-mm") {
      grid(columns: (auto, 1fr), column-gutter: 4mm, drawn, pad(top: 8mm, keyed(section.key, 1)))
    } else [
      #drawn
      #v(-1mm)
      #keyed(section.key, 2)
    ]
  }
  if section.table != none {
    if section.table.rows.len() > 0 { tabled(section.table) } else { par([None.]) }
  }
  if section.labels.len() > 0 { labelled(section.labels) }
  ruled(section.rules)
  if section.blanks.len() > 0 {
    let lines = section.blanks.map(blank)
    let gap = if section.rules > 0 { 8mm } else { 4mm }
    block(breakable: lines.len() > 14, above: gap, stack(spacing: 5.5mm, ..lines))
  }
}
"""
"""In the language of the typesetter; what is set is read from `paper.json` beside it."""
