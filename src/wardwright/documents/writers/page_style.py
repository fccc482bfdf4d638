"""The look of the page: ink on paper, on a light or a dark screen and on A4."""

from __future__ import annotations

PAGE_STYLE = """
:root{color-scheme:light dark;
--paper:#fcfbf7;--sheet:#fffefb;--ink:#1b1a17;--soft:#5f5b52;--rule:#c9c3b4;--faint:#c4beb0;
--blue:#0072b2;--sky:#56b4e9;--green:#009e73;--orange:#e69f00;--vermilion:#d55e00;--purple:#cc79a7;
--serif:"Iowan Old Style","Palatino Linotype",Palatino,"URW Palladio L",P052,"Book Antiqua",Georgia,serif;
--sans:"Helvetica Neue",Arial,"Liberation Sans","DejaVu Sans",sans-serif}
@media (prefers-color-scheme:dark){:root{--paper:#171613;--sheet:#1d1b18;--ink:#e4dfd3;--soft:#a8a294;
--rule:#4a463d;--faint:#4f4b43;
--blue:#56b4e9}}
*{box-sizing:border-box}
html{-webkit-text-size-adjust:100%}
body{margin:0;background:var(--paper);color:var(--ink);font:17px/1.5 var(--serif);font-variant-numeric:lining-nums}
.skip{position:absolute;left:-999em}
.skip:focus{left:1rem;top:1rem;background:var(--ink);color:var(--paper);padding:.5em 1em;z-index:9}
a{color:inherit;text-decoration-thickness:1px;text-underline-offset:.2em}
a:focus-visible,summary:focus-visible,[tabindex]:focus-visible{outline:3px solid var(--blue);outline-offset:2px}
.wrap{max-width:68rem;margin:0 auto;padding:1.25rem 1rem 4rem}
/* The head is a drawing's title block. */
.block{border:1px solid var(--ink);outline:1px solid var(--ink);outline-offset:3px;margin:4px 4px 2rem}
.block-top{display:flex;flex-wrap:wrap;gap:1rem 2rem;justify-content:space-between;align-items:flex-start;
padding:1.1rem 1.25rem 1.3rem}
.maker{font-variant-caps:all-small-caps;letter-spacing:.22em;margin:0;font-size:1.05rem}
h1{font-size:clamp(2rem,5.5vw,3.5rem);line-height:1.05;font-weight:400;margin:.35em 0 0;letter-spacing:-.01em}
.stamp{border:4px double var(--vermilion);padding:.45rem .9rem .5rem;margin:.2rem 0 0;
max-width:21rem;font-size:.86rem;line-height:1.35}
.stamp strong{display:block;font:700 .95rem/1.3 var(--sans);letter-spacing:.14em;text-transform:uppercase}
.cells{display:grid;grid-template-columns:repeat(auto-fit,minmax(10rem,1fr));border-top:1px solid var(--ink);
margin:0}
.cells>div{padding:.45rem 1.25rem .55rem;border-right:1px solid var(--rule)}
.cells>div:last-child{border-right:0}
dt,.label,th,.kicker,nav a,summary,figcaption,.tag,.key{font-family:var(--sans)}
.cells dt,.label{font-size:.72rem;letter-spacing:.04em;color:var(--soft)}
.cells dd{margin:0}
nav ul{display:flex;flex-wrap:wrap;gap:.3rem 1.4rem;list-style:none;padding:0;margin:0 0 2.2rem;font-size:.86rem}
h2{font-size:1.65rem;font-weight:400;line-height:1.2;border-top:3px solid var(--ink);padding-top:.6rem;
margin:3.4rem 0 1rem}
h3{font-size:1.3rem;font-weight:700;line-height:1.2;margin:1.7rem 0 .2rem}h3 span{font-weight:400}
.flow>:first-child{margin-top:0}
.answer h3,.notice h3{margin:0}
h4{font:600 .86rem/1.4 var(--sans);margin:1.1rem 0 .25rem}
p{margin:.4rem 0 .8rem;max-width:42rem}
ul.plain{padding-left:1.1rem;margin:.3rem 0 .8rem;max-width:44rem}
ul.plain li{margin:.2rem 0}
.lead{font-size:1.1rem}
.small{font-size:.88rem;color:var(--soft)}
.two{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(100%,19rem),1fr));gap:0 2.5rem}
.mark{width:.95em;height:.95em;vertical-align:-.1em;flex:none}
.bad .mark,.mark.bad{color:var(--vermilion)}.thin .mark,.mark.thin{color:var(--ink)}
.good .mark,.mark.good{color:var(--green)}
.unknown .mark,.mark.unknown,.mark.not-counted{color:var(--soft)}
.tally{display:grid;grid-template-columns:repeat(auto-fit,minmax(8.5rem,1fr));gap:1px;padding:0;margin:1rem 0;
list-style:none}
.tally li{padding:.2rem 1rem .3rem 0;border-left:1px solid var(--rule);padding-left:.9rem}
.tally b{display:block;font-size:2.7rem;font-weight:400;line-height:1.1}
.tally span{font:.86rem/1.4 var(--sans)}
table{border-collapse:collapse;width:100%;font-size:.94rem;margin:.6rem 0 1.2rem;
font-variant-numeric:tabular-nums lining-nums}
caption{text-align:left;font:.86rem/1.4 var(--sans);color:var(--soft);padding:0 0 .4rem}
th{font-size:.76rem;text-align:left;font-weight:600;color:var(--soft);border-bottom:1px solid var(--ink);
padding:.3rem .7rem .3rem 0;vertical-align:bottom}
td,tbody th{padding:.36rem .7rem .36rem 0;border-bottom:1px solid var(--rule);vertical-align:top}
tbody th{font:inherit;font-weight:700;color:var(--ink)}
.num{text-align:right;white-space:nowrap}
.sheets{display:flex;flex-wrap:wrap;gap:1.6rem;align-items:flex-start}
figure{margin:0}
.sheet{flex:1 1 20rem;max-width:max(calc(var(--w)*1.3 + 2px),30rem);
border:1px solid var(--rule);background:var(--sheet);
--paper:var(--sheet);min-width:0}
.sheet .roll{overflow-x:auto}
.sheet .roll svg{display:block;width:100%;height:auto;min-width:calc(var(--w)*.6)}
.sheet figcaption{border-top:1px solid var(--rule);padding:.5rem .8rem .6rem;font-size:.82rem;line-height:1.4}
.sheet figcaption b{font-weight:600}
.drawing{font-family:var(--sans)}
.key{display:flex;flex-wrap:wrap;gap:.15rem 1.1rem;list-style:none;padding:0;margin:.35rem 0 0;font-size:.8rem}
.key li{display:flex;align-items:center;gap:.45rem}
.key svg{width:13mm;height:6.5mm;flex:none}
.tag{display:inline-block;border:1px solid var(--ink);padding:0 .3em;font-weight:700;font-size:.76rem;
line-height:1.5;
min-width:2.4em;text-align:center}
.answer{border-top:1px solid var(--ink);padding:1.1rem 0 1.7rem;scroll-margin-top:1rem}
.numbers{max-width:30rem}
.answer-grid{display:grid;grid-template-columns:minmax(0,1fr);gap:1rem 2.6rem}
.cramped{display:none}.order{max-width:34rem}
.unseen{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
.side{display:flex;flex-wrap:wrap;gap:1rem;align-items:flex-start}
.drawn .sheet{flex:1 1 15rem;max-width:max(calc(var(--w)*1.4 + 2px),24rem)}
.kicker{display:flex;align-items:center;gap:.45em;font-size:.82rem;margin:0 0 .2rem}
.kicker b{font-weight:700}
.value{font-size:2.5rem;line-height:1.1;margin:.35rem 0 0;white-space:nowrap}
.range{font-size:1rem;color:var(--soft);white-space:nowrap;margin-left:.5rem}
.measure{margin:.1rem 0 .5rem}
.line svg{display:block;width:60mm;height:6mm;max-width:100%}
.strip svg{display:block;max-width:100%;height:auto}
.strip{margin:.2rem 0 .6rem}
.drivers{list-style:none;padding:0;margin:.2rem 0 .4rem;max-width:17rem}
.drivers li{margin:.35rem 0;font-size:.95rem;line-height:1.35}
.drivers i{display:block;border-top:4px solid var(--ink);width:calc(var(--share)*100%);margin-bottom:.2rem}
.mends{max-width:42rem}
details{margin:.7rem 0 0}
summary{cursor:pointer;font-size:.86rem;padding:.35rem 0}
details[open]>summary{margin-bottom:.5rem}
.met{border-top:1px solid var(--ink);margin:0}.met>summary{font-size:1rem;padding:1rem 0}
.met>summary .mark{margin:0 .45em}.met>summary b{font-weight:700}
.finding{border-top:1px solid var(--rule);padding:.6rem 0 .7rem;max-width:46rem}
.finding p{margin:.1rem 0}
.finding code{font:600 .8rem var(--sans)}
.notice{border-left:4px solid var(--ink);padding:.1rem 0 .1rem 1rem}
footer{border-top:3px solid var(--ink);margin-top:3.5rem;padding-top:.8rem}
@media (min-width:46rem){.answer-grid{grid-template-columns:minmax(0,1fr) minmax(0,1fr)}
.answer-grid.lone{grid-template-columns:minmax(0,1fr)}}
@media (min-width:66rem){.beside{display:grid;grid-template-columns:1fr 30rem;gap:0 2.5rem}
.beside h3:first-child{margin-top:0}.answer-grid.pair{grid-template-columns:minmax(0,.8fr) minmax(0,1.2fr)}
.pair .side{flex-wrap:nowrap}.pair .drawn .sheet{flex:1 1 0}}

@media (max-width:40rem){table{font-size:.86rem}td,tbody th,th{padding-right:.4rem}
td:last-child,th:last-child{padding-right:0}
.basis{table-layout:fixed}.basis th:first-child{width:31%}.basis th{overflow-wrap:anywhere;font-size:.68rem}
.basis tbody th{font-size:.86rem}.roomy{display:none}.cramped{display:block;font-weight:400;font-size:.9em}
body{font-size:16px}.cells>div{border-right:0;
border-bottom:1px solid var(--rule)}
h2{margin-top:2.6rem}.cells>div:last-child{border-bottom:0}}
@page{size:A4;margin:12mm 14mm 14mm;
@bottom-left{content:"Fitter\\2019s copy: keep it";font:8pt Arial,sans-serif}
@bottom-right{content:counter(page) " of " counter(pages);font:8pt Arial,sans-serif}}
/* On paper answers and findings run in two columns; drawings that are folded are left out, answers never. */
@media print{:root{color-scheme:light;--paper:#fff;--sheet:#fff;--ink:#000;--soft:#3d3b36;--rule:#8d8a82;
--faint:#bbb;--blue:#0072b2}
html{font-size:9pt}body{font-size:8.7pt;line-height:1.3}.wrap{max-width:none;padding:0}nav,.skip{display:none}
.block{margin:1.5mm 1.5mm 4mm}.block-top{padding:3mm 4mm}.cells>div{padding:1mm 4mm}
h1{font-size:22pt;margin-top:1mm}h2{font-size:14pt;margin:4.5mm 0 1.5mm;padding-top:1.2mm}
h3{font-size:11pt;margin-top:3.5mm}h4{margin:1.8mm 0 .4mm}h2,h3,h4,h3+.small,caption,thead{break-after:avoid}
tbody tr:first-child{break-before:avoid}
p{margin:.6mm 0 1.4mm;max-width:none}ul.plain{margin:.6mm 0 1.4mm;padding-left:3.4mm;max-width:none}
ul.plain li{margin:.3mm 0}p,li{orphans:2;widows:2}
.small,.sheet figcaption,.key,caption,nav ul{font-size:7.5pt}.cells dt,th{font-size:7pt}
.lead{font-size:10pt}.stamp{font-size:8pt;padding:1mm 2.5mm}
.tally{margin:1.5mm 0;display:flex}.tally li{flex:1;padding-top:0}.tally b{font-size:17pt}.notice{padding:0 0 0 3mm}
table{font-size:8.5pt;margin:1mm 0 2mm}td,tbody th{padding:.3mm 2.5mm .3mm 0}th{padding:.6mm 2.5mm .6mm 0}
.roomy{display:table-cell}.cramped{display:none}
.flow,.flow.beside{display:block;columns:2;column-gap:6mm;column-rule:.2mm solid var(--rule)}
.value{font-size:17pt;margin:.6mm 0 0}.range{font-size:9.5pt}.measure{margin:0}.kicker{font-size:7.5pt;margin:0}
.answer{padding:1.4mm 0 1.8mm}.answer:first-child{border-top:0;padding-top:0}.answer h3{margin:0}
.answer-grid,.answer-grid.pair{display:block}.strip{margin:1mm 0}.order{margin:.5mm 0 1.2mm}
.drivers{max-width:none;margin:0;display:grid;grid-template-columns:1fr 1fr;gap:0 4mm}
.drivers li{margin:.4mm 0;font-size:8.5pt;line-height:1.25}.drivers i{border-top-width:1mm;margin-bottom:.4mm}
.finding,tr,.basis,.not-counted,.sheet,.block,.tally,.drivers,.strip,.line,.top,.order,.mends li{break-inside:avoid}
.finding{padding:1mm 0 1.4mm;max-width:none}.finding p{margin:0}
.sheet{border:0;flex:none;max-width:none}.sheet .roll{overflow:visible}
.sheet .roll svg{width:var(--w);min-width:0}
.sheet figcaption{padding:1mm 0 0;max-width:88mm}.key{gap:0 3mm;margin-top:.6mm}.key svg{width:10mm;height:5mm}
.sheets,.side{display:flex;flex-wrap:wrap;gap:2mm;align-items:flex-start;margin-top:1mm}
.drawn .sheet{flex:none;max-width:none}
.drawn .narrow figcaption,#plans .sheet figcaption{max-width:max(var(--w),43mm)}
.folded,details:not([open]){display:none}
.met:not([open]){display:block}.met::details-content{content-visibility:visible;display:block}.met>summary{display:none}
.narrow:only-child{display:flex;gap:3mm;align-items:flex-end}
.narrow:only-child figcaption{max-width:40mm}.basis{font-size:7.5pt}
.basis th,.basis td,.basis tbody th{padding-right:1.2mm}.basis thead th{font-size:6.5pt}
#figures table{font-size:7pt;margin:0}#figures td,#figures tbody th{padding:.15mm 1.5mm .15mm 0;line-height:1.15}
#figures tbody th{font-weight:400;width:46mm}#figures .num{white-space:nowrap}
.last h2{margin-top:3mm}#cautions,#known{font-size:7.6pt;line-height:1.22}
.last section:first-child h2{margin-top:0}
.last ul.plain li{margin:.1mm 0}.last ul.plain{margin:0}
.last td,.last tbody th{padding-top:.1mm;padding-bottom:.1mm}
.last caption{padding-bottom:.3mm}
#known p{max-width:none}footer{display:none}
a{text-decoration:none}summary{list-style:none}}
"""
"""Style rules of the page, in the colours of the inks' table; those of the inks are added from that table.

On a dark screen its sky blue stands for its blue.
"""
