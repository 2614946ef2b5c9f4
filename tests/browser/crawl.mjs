// Walks each member through every page that links lead to, and keeps each as it was served.
//
// Promises: every link of a page answers 200; no page breaks its own policy, puts an error in the console or asks
// another host. Routes are told apart by shape (numbers replaced by N); of one shape the first page that a
// member comes to is seen, with --full the first three.

import fs from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { PAGES, browse, byTwos, check, finallyDo, run, watch } from './kit.mjs';
import { demo, enter } from './demo.mjs';

const OF_ONE_SHAPE = process.argv.includes('--full') ? 3 : 1;
export const NOBODY = 'Nobody';
/** Marks the page of a form that came back for being empty. */
export const EMPTY = ' (sent empty)';

/** What lies outside the record and what is shown when there is nothing to show. */
const OUTSIDE = [['/sign-in', 200], ['/offline', 200], ['/sign-in/forgot', 200], ['/no-such-page', 404]];

export function shape(url) {
  const { pathname, searchParams } = new URL(url);
  const names = [...new Set(searchParams.keys())].sort().join('&');
  return pathname.replace(/\d+/g, 'N') + (names && `?${names}`);
}

const isPaper = link => /\.pdf$|\/photo$/i.test(new URL(link.href).pathname) || link.download || /^(application\/pdf|image\/)/.test(link.type);

const linksOf = page => page.$$eval('a[href]', all =>
  all.map(a => ({ href: a.href.split('#')[0], download: a.hasAttribute('download'), type: a.type })));

/** Whether the form here can be sent with nothing in it and do no harm, and is refused. The note of a visit that is sent without
 *  its press is kept as a draft, never saved: so Enter loses nothing and saves nothing by mistake. */
export const canBeSentEmpty = url => /(?<!\/visits)\/add$/.test(new URL(url).pathname);

/** Sends the form of the page with every line emptied: the answer is the page again, saying what is missing. */
export async function sendEmpty(page) {
  const [answer] = await Promise.all([page.waitForNavigation(), page.evaluate(() => {
    const form = document.querySelector('main form');
    form.noValidate = true;
    for (const field of form.querySelectorAll('input:not([type]), input[type=text], input[type=tel], textarea')) field.value = '';
    form.requestSubmit();
  })]);
  return answer;
}

/** All pages of one member: [{ member, role, shape, path, status, wanted, faults, html }]. */
export async function walk(browser, origin, door, most = OF_ONE_SHAPE) {
  const page = await enter(browser, door);
  const faults = [];
  watch(page, origin, faults);
  const waiting = [page.url()], asked = new Set(waiting), seen = new Map(), pages = [];
  while (waiting.length > 0) {
    const url = waiting.shift(), kind = shape(url);
    if ((seen.get(kind) ?? 0) >= most) continue;
    seen.set(kind, (seen.get(kind) ?? 0) + 1);
    faults.length = 0;
    const keep = async (answer, wanted, mark = '') => pages.push({
      member: door.name, role: door.role, shape: kind + mark, path: url.slice(origin.length) + mark,
      status: answer.status(), wanted, html: await answer.text(),
      // Chromium itself reports an answer of 4xx as an error.
      faults: faults.filter(fault => wanted === 200 || !fault.includes(`status of ${wanted}`)),
    });
    await keep(await page.goto(url), 200);
    asked.add(page.url().split('#')[0]);
    for (const link of await linksOf(page)) {
      const ours = link.href.startsWith(`${origin}/`) && !/\/sign-out$/.test(link.href);
      if (!ours || isPaper(link) || asked.has(link.href)) continue;
      asked.add(link.href);
      waiting.push(link.href);
    }
    if (canBeSentEmpty(url)) {
      faults.length = 0;
      await keep(await sendEmpty(page), 422, EMPTY);
    }
  }
  await page.context().close();
  return pages;
}

async function outside(browser, origin) {
  const page = await (await browser.newContext()).newPage();
  const faults = [], pages = [];
  watch(page, origin, faults);
  for (const [at, wanted] of OUTSIDE) {
    faults.length = 0;
    const answer = await page.goto(origin + at);
    pages.push({
      member: NOBODY, role: 'signed out', shape: at, path: at, status: answer.status(), wanted, html: await answer.text(),
      faults: faults.filter(fault => wanted === 200 || !fault.includes(`status of ${wanted}`)),
    });
  }
  await page.context().close();
  return pages;
}

/** The pages of everyone, the signed-out ones first. */
export async function everyone(browser, { origin, doors }, most) {
  const walked = await byTwos(doors, door => walk(browser, origin, door, most));
  return [...await outside(browser, origin), ...walked.flat()];
}

const fileName = page => `${page.member}${page.path === '/' ? '/home' : page.path}`.replace(/[^\w.-]+/g, '-').toLowerCase() + '.html';

async function main() {
  const browser = await browse();
  finallyDo(() => browser.close());
  const pages = await everyone(browser, await demo());
  fs.rmSync(PAGES, { recursive: true, force: true });
  fs.mkdirSync(PAGES, { recursive: true });
  for (const page of pages) {
    const wrong = page.status === page.wanted ? [] : [`answered ${page.status}, not ${page.wanted}`];
    check(`${page.member} (${page.role}) ${page.path}`, [...wrong, ...page.faults]);
    fs.writeFileSync(path.join(PAGES, fileName(page)), page.html);
  }
  const shapes = [...new Set(pages.map(page => page.shape))].sort();
  console.log(`${pages.length} pages of ${shapes.length} shapes:\n  ${shapes.join('\n  ')}`);
}

if (import.meta.url === pathToFileURL(process.argv[1]).href) await run(main);
