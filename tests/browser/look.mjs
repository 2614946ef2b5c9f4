// Every page as it is seen: at 320, 768 and 1280 px, light and dark, with text at 100 % and 200 %.
//
// Promises: axe finds no fault (WCAG 2.0 to 2.2 A and AA, and AAA contrast); nothing scrolls sideways; whatever is pressed
// is 44 px wide and high (WCAG 2.2, 2.5.5), links inside a sentence apart. A form sent empty counts as a page of its own,
// and so does the opened "More" at the foot.
// Without --full: one page of each shape, in the three views of FEW. With it: every page of every member in all twelve.
// KINSHEAF_SHOTS=FOLDER keeps a picture of each.

import fs from 'node:fs';
import path from 'node:path';
import { axe, browse, byTwos, check, finallyDo, run } from './kit.mjs';
import { demo, enter } from './demo.mjs';
import { EMPTY, NOBODY, everyone, sendEmpty } from './crawl.mjs';
import { small, sideways } from './measure.mjs';

const FULL = process.argv.includes('--full');
const SHOTS = process.env.KINSHEAF_SHOTS;
const FEW = ['320-light-200', '768-dark-100', '1280-light-100'];
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
const RULES = { 'color-contrast-enhanced': { enabled: true }, 'target-size': { enabled: true } };
const AXE = axe();

function views() {
  const all = [320, 768, 1280].flatMap(width => ['light', 'dark'].flatMap(scheme => [100, 200].map(text => ({ width, scheme, text, name: `${width}-${scheme}-${text}` }))));
  return FULL ? all : all.filter(view => FEW.includes(view.name));
}

/** One page of each shape, whoever comes first to it; or all. */
function chosen(pages) {
  if (FULL) return pages;
  const seen = new Set();
  return pages.filter(page => !seen.has(page.shape) && seen.add(page.shape));
}

/** A tall window shows the whole page at once, so nothing lies under the foot that stays in sight. */
async function showWhole(page, view) {
  await page.setViewportSize({ width: view.width, height: 900 });
  await page.evaluate(async text => {
    const root = document.documentElement;
    root.style.fontSize = `${parseFloat(getComputedStyle(root).fontSize) * text / 100}px`;
    document.querySelectorAll('main details').forEach(details => { details.open = true; });
    await document.fonts.ready;
  }, view.text);
  const height = await page.evaluate(() => document.documentElement.scrollHeight);
  await page.setViewportSize({ width: view.width, height: Math.max(height, 900) });
}

async function axeFaults(page) {
  await page.evaluate(AXE);
  const { violations } = await page.evaluate(([tags, rules]) => axe.run({ runOnly: tags, rules, resultTypes: ['violations'] }), [TAGS, RULES]);
  const told = node => `${node.target.join(' ')}: ${node.failureSummary.split('\n').slice(1).map(line => line.trim()).join('; ').slice(0, 200)}`;
  return violations.map(({ id, nodes }) => `axe ${id}, ${nodes.length} times: ${nodes.slice(0, 3).map(told).join(' | ')}`);
}

async function look(page, view, name) {
  const faults = [...await axeFaults(page), ...await page.evaluate(sideways), ...await page.evaluate(small)];
  check(`${name} at ${view.width} px, ${view.scheme}, ${view.text} %`, faults);
  if (SHOTS) await page.screenshot({ path: path.join(SHOTS, `${name}-${view.name}.png`.replace(/[^\w.-]+/g, '-')) });
}

async function open(page, origin, path) {
  await page.goto(origin + path.replace(EMPTY, ''));
  if (path.endsWith(EMPTY)) await sendEmpty(page);
}

/** All of one member's pages in one view. */
async function round(browser, origin, door, pages, view) {
  const options = { colorScheme: view.scheme, viewport: { width: view.width, height: 900 } };
  const page = door ? await enter(browser, door, options) : await (await browser.newContext(options)).newPage();
  let more = false;
  for (const one of pages) {
    const name = `${one.member} ${one.path}`;
    await open(page, origin, one.path);
    await showWhole(page, view);
    await look(page, view, name);
    const foot = page.locator('nav.foot summary');
    if (more || !await foot.isVisible()) continue;
    more = true;
    await foot.click();
    await look(page, view, `${name} with More opened`);
  }
  await page.context().close();
}

await run(async () => {
  const browser = await browse();
  finallyDo(() => browser.close());
  const house = await demo();
  if (SHOTS) fs.mkdirSync(SHOTS, { recursive: true });
  const pages = chosen(await everyone(browser, house, FULL ? undefined : 1));
  const rounds = views().flatMap(view => [undefined, ...house.doors].map(door => ({
    view, door, own: pages.filter(page => page.member === (door?.name ?? NOBODY)),
  })));
  await byTwos(rounds.filter(({ own }) => own.length > 0), ({ view, door, own }) => round(browser, house.origin, door, own, view));
  console.log(`${pages.length} pages in ${views().length} views`);
});
