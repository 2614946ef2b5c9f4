// The tray with a script: a pile that is sent over a connection that breaks, and ten papers filed by keys alone.
//
// Promises: what is sent in pieces goes on where it was when the network is back, and each file of it is in the tray, byte
// for byte; a file that is too large is not sent and told; single keys do nothing until they are switched on, and nothing
// in a field; then one paper after the other is filed by keys, until the tray is empty.

import { createHash } from 'node:crypto';
import { check, browse, finallyDo, run, watch } from './kit.mjs';
import { demo, enter } from './demo.mjs';

const PHONE = { viewport: { width: 320, height: 640 } };
const WIDE = { width: 1280, height: 900 };
const TRAY = '/p/1/papers/tray';

/** A PDF without a page (ISO 32000-1:2008, annex H.2, from memory), so many bytes long or a little more. */
function pdf(words, bytes) {
  const filler = `% ${words} ${'x'.repeat(bytes)}\n`;
  const body = `%PDF-1.7\n${filler}1 0 obj\n<< /Type /Catalog /Pages 2 0 R >>\nendobj\n2 0 obj\n<< /Type /Pages /Kids [] /Count 0 >>\nendobj\n`;
  const at = object => String(body.indexOf(object)).padStart(10, '0');
  const table = `xref\n0 3\n0000000000 65535 f \n${at('1 0 obj')} 00000 n \n${at('2 0 obj')} 00000 n \n`;
  return Buffer.from(`${body}${table}trailer\n<< /Size 3 /Root 1 0 R >>\nstartxref\n${body.length}\n%%EOF\n`);
}

const text = async page => (await page.locator('main').innerText()).replaceAll('\u00a0', ' ');
const sees = async (page, words) => {
  const shown = await text(page);
  return words.filter(it => !shown.includes(it)).map(it => `no "${it}" in: ${shown.slice(0, 600)}`);
};

async function overABadConnection(page, origin) {
  await page.goto(origin + TRAY + '/add');
  const scan = { name: 'long scan.pdf', mimeType: 'application/pdf', buffer: pdf('scan', 3_000_000) };
  const short = { name: 'short.pdf', mimeType: 'application/pdf', buffer: pdf('short', 50) };
  const web = { name: 'web.html', mimeType: 'text/html', buffer: Buffer.from('<html><script>1</script>') };
  await page.getByLabel('Photos or PDFs').setInputFiles([scan, short, web]);
  const pieces = [];
  let breaks = true;
  await page.route('**/tray/sending/*', async route => {
    const request = route.request();
    if (request.method() === 'PATCH') {
      const at = request.headers()['upload-offset'];
      pieces.push(Number(at));
      // The network goes with the third piece.
      if (breaks && pieces.length === 3) {
        breaks = false;
        await page.context().setOffline(true);
        return route.abort('internetdisconnected');
      }
    }
    return route.continue();
  });
  await page.getByRole('button', { name: 'Put them in the tray' }).click();
  await page.getByText('No connection. It is tried again by itself').waitFor();
  check('it says how far it came', (await page.locator('[data-way] li').first().innerText()).includes('%'));
  await page.context().setOffline(false);
  await page.waitForURL('**/tray/arrived/*');
  check('each file is told of', await sees(page, ['2 of 3 put in the tray', 'long scan.pdf', 'short.pdf', 'It is a web page']));
  const size = 512 * 1024;
  const expected = [0, 1, 2, 2, 3, 4, 5].map(it => it * size);
  check('only the piece that was lost was sent twice', expected.every((at, place) => pieces[place] === at) ? [] : [`pieces at ${pieces}`]);
  await page.getByRole('link', { name: 'long scan.pdf' }).click();
  const address = await page.getByRole('link', { name: /Save the PDF/ }).first().getAttribute('href');
  const kept = await (await page.request.get(origin + address)).body();
  const sum = it => createHash('sha256').update(it).digest('hex');
  check('it is there byte for byte', sum(kept) === sum(scan.buffer));
  await page.unroute('**/tray/sending/*');
}

