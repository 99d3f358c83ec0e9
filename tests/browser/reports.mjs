// Opens every report as a reader would: on a telephone, a tablet and a desk, in light and dark, and on paper.
// Usage: node reports.mjs FOLDER-WITH-HTML [FOLDER-FOR-SCREENSHOTS]. Prints one line a page and "N passed, N failed".
import { createRequire } from 'node:module';
import { existsSync, mkdirSync, readFileSync, readdirSync } from 'node:fs';
import { delimiter, join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const folder = resolve(process.argv[2] ?? '.');
const shots = process.argv[3] && resolve(process.argv[3]);
if (shots) mkdirSync(shots, { recursive: true });

const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];
const executablePath = process.env.FAILWISE_CHROMIUM
  || (process.env.PATH ?? '').split(delimiter).flatMap(p => names.map(n => join(p, n))).find(existsSync);
if (!executablePath) { console.error('no Chromium found; name it in FAILWISE_CHROMIUM'); process.exit(2); }

let passed = 0, failed = 0;
const check = (page, what, faults) => {
  if (faults.length === 0) { passed++; return; }
  failed++;
  console.log(`FAILED  ${page}: ${what}\n        ${faults.slice(0, 5).join('\n        ')}`);
};

/** Text that stands over other text, and anything that sticks out of the page. */
const layoutFaults = () => {
  const faults = [];
  const width = document.documentElement.clientWidth;
  if (document.documentElement.scrollWidth > width) faults.push(`the page is ${document.documentElement.scrollWidth} wide on a screen of ${width}`);
  const shown = e => { const s = getComputedStyle(e); return s.visibility !== 'hidden' && s.clipPath === 'none' && e.getClientRects().length > 0; };
  for (const e of document.querySelectorAll('h1,h2,h3,p,li,td,th,figure,figcaption,svg,img,a')) {
    if (!shown(e) || e.closest('.skip') || e.closest('thead') && getComputedStyle(e.closest('thead')).position === 'absolute') continue;
    const box = e.getBoundingClientRect();
    if (box.width > 0 && (box.right > width + 1 || box.left < -1)) faults.push(`${e.tagName} "${e.textContent.trim().slice(0, 30)}" sticks out: ${Math.round(box.left)} to ${Math.round(box.right)}`);
  }
  const leaves = [...document.querySelectorAll('main p, main li, main td, main h1, main h2, main h3, main figcaption, main figure > svg, main figure > img')].filter(e => shown(e) && !e.querySelector('p, li, td'));
  const boxes = leaves.map(e => ({ e, b: e.getBoundingClientRect() })).filter(x => x.b.height > 0).sort((a, b) => a.b.top - b.b.top);
  for (let i = 0; i < boxes.length; i++) {
    for (let j = i + 1; j < boxes.length && boxes[j].b.top < boxes[i].b.bottom - 2; j++) {
      const [a, b] = [boxes[i].b, boxes[j].b];
      if (a.right - 2 > b.left && b.right - 2 > a.left && !boxes[i].e.contains(boxes[j].e) && !boxes[j].e.contains(boxes[i].e)) {
        faults.push(`"${boxes[i].e.textContent.trim().slice(0, 30)}" and "${boxes[j].e.textContent.trim().slice(0, 30)}" overlap`);
      }
    }
  }
  return faults;
};

/** Words of a drawing that run into each other or over its edge. */
const drawingFaults = () => {
  const faults = [];
  for (const svg of document.querySelectorAll('svg.fw')) {
    const frame = svg.getBoundingClientRect();
    const texts = [...svg.querySelectorAll('text')].map(t => ({ t, b: t.getBoundingClientRect() })).sort((a, b) => a.b.top - b.b.top);
    for (const { t, b } of texts) if (b.right > frame.right + 1 || b.left < frame.left - 1 || b.bottom > frame.bottom + 1) faults.push(`drawing: "${t.textContent.slice(0, 40)}" runs over the edge`);
    for (let i = 0; i < texts.length; i++) {
      for (let j = i + 1; j < texts.length && texts[j].b.top < texts[i].b.bottom; j++) {
        const [a, b] = [texts[i].b, texts[j].b];
        const high = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top), wide = Math.min(a.right, b.right) - Math.max(a.left, b.left);
        if (wide > 1 && high > 0.35 * Math.min(a.height, b.height)) faults.push(`drawing: "${texts[i].t.textContent.slice(0, 30)}" and "${texts[j].t.textContent.slice(0, 30)}" overlap`);
      }
    }
  }
  return faults;
};

