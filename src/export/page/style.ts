/** The look of the page: paper and ink, one accent, the reader's own fonts; on paper A4 or Letter, whatever is in the printer. */
export const style = `
:root{--ink:#18222e;--ink2:#46505c;--rule:#d8d3c6;--mark:#6a28c0;--bed:#ddd7c8;--ground:#f0eadb;--paper:#fbfaf6}
*{box-sizing:border-box}
body{margin:0;background:var(--paper);color:var(--ink);font:15px/1.45 system-ui,"Segoe UI",Roboto,"Liberation Sans",Arial,sans-serif}
main{max-width:1020px;margin:0 auto;padding:24px 20px 48px}
h1,h2,h3{font-family:Charter,Cambria,Georgia,"Liberation Serif",serif;line-height:1.2}
h1{margin:0;font-size:32px}
h2{margin:36px 0 8px;padding-top:10px;border-top:1.5px solid var(--ink);font-size:21px}
h3{margin:18px 0 4px;font-size:16px}
p{margin:4px 0 8px;max-width:68ch}
.quiet{color:var(--ink2);font-size:13px}
.verdict{margin:14px 0 0;font:600 20px/1.35 Charter,Cambria,Georgia,"Liberation Serif",serif}
table{width:100%;border-collapse:collapse;font-size:14px;font-variant-numeric:tabular-nums}
th,td{padding:5px 10px 5px 0;border-bottom:1px solid var(--rule);text-align:left;vertical-align:top}
thead th{border-bottom-color:var(--ink);color:var(--ink2);font-size:12.5px;font-weight:600}
tbody th{font-weight:600}
td.number,th.number{text-align:right;white-space:nowrap}
tr,li,.card,svg{break-inside:avoid}
h2,h3{break-after:avoid}
.fails,.undecided{font-weight:700}
.fails::before{content:"✕ "}
.undecided::before{content:"? "}
.near::before{content:"! "}
.blank{display:block;min-width:140px;height:28px;border-bottom:1px dotted var(--ink2)}
.cards{display:grid;grid-template-columns:repeat(auto-fit,minmax(300px,1fr));gap:16px}
.card{padding:12px 16px;border:1.5px solid var(--ink);background:#fff}
.card h3{margin-top:0}
.card dl{display:grid;grid-template-columns:auto minmax(52%,1fr);gap:3px 12px;margin:0;font-size:14px}
.card dt{color:var(--ink2)}
.card dd{margin:0;text-align:right;font-variant-numeric:tabular-nums}
ol.marks{padding-left:0;list-style:none}
ol.marks li{position:relative;margin:0 0 14px;padding-left:36px}
ol.marks i{position:absolute;left:0;top:1px;width:24px;height:24px;border:1.5px solid var(--mark);border-radius:50%;color:var(--mark);font:600 13px/21px system-ui,sans-serif;text-align:center}
.stickers{display:grid;grid-template-columns:repeat(auto-fit,minmax(230px,1fr));gap:12px;padding:0;list-style:none}
.stickers li{padding:8px 12px;border:1px dashed var(--ink2);background:#fff;font-size:13.5px}
.box{padding:10px 16px;border:1px solid var(--rule);background:#fff;font-size:13px}
svg{display:block;width:100%;height:auto;margin:6px 0}
svg text{fill:var(--ink);font:13px system-ui,"Liberation Sans",Arial,sans-serif}
.section .ground{fill:var(--ground)}
.rail{fill:none;stroke:var(--ink);stroke-width:1.8}
.bed{fill:none;stroke:var(--bed);stroke-width:9;stroke-linejoin:round}
.tick,.mark path{fill:none;stroke:var(--ink);stroke-width:1}
svg .grade,svg .scale,.mark text{text-anchor:middle}
svg .scale,svg .note,svg .name{fill:var(--ink2);font-size:12px}
svg .end{text-anchor:end}
svg .first{text-anchor:start}
.mark circle{fill:#fff;stroke:var(--mark);stroke-width:1.6}
.mark path{stroke:var(--mark)}
.mark .at{fill:var(--mark)}
.mark text{fill:var(--mark);font-weight:600}
@media print{
@page{margin:14mm}
body{background:#fff;font-size:10.5pt}
main{max-width:none;padding:0}
h1{font-size:22pt}
h2{margin-top:18pt;font-size:14pt}
table{font-size:9.5pt}
.card,.box{font-size:9pt}
.bed{stroke:#ccc}
}
@media (max-width:560px){main{padding:16px 12px}table{font-size:13px}th,td{padding-right:6px}}
`.trim();
