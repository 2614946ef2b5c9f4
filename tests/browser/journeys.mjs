// The journeys that must go well without JavaScript, on a phone of 320 px, by the labels on the pages.
//
// A steward adds a medicine, changes its dose, finds both in the history, opens the emergency sheet by one press and
// prints it; after signing out, nothing of the record comes back by the browser's own way back.

import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { OUT, browse, check, finallyDo, run, watch } from './kit.mjs';
import { demo, enter } from './demo.mjs';
import { threeZones } from './zones.mjs';

// Words that nothing else in the demo has.
const MEDICINE = { Name: 'Quillamine', Strength: '12 mg', Dose: '7 drops' };
const NEW_DOSE = '8 drops';
const PHONE = { javaScriptEnabled: false, viewport: { width: 320, height: 640 } };

const press = (page, role, name) => page.getByRole(role, { name, exact: true }).filter({ visible: true }).first().click();
// A number and its unit are kept on one line by a space that does not break.
const text = async page => (await page.locator('main').innerText()).replaceAll('\u00a0', ' ');
const holds = async (page, ...words) => {
  const shown = await text(page);
  return words.filter(word => !shown.includes(word)).map(word => `no "${word}" in: ${shown.slice(0, 400)}`);
};

async function addMedicine(page) {
  await press(page, 'link', 'Medicines');
  await press(page, 'link', 'Add a medicine');
  for (const [label, value] of Object.entries(MEDICINE)) await page.getByLabel(label, { exact: true }).fill(value);
  await press(page, 'button', 'Add this medicine');
  check('the added medicine stands on the page', await holds(page, ...Object.values(MEDICINE)));
}

async function editDose(page) {
  await press(page, 'link', 'Edit');
  await page.getByLabel('Dose', { exact: true }).fill(NEW_DOSE);
  await press(page, 'button', 'Save');
  check('the new dose stands on the page', await holds(page, MEDICINE.Name, NEW_DOSE));
}

async function readHistory(page) {
  await page.locator('nav.foot summary').click();
  await press(page, 'link', 'History');
  check('both changes stand in the history', await holds(page, MEDICINE.Name, MEDICINE.Dose, NEW_DOSE));
}

/** The answer to the pressed button as the browser itself received it, before its own reader of PDF takes it. */
async function paper(page, button) {
  const devtools = await page.context().newCDPSession(page);
  await devtools.send('Fetch.enable', { patterns: [{ urlPattern: '*/print', requestStage: 'Response' }] });
  const coming = new Promise(done => devtools.once('Fetch.requestPaused', done));
  // The pressing ends only when the answer, held back here, has been let through.
  const pressed = page.getByRole('button', { name: button }).click();
  const { requestId, responseStatusCode, responseHeaders } = await coming;
  const { body, base64Encoded } = await devtools.send('Fetch.getResponseBody', { requestId });
  await devtools.send('Fetch.continueRequest', { requestId });
  await pressed;
  const kind = responseHeaders.find(header => header.name.toLowerCase() === 'content-type').value;
  check('pressing print is answered with a PDF', responseStatusCode === 200 && kind === 'application/pdf');
  return Buffer.from(body, base64Encoded ? 'base64' : 'utf8');
}

async function printEmergencySheet(page) {
  await press(page, 'link', 'Emergency sheet');
  check('the emergency sheet shows the medicine', await holds(page, MEDICINE.Name, NEW_DOSE));
  const file = path.join(OUT, 'journey.pdf');
  const bytes = await paper(page, 'Print or save');
  check('it begins as a PDF does', bytes.subarray(0, 5).toString() === '%PDF-');
  fs.writeFileSync(file, bytes);
  const words = execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' }).replace(/\s+/g, ' ');
  const missing = [MEDICINE.Name, MEDICINE.Strength, NEW_DOSE].filter(word => !words.includes(word));
  check('the paper names the medicine, its strength and the new dose', missing.map(word => `no "${word}" in: ${words.slice(0, 400)}`));
  execFileSync('qpdf', ['--check', file]);
  await page.goBack();
}

async function signOut(page, owner) {
  const inside = page.url();
  await page.locator('nav.foot summary').click();
  await press(page, 'button', 'Sign out');
  // A press does not wait for the page it leads to, and there is no way back from between two pages.
  await page.waitForURL(new URL('/sign-in', inside).href);
  for (let back = 0; back < 3; back += 1) {
    await page.goBack();
    const shown = await page.locator('body').innerText();
    check(`${back + 1} back after signing out shows nothing of the record`, [owner, MEDICINE.Name].filter(word => shown.includes(word)));
  }
  await page.goto(inside);
  check('its address asks to sign in', new URL(page.url()).pathname === '/sign-in');
}

await run(async () => {
  const browser = await browse();
  finallyDo(() => browser.close());
  const { origin, doors } = await demo();
  const steward = doors.find(door => door.role === 'steward');
  const page = await enter(browser, steward, PHONE);
  page.setDefaultTimeout(10_000);
  const faults = [];
  watch(page, origin, faults);
  const owner = 'Ottoline Varga';
  await page.goto(origin);
  await press(page, 'link', new RegExp(owner));
  await addMedicine(page);
  await editDose(page);
  await readHistory(page);
  await printEmergencySheet(page);
  await signOut(page, owner);
  // A PDF names no icon, so the browser asks for one at the usual address, where there is none.
  const own = faults.filter(fault => !fault.endsWith('/favicon.ico)'));
  check('no page of the journey broke its policy or asked another host', own);
  await threeZones(browser);
});