const pictureFaults = () => [
  ...[...document.images].filter(i => !i.alt.trim()).map(i => `a picture has no alternative text`),
  ...[...document.images].filter(i => !i.complete || i.naturalWidth === 0).map(i => `a picture does not open: ${i.alt}`),
  ...[...document.querySelectorAll('svg')].filter(s => s.getAttribute('role') !== 'img' || !s.getAttribute('aria-label')).map(() => 'a drawing has no name'),
];

const browser = await chromium.launch({ executablePath, args: process.getuid?.() === 0 ? ['--no-sandbox'] : [] });
const files = readdirSync(folder).filter(f => f.endsWith('.html')).sort();
if (files.length === 0) { console.error(`no .html in ${folder}`); process.exit(2); }
for (const file of files) {
  const faults = [], asked = [];
  const context = await browser.newContext({ colorScheme: 'light', bypassCSP: true });
  const page = await context.newPage();
  page.on('console', m => { if (['error', 'warning'].includes(m.type())) faults.push(m.text()); });
  page.on('pageerror', e => faults.push(String(e)));
  page.on('request', r => { if (!r.url().startsWith('data:') && r.url() !== pathToFileURL(join(folder, file)).href) asked.push(r.url()); });
  await page.goto(pathToFileURL(join(folder, file)).href);
  for (const width of [375, 768, 1280]) {
    await page.setViewportSize({ width, height: 900 });
    check(file, `${width} px wide`, [...await page.evaluate(layoutFaults), ...await page.evaluate(drawingFaults)]);
    if (shots) await page.screenshot({ path: join(shots, `${file}-${width}.png`), fullPage: true });
  }
  check(file, 'pictures', await page.evaluate(pictureFaults));
  await page.evaluate(axe);
  for (const colorScheme of ['light', 'dark']) {
    await page.emulateMedia({ colorScheme });
    const result = await page.evaluate(() => globalThis.axe.run(document, { resultTypes: ['violations'] }));
    check(file, `axe-core, ${colorScheme}`, result.violations.flatMap(v => v.nodes.slice(0, 3).map(n => `${v.id}: ${n.target.join(' ')} ${n.failureSummary?.split('\n')[1]?.trim() ?? ''}`)));
  }
  await page.emulateMedia({ media: 'print', colorScheme: 'light' });
  await page.setViewportSize({ width: 672, height: 950 });
  check(file, 'on paper', [...await page.evaluate(layoutFaults), ...await page.evaluate(drawingFaults),
    ...await page.evaluate(() => [...document.querySelectorAll('figure > svg')].filter(s => s.getBoundingClientRect().height > 1000).map(() => 'a drawing is taller than a page'))]);
  const papers = [];
  for (const format of ['A4', 'Letter']) papers.push(await page.pdf({ format }));
  check(file, 'A4 and Letter', papers.filter(p => p.subarray(0, 5).toString() !== '%PDF-' || p.length < 5000).map(() => 'a page did not print'));
  await page.emulateMedia({ media: 'screen' });
  await page.keyboard.press('Tab');
  check(file, 'keyboard', await page.evaluate(() => document.activeElement?.className === 'skip' && document.activeElement.getBoundingClientRect().left >= 0 ? [] : ['the first stop of the Tab key is not the visible skip link']));
  check(file, 'console', faults);
  check(file, 'network', asked);
  await context.close();
}
await browser.close();
console.log(`${files.length} reports opened`);
console.log(`${passed} passed, ${failed} failed`);
process.exit(failed === 0 ? 0 : 1);
