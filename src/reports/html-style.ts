/** How the page looks: on a screen light or dark, on paper always light; words and signs carry what colour does. */

const LIGHT = `--ink:#1b1f24;--quiet:#4d5661;--page:#fff;--rule:#c4cad1;--tint:#f1f3f5;--alert:#8f1d14;
--bypass:#e7eef6;--clamp:#cfdceb;--l0:#1a5a9e;--l1:#9a4600;--l2:#23703a;--l3:#6a3d9a;--l4:#4b4b4b`;
const DARK = `--ink:#e8eaed;--quiet:#adb5be;--page:#14171a;--rule:#454c54;--tint:#1f2429;--alert:#ffb3a7;
--bypass:#1c2733;--clamp:#27384a;--l0:#86bbf2;--l1:#f2b070;--l2:#86d396;--l3:#c8a8ee;--l4:#c9c9c9`;

const PAGE = `
*{box-sizing:border-box}
html{color-scheme:light dark}
body{margin:0 auto;max-width:58rem;padding:1.5rem 1.25rem 3rem;background:var(--page);color:var(--ink);
font:0.95rem/1.45 system-ui,-apple-system,"Segoe UI",Roboto,"Liberation Sans",sans-serif;overflow-wrap:break-word}
.long,dd,caption,figcaption,li,h1{overflow-wrap:anywhere}
h1{font-size:1.6rem;line-height:1.2;margin:0 0 .2rem}
h2{font-size:1.15rem;margin:2.2rem 0 .6rem;padding-bottom:.2rem;border-bottom:2px solid var(--rule)}
p{margin:.4rem 0}
.lead{color:var(--quiet);margin:0}
nav ul{display:flex;flex-wrap:wrap;gap:.1rem 1rem;margin:1rem 0 0;padding:0;list-style:none;font-size:.88rem}
a{color:var(--l0)}
a:focus-visible{outline:3px solid var(--l0);outline-offset:2px}
dl{display:grid;grid-template-columns:repeat(auto-fill,minmax(min(21rem,100%),1fr));gap:0 1.6rem;margin:.4rem 0}
dl div{display:grid;grid-template-columns:11.5rem 1fr;gap:.6rem;padding:.22rem 0;border-bottom:1px solid var(--rule)}
dt{color:var(--quiet)}
dd{margin:0;min-width:0;font-weight:600;font-variant-numeric:tabular-nums}
#case dl,#patient dl,#plan dl,#end dl{grid-template-columns:1fr}
#case dd,#patient dd,#plan dd,#end dd{font-weight:400}
dd,td,th,li{unicode-bidi:isolate}
table{border-collapse:collapse;max-width:100%;min-width:55%;margin:.6rem 0 1rem;font-size:.86rem;font-variant-numeric:tabular-nums}
caption{text-align:left;font-weight:600;padding:.3rem 0}
th,td{text-align:left;vertical-align:top;padding:.2rem .9rem .2rem 0;border-bottom:1px solid var(--rule)}
th:last-child,td:last-child{padding-right:0}
thead th{color:var(--quiet);font-weight:600;border-bottom:2px solid var(--rule)}
tbody th{font-weight:400}
.number{text-align:right;white-space:nowrap}
.number.long{white-space:normal}
th.number:first-child{text-align:left}
.total th,.total td{font-weight:600;background:var(--tint)}
.struck td:last-child{text-decoration:line-through}
.beneath th,.beneath td{color:var(--quiet);font-size:.94em;background:var(--tint)}
.alert th,.alert td{color:var(--alert)}
.alert th{font-weight:600}
.signatures{list-style:none;display:flex;flex-wrap:wrap;gap:1rem 2rem;padding:0;margin:1.2rem 0 0}
.signatures li{flex:0 1 17rem;color:var(--quiet);font-size:.86rem}
.rule{display:block;height:2.4rem;border-bottom:1px solid var(--ink);margin-bottom:.25rem}
figure{margin:1.1rem 0 1.6rem}
figcaption{font-weight:600;margin-bottom:.2rem}
.beside{font-size:.86rem;margin:.2rem 0;padding-left:1.1rem}
div.beside{padding:0}
@media (max-width:44rem){
body{padding:1rem .8rem}
table{font-size:.72rem}
th,td,.number{white-space:normal;overflow-wrap:anywhere;padding-right:.4rem}
dl div{grid-template-columns:8.5rem 1fr}
}
.beside caption{font-weight:400;color:var(--quiet)}
`;

const DRAWN = `
svg{display:block;width:100%;height:auto;overflow:visible}
svg text{font:11px system-ui,-apple-system,"Segoe UI",Roboto,"Liberation Sans",sans-serif;fill:var(--ink)}
svg .mark{font-size:10px;fill:var(--quiet)}
.grid{stroke:var(--rule);stroke-width:.6;fill:none}
.limit{stroke:var(--alert);stroke-width:1.2;stroke-dasharray:7 4;fill:none}
svg .limit-name{fill:var(--alert)}
.on-bypass{fill:var(--bypass)}
.on-clamp{fill:var(--clamp)}
.line{stroke-width:1.8;fill:none}
.gap{stroke-width:1;stroke-dasharray:1.5 4;fill:none}
.sign{stroke-width:1.2}
${[0, 1, 2, 3, 4]
  .map(
    (i) =>
      `.line-${i} .line,.line-${i} .gap{stroke:var(--l${i})}.line-${i} .sign{stroke:var(--l${i});fill:${i === 0 ? `var(--l${i})` : "var(--page)"}}`,
  )
  .join("\n")}
.bar-bypass{fill:var(--l0)}
.bar-clamp{fill:var(--l1)}
.bar-circulatory-arrest,.bar-dose{fill:var(--l3)}
.bar-cerebral-perfusion{fill:var(--l2)}
.bar-other{fill:var(--l4)}
.bar-drug{fill:var(--alert)}
`;

/** `foot` stands at the bottom of every printed page; letters, digits and hyphens only. */
const paper = (foot: string): string => `
@page{margin:14mm 13mm 16mm;@bottom-left{content:"${foot}";font:8pt sans-serif}@bottom-right{content:counter(page) " / " counter(pages);font:8pt sans-serif}}
@media print{
body{max-width:none;padding:0;font-size:9.5pt}
nav{display:none}
h2{break-after:avoid;margin-top:1.4rem}
#charts{break-before:page}
th,td{padding:.1rem .8rem .1rem 0}
figure,tr,table.short,dl div,.signatures{break-inside:avoid}
caption{break-after:avoid}
thead{display:table-header-group}
table{font-size:8.5pt}
.total th,.total td,.beneath th,.beneath td{print-color-adjust:exact}
}
`;

/** The style of a page; `foot` stands at the foot of each printed sheet. */
export const pageStyle = (foot: string): string =>
  `:root{${LIGHT}}\n@media screen and (prefers-color-scheme:dark){:root{${DARK}}}${PAGE}${DRAWN}${paper(foot)}`;
