// A phone that loses its network: what it kept by itself is the shell, and nothing of a record.
//
// Promises: after Ottoline's pages, every cache holds exactly the addresses of the shell and no word of hers; a record's
// address without a network shows the page that says where the kept sheet is; the browser finds no fault with the
// manifest; the kept sheet comes as a file with its day in its name; an older shell is removed.

import { check, browse, finallyDo, run, watch } from './kit.mjs';
import { demo, enter } from './demo.mjs';

const PAGES = ['/', '/p/1', '/p/1/medicines', '/p/1/contacts', '/p/1/sheets', '/p/1/sheets/emergency', '/p/1/history', '/me'];
const SHELL = /^\/(offline|static\/(style|register|icon-192|icon-512)\.[0-9a-f]{12}\.(css|js|png)|static\/favicon\.svg|static\/fonts\/[A-Za-z-]+\.woff2)$/;
// Words that stand on her pages and in no stylesheet.
const HERS = ['Ottoline', 'Varga', 'Warfarin', '555-01'];
const OLD = 'kinsheaf shell of / 000000000000';

/** Every cache of this origin: [{ cache, at, words }], words being those of hers that its body holds. */
const caches_ = page => page.evaluate(async hers => {
  const found = [];
  for (const cache of await caches.keys()) {
    const open = await caches.open(cache);
    for (const request of await open.keys()) {
      const body = await (await open.match(request)).text();
      found.push({ cache, at: new URL(request.url).pathname, words: hers.filter(word => body.includes(word)) });
    }
  }
  return found;
}, HERS);

async function shellIsKept(page, origin) {
  await page.goto(origin);
  await page.evaluate(old => caches.open(old), OLD);
  await page.evaluate(async () => {
    const { active } = await navigator.serviceWorker.ready;
    // Ready is said when it begins to be active; its old caches are gone when it is.
    if (active.state !== 'activated') await new Promise(done => { active.onstatechange = () => active.state === 'activated' && done(); });
  });
  for (const at of PAGES) await page.goto(origin + at);
  const kept = await caches_(page);
  check('the caches hold the shell and nothing else', kept.filter(one => !SHELL.test(one.at)).map(one => `${one.cache} holds ${one.at}`));
  check('nothing kept has a word of hers', kept.filter(one => one.words.length > 0).map(one => `${one.at} says ${one.words}`));
  const shell = kept.map(one => one.at).sort();
  check('all of the shell is kept', shell.length === 8 && shell.includes('/offline') ? [] : [`kept: ${shell.join(' ')}`]);
}

/** A new version of the script finds the shell of an old one, and takes it away. */
async function oldShellGoes(page) {
  await page.evaluate(async old => {
    await caches.open(old);
    for (const one of await navigator.serviceWorker.getRegistrations()) await one.unregister();
  }, OLD);
  await page.reload();
  await page.evaluate(() => navigator.serviceWorker.ready);
  await page.waitForFunction(async old => !await caches.has(old), OLD, { timeout: 10_000 });
  check('an older shell is removed', await page.evaluate(async old => !await caches.has(old), OLD));
}

async function noNetwork(page, origin) {
  await page.context().setOffline(true);
  for (const at of ['/p/1/sheets/emergency', '/p/1', '/p/1/medicines/1']) {
    await page.goto(origin + at);
    const shown = await page.locator('body').innerText();
    check(`${at} without a network says so`, shown.includes('No network') && shown.includes('kept emergency sheet'));
    check(`${at} without a network shows nothing of hers`, HERS.filter(word => shown.includes(word)));
  }
  const styled = await page.evaluate(() => getComputedStyle(document.body).containerType);
  check('the page has its look', styled === 'inline-size' || `containerType is ${styled}`);
  await page.context().setOffline(false);
  await page.goto(`${origin}/p/1`);
  check('with the network the record is there again', (await page.locator('main').innerText()).includes('Ottoline'));
}

async function sheetIsKept(page, origin) {
  await page.goto(`${origin}/p/1/sheets/emergency`);
  const [file] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'Keep on this phone' }).click()]);
  check('the kept sheet has its day in its name', /^emergency-sheet-\d{4}-\d\d-\d\d\.pdf$/.test(file.suggestedFilename()) || file.suggestedFilename());
}

async function manifestIsRead(page) {
  const devtools = await page.context().newCDPSession(page);
  const { url, errors, manifest } = await devtools.send('Page.getAppManifest');
  check('the browser finds no fault with the manifest', errors.map(error => error.message));
  check('it reads the name', url.endsWith('/manifest.webmanifest') && (manifest?.name ?? 'Kinsheaf') === 'Kinsheaf');
  const { installabilityErrors } = await devtools.send('Page.getInstallabilityErrors');
  // A window of its own kind (no profile that lasts) is never offered an installation.
  const told = installabilityErrors.map(error => error.errorId).filter(id => id !== 'in-incognito');
  check('nothing keeps it from being installed', told);
}

await run(async () => {
  const browser = await browse();
  finallyDo(() => browser.close());
  const { origin, doors } = await demo();
  const door = doors.find(one => one.name === 'Ottoline');
  const page = await enter(browser, door, { viewport: { width: 320, height: 640 }, acceptDownloads: true });
  page.setDefaultTimeout(20_000);
  const faults = [];
  watch(page, origin, faults);
  await shellIsKept(page, origin);
  await manifestIsRead(page);
  await sheetIsKept(page, origin);
  await oldShellGoes(page);
  check('no page broke its policy or asked another host', faults);
  await noNetwork(page, origin);
});
