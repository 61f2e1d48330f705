import { themes } from "../pictures/tokens.ts";
import type { Paper } from "./flow.ts";

/** Height of a sheet inside its margins, a little short so that rounding never turns a page. */
const TALL_mm: Readonly<Record<Paper, number>> = { A4: 272, Letter: 254 };

/** The look of the book: black on white, one sheet a page on paper, one column on a phone. */
export function bookStyle(paper: Paper): string {
  const tokens = Object.entries(themes.print).map(([name, colour]) => `--${name}:${colour}`);
  return `:root{${tokens.join(";")}}
@page{size:${paper === "A4" ? "A4" : "letter"};margin:12mm}
${TEXT}
${LABELS}
@media print{.sheet{min-height:${TALL_mm[paper]}mm;break-after:page}.sheet:last-child{break-after:auto}}
@media screen{body{max-width:186mm;margin:0 auto;padding:12px}.sheet{margin:0 0 40px;padding-bottom:12px;border-bottom:2px solid #000}}
${PHONE}`;
}

const TEXT = `*{box-sizing:border-box}
html{-webkit-text-size-adjust:100%}
body{margin:0;color:#000;background:#fff;font:10.5pt/1.36 system-ui,"Open Sans","Segoe UI",Arial,sans-serif;font-variant-numeric:tabular-nums slashed-zero;overflow-wrap:anywhere;-webkit-print-color-adjust:exact;print-color-adjust:exact}
.sheet{display:flex;flex-direction:column;break-inside:avoid}
.sheet>header{display:flex;justify-content:space-between;gap:6mm;border-bottom:2pt solid #000;padding-bottom:1.2mm;margin-bottom:3mm}
.sheet>header b{white-space:nowrap;overflow:hidden;text-overflow:ellipsis}
.sheet>header span{white-space:nowrap}
.sheet>footer{margin-top:auto;padding-top:1.2mm;border-top:.75pt solid #000;display:flex;justify-content:space-between;gap:6mm}
h1{font-size:19pt;line-height:1.15;margin:0 0 2.5mm}
h2{font-size:13pt;line-height:1.2;margin:3.4mm 0 1.4mm}
p{margin:0 0 2mm}
p.lead{font-size:12.5pt;line-height:1.3}
p.need{border:1.5pt solid #000;padding:1.6mm 2.4mm;margin-bottom:2mm}
p.small{margin-bottom:1.5mm}
p.item{display:flex;gap:2.5mm;margin:0 0 1.6mm}
p.dot::before{content:"";flex:none;width:1.6mm;height:1.6mm;background:#000;margin-top:1.9mm}
.tick{display:inline-block;flex:none;width:4.2mm;height:4.2mm;border:1.2pt solid #000;vertical-align:-.7mm}
.blank{display:inline-block;max-width:100%;border-bottom:.75pt solid #000;height:1em}
figure{margin:0 0 3mm}
svg{display:block;max-width:100%;height:auto}
figure svg{width:100%}
table{border-collapse:collapse;width:100%;table-layout:fixed;margin:0 0 3mm}
th{text-align:left;font-weight:700;border-bottom:1.5pt solid #000;padding:.8mm 1.2mm;vertical-align:bottom;overflow-wrap:normal}
td{border-bottom:.5pt solid #000;padding:.8mm 1.2mm;vertical-align:top}
.num{text-align:right}
.strong,.total td{font-weight:700}
.total td{border-top:1.5pt solid #000}
.raw td{border-top:2.5pt double #000;border-bottom:2.5pt double #000}
.grid td,.grid th{border:.75pt solid #000}
.band td{font-weight:700;border-bottom:1.2pt solid #000;padding-top:2.4mm}
.why{display:block}
.rule{border-top:1.2pt solid #000;margin:2mm 0}`;

const LABELS = `.label{border:3pt solid #000;padding:4mm 6mm;height:122mm;display:flex;flex-direction:column;gap:1.4mm;overflow:hidden}
.letter .label{height:113mm}
.label .row{display:flex;gap:6mm;align-items:center}
.label>*{flex-shrink:0}
.label .number{font-size:58pt;line-height:.9;font-weight:800;border:5pt solid #000;padding:1mm 5mm 2.6mm;clip-path:polygon(0 0,calc(100% - 8mm) 0,100% 8mm,100% 100%,0 100%)}
.label .name{font-weight:800;line-height:1;text-transform:uppercase;overflow:hidden;max-height:30mm}
.label .ban{border:4pt solid #000;font-size:27pt;line-height:1.08;font-weight:800;padding:1mm 4mm 2mm;text-align:center}
.label .kind{font-size:27pt;line-height:1.05;font-weight:800}
.label .double{border:5pt double #000;padding:.5mm 4mm 1.5mm;align-self:flex-start}
.label .fact{font-size:14pt;line-height:1.3;max-height:26mm;overflow:hidden;padding-bottom:.6mm}
.label .first{margin-top:auto;font-size:14pt}
.side .tape{font-size:44pt;line-height:1.05;font-weight:800;text-transform:uppercase;max-height:66mm;overflow:hidden;padding-bottom:1mm}
.cut{border-top:1.2pt dashed #000;margin:4.5mm 0;height:0;position:relative}
.cut::after{content:"cut here";position:absolute;left:50%;top:-2.6mm;transform:translateX(-50%);background:#fff;padding:0 2mm}
.cards{display:grid;grid-template-columns:1fr 1fr;gap:6mm;align-content:start}
.card{border:1.5pt solid #000;padding:3mm;min-height:52mm;break-inside:avoid;display:flex;flex-direction:column}
.card h2{margin:0 0 1mm;font-size:15pt;border-bottom:1.5pt solid #000;padding-bottom:1mm}
.card h3{margin:1.6mm 0 .6mm;font-size:10.5pt}
.card p.item{margin:0 0 .8mm}
.card .end{margin-top:auto}`;

const PHONE = `@media screen and (max-width:600px){
body{font-size:16px}
.sheet>header,.sheet>footer{flex-wrap:wrap;gap:2px 12px}
.sheet>header span,.sheet>header b{white-space:normal}
.cards{grid-template-columns:1fr}
.card,.label{height:auto;min-height:0}
.label{padding:12px}
.label .number{font-size:48px}
.label .name{font-size:32px!important}
.label .ban,.label .kind{font-size:26px}
.side .tape{font-size:34px}
table,tbody,tr,td{display:block;width:auto}
thead,colgroup{display:none}
tr{border:1px solid #000;margin:0 0 8px;padding:4px;height:auto!important}
td{border:0;text-align:left}
td[data-head]:not(:empty)::before{content:attr(data-head) ": ";font-weight:400}
.pencil{overflow-x:auto}
}`;
