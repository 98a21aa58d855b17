/** The look of the pages: paper, ink, a serif for words, tabular figures; the accent only on the spot. */
export const STYLE = `
:root {
  --paper: #f6f4ec; --sheet: #fcfbf6; --ink: #14222d; --ink-2: #42525c; --hair: #b9b7aa; --buoy: #bf3a08;
  --serif: 'Libre Caslon Text', 'Times New Roman', Times, serif;
  --sans: 'Barlow Semi Condensed', 'Arial Narrow', Arial, sans-serif;
}
* { box-sizing: border-box; }
html { -webkit-text-size-adjust: 100%; text-size-adjust: 100%; }
body { margin: 0; background: var(--paper); color: var(--ink); font: 400 16px/1.42 var(--serif); overflow-wrap: break-word; }
.figure, td, .small { font-family: var(--sans); font-variant-numeric: tabular-nums lining-nums; }
.small { font-size: 14px; color: var(--ink-2); }
header { display: flex; flex-wrap: wrap; gap: 4px 16px; align-items: baseline; justify-content: space-between;
  padding: 9px 28px 7px; border-bottom: 3px double var(--ink); }
header p { margin: 0; }
.name { font-weight: 700; font-size: 19px; }
.name img { width: 20px; height: 18px; margin-right: 8px; vertical-align: -2px; }
.waiting { padding: 28px; margin: 0; font-style: italic; }
.waiting:has(+ header) { display: none; }
main { max-width: 1180px; margin: 0 auto; padding: 28px; }
h1, h2, h3 { font-weight: 400; margin: 0; }
.title { border: 2.2px solid var(--ink); outline: 0.9px solid var(--ink); outline-offset: -6px; background: var(--sheet);
  padding: 20px; text-align: center; max-width: 420px; }
.title p { margin: 4px 0 0; }
.course { letter-spacing: 0.12em; text-transform: uppercase; font-size: 14px; }
h1 { font-size: 30px; font-style: italic; line-height: 1.15; }
.title .figure { font-size: 15px; text-wrap: balance; }
.shots { display: grid; gap: 28px 40px; grid-template-columns: repeat(auto-fit, minmax(min(100%, 400px), 1fr)); margin-top: 28px; }
.shot { border-top: 1px solid var(--ink); padding-top: 12px; min-width: 0; }
.shot > p, .shot > ul { max-width: 66ch; }
.which { font-style: italic; color: var(--ink-2); margin: 0 0 8px; }
h2 { font-size: 37px; line-height: 1.04; letter-spacing: -0.01em; }
.spot { display: flex; gap: 10px; font-size: 19px; margin: 12px 0 4px; }
.spot svg { flex: none; width: 25px; height: 22px; margin-top: 2px; }
.start { margin: 0; }
.drift { font-style: italic; color: var(--ink-2); margin: 0; }
.sums { display: flex; flex-wrap: wrap; justify-content: space-between; gap: 16px 28px; border-top: 0.6px solid var(--hair);
  margin-top: 16px; padding-top: 16px; }
.sums > div { flex: 1 1 0; min-width: min(100%, 210px); }
.strokes { display: flex; flex-wrap: wrap; gap: 8px 24px; margin: 0; }
.strokes div { display: flex; flex-direction: column-reverse; justify-content: flex-end; max-width: 132px; }
.strokes dt { font-size: 16px; line-height: 1.25; color: var(--ink-2); }
.strokes dd { margin: 0; font: 600 46px/0.9 var(--sans); font-variant-numeric: tabular-nums lining-nums; padding-bottom: 6px; }
.strokes .plain dd { font-weight: 400; color: var(--ink-2); }
table { border-collapse: collapse; }
td, th { padding: 2px 0; vertical-align: baseline; }
caption, th { font-weight: 400; text-align: right; }
caption { font-style: italic; color: var(--ink-2); }
.number td { text-align: right; padding-left: 16px; font-weight: 600; }
.number { align-self: flex-start; }
.number caption { white-space: nowrap; }
.number tr:last-child > * { border-top: 1.5px solid var(--ink); }
.number tr:last-child td { font-size: 30px; line-height: 1.1; }
h3 { font-weight: 700; font-size: 16px; margin-top: 20px; }
.chances { display: flex; flex-wrap: wrap; gap: 2px 20px; list-style: none; margin: 4px 0 0; padding: 0; }
.chances b { font-family: var(--sans); font-weight: 700; }
.shot p { margin: 4px 0; }
.else { width: 100%; margin-top: 20px; }
.else caption { text-align: left; font-weight: 700; font-style: normal; color: var(--ink); }
.else th, .else td { border-top: 0.6px solid var(--hair); padding: 6px 0; }
.else th { text-align: left; padding-right: 12px; }
.else td { text-align: right; font-weight: 700; white-space: nowrap; }
.caution { border: 3px double var(--ink); padding: 8px 12px; }
footer { max-width: 1180px; margin: 0 auto; padding: 0 28px 28px; }
footer p { max-width: 66ch; margin: 4px 0; }
@media (max-width: 560px) { header, main { padding-left: 16px; padding-right: 16px; } footer { padding: 0 16px 20px; } h2 { font-size: 30px; } }
@media print { body { background: #fff; } }
`;

/** The mark of the name: a surveyor's triangle in ink, its dot in the accent. */
export const MARK = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 25 22"><path d="M12.5 2 23.5 20.5H1.5Z" fill="none" stroke="#14222d" stroke-width="2.3"/><circle cx="12.5" cy="14" r="2.6" fill="#bf3a08"/></svg>`;