async function stoppedAndGoneOn(page, origin) {
  await page.goto(origin + TRAY + '/add');
  const file = { name: 'again.pdf', mimeType: 'application/pdf', buffer: pdf('again', 1_500_000) };
  let pieces = [];
  await page.route('**/tray/sending/*', async route => {
    const request = route.request();
    if (request.method() !== 'PATCH') return route.continue();
    pieces.push(Number(request.headers()['upload-offset']));
    if (pieces.length === 2) {
      await page.getByRole('button', { name: 'Stop sending' }).click();
      return route.abort().catch(() => {});
    }
    return route.continue();
  });
  await page.getByLabel('Photos or PDFs').setInputFiles([file]);
  await page.getByRole('button', { name: 'Put them in the tray' }).click();
  await page.getByText('Stopped. What has come stays for a day').waitFor();
  await page.unroute('**/tray/sending/*');
  pieces = [];
  page.on('request', it => { if (it.method() === 'PATCH') pieces.push(Number(it.headers()['upload-offset'])); });
  await page.getByRole('button', { name: 'Put them in the tray' }).click();
  await page.waitForURL('**/tray/arrived/*');
  check('it goes on where it was stopped', pieces[0] > 0 ? [] : [`from ${pieces[0]}`]);
  check('it is in the tray', await sees(page, ['1 of 1 put in the tray']));
}

async function waiting(page, origin) {
  await page.goto(origin + TRAY);
  const head = await page.locator('h2 .soft').first().innerText();
  return Number(head);
}

/** One paper by keys: its kind and its title where nothing proposes them, then filed. */
async function byKeys(page, number) {
  const keys = page.keyboard;
  if (await page.locator('#kind').inputValue() === '') {
    await keys.press('k');
    await keys.type('letter');
    await keys.press('Escape');
  }
  if (await page.locator('#title').inputValue() === '') {
    await keys.press('t');
    await keys.type(`Letter f n ${number}`);
    await keys.press('Escape');
  }
  const before = page.url();
  await keys.press('f');
  await page.waitForURL(url => url.href !== before);
}

async function emptiedByKeys(page, origin) {
  const many = await waiting(page, origin);
  check('ten papers or more wait', many >= 10 ? [] : [`${many} wait`]);
  await page.keyboard.press('f');
  await page.waitForTimeout(300);
  check('a key does nothing before it is switched on', page.url() === origin + TRAY);
  await page.getByLabel('Single keys work on these pages').check();
  await page.keyboard.press('Control+f');
  check('a key with Ctrl is the browser’s own', page.url() === origin + TRAY);
  await page.keyboard.press('f');
  await page.waitForURL('**/file');
  check('it is remembered on the next page', await page.locator('#keys-on').isChecked());
  const first = page.url();
  await page.keyboard.press('t');
  await page.keyboard.type('fn');
  check('in a field a key is a letter', page.url() === first && (await page.locator('#title').inputValue()).endsWith('fn'));
  await page.locator('#title').fill('');
  await page.keyboard.press('Escape');
  await page.keyboard.press('n');
  await page.waitForURL(url => url.href !== first);
  check('n shows the next', page.url() !== first);
  for (let number = 1; number <= many && page.url().endsWith('/file'); number += 1) await byKeys(page, number);
  check('the tray is empty', await sees(page, ['The tray is empty', 'Nothing waits here']));
}

await run(async () => {
  const browser = await browse();
  finallyDo(() => browser.close());
  const { origin, doors } = await demo();
  const faults = [];
  const steward = doors.find(door => door.role === 'steward');
  const phone = await enter(browser, steward, PHONE);
  phone.setDefaultTimeout(20_000);
  watch(phone, origin, faults);
  await overABadConnection(phone, origin);
  await stoppedAndGoneOn(phone, origin);
  for (let more = 0; more < 10; more += 1) {
    await phone.goto(origin + TRAY + '/add');
    await phone.getByLabel('Or take a photo now').setInputFiles([{ name: `page ${more}.pdf`, mimeType: 'application/pdf', buffer: pdf(`page ${more}`, 10) }]);
    await phone.getByRole('button', { name: 'Put them in the tray' }).click();
    await phone.waitForURL('**/tray/arrived/*');
  }
  await phone.setViewportSize(WIDE);
  await emptiedByKeys(phone, origin);
  // What broke on purpose says so in the console, as does the answer to a piece that stands elsewhere.
  check('no page broke its policy, or asked another host', faults.filter(it => !/ERR_INTERNET_DISCONNECTED|ERR_FAILED|ERR_ABORTED|409/.test(it)));
});
