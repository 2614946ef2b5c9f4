// From an empty house to a record shared by three members in three zones, on phones of 320 px without JavaScript.
//
// Ines sets up and invites; Bram and Juno join by their links; each writes something down, sees what the others wrote,
// and reads the person's time and beside it the own. The clock is the real one: times are compared with this machine's.

import { check, watch } from './kit.mjs';
import { empty } from './demo.mjs';

const PHONE = { javaScriptEnabled: false, viewport: { width: 320, height: 640 } };
const PERSON_ZONE = 'America/Chicago';
const MEMBERS = [
  { name: 'Bram', zone: 'America/Los_Angeles', medicine: 'Ferrolin' },
  { name: 'Juno', zone: 'America/New_York', medicine: 'Calmarine' },
];
const OWNER = 'Ottoline Varga';

const press = (page, role, name) => page.getByRole(role, { name, exact: true }).filter({ visible: true }).first().click();
const fill = (page, label, value) => page.getByLabel(label, { exact: true }).fill(value);
const choose = (page, label, value) => page.getByLabel(label, { exact: true }).selectOption(value);
const text = async page => (await page.locator('body').innerText()).replaceAll('\u00a0', ' ');

/** The times of day there in the last minutes, as the pages write them: a page is a moment old when it is read. */
function lately(zone) {
  const form = new Intl.DateTimeFormat('en-US', { timeZone: zone, hour: 'numeric', minute: '2-digit', hour12: true });
  return [0, 1, 2].map(ago => form.format(Date.now() - ago * 60_000).replace(/\s/g, ' ').toLowerCase());
}

const says = (shown, words, zone, after) => lately(zone).some(time => shown.includes(`${words}${time}${after}`));

async function opened(browser, origin, at, faults) {
  const page = await (await browser.newContext(PHONE)).newPage();
  page.setDefaultTimeout(10_000);
  watch(page, origin, faults);
  await page.goto(origin + at);
  return page;
}

async function setUp(page) {
  await fill(page, 'Your name', 'Ines');
  await fill(page, 'Your e-mail', 'ines@example.org');
  await fill(page, 'A password', 'maple bridge lantern oats');
  await choose(page, 'Your time zone', PERSON_ZONE);
  await fill(page, 'Name', OWNER);
  await fill(page, 'Born on', '9 Mar 1944');
  await choose(page, 'Time zone where the person lives', PERSON_ZONE);
  await press(page, 'button', 'Start the record');
  const shown = await text(page);
  check('the record is started', shown.includes(`The record of ${OWNER} is started`));
  check('one who lives in the zone of the person reads one time', says(shown, ', ', PERSON_ZONE, ', Chicago time'));
  check('and no other', !shown.includes('for you'));
}

async function invite(page, name) {
  await page.goto(`${new URL(page.url()).origin}/p/1/family/invite`);
  await fill(page, 'Name', name);
  await page.getByLabel('relative').first().check();
  await press(page, 'button', 'Make the invitation');
  return new URL(await page.locator('main code').first().innerText()).pathname;
}

async function join(page, { name, zone }) {
  await fill(page, 'Your name', name);
  await fill(page, 'Your e-mail', `${name.toLowerCase()}@example.org`);
  await fill(page, 'A password', 'cellar violin eleven rain');
  await choose(page, 'Your time zone', zone);
  await press(page, 'button', 'Join');
  const shown = await text(page);
  check(`${name} shares the record`, shown.includes(`You share the record of ${OWNER} now`));
  check(`${name} reads the time of the person`, says(shown, ', ', PERSON_ZONE, ', Chicago time'));
  check(`${name} reads the own time beside it`, says(shown, '', zone, ' for you'));
}

async function writeDown(page, medicine) {
  await press(page, 'link', 'Medicines');
  await press(page, 'link', 'Add a medicine');
  await fill(page, 'Name', medicine);
  await press(page, 'button', 'Add this medicine');
  check(`${medicine} is kept, and in whose record`, (await text(page)).includes(`In the record of ${OWNER}: Added ${medicine}`));
}

async function readHistory(page, name) {
  await page.locator('nav.foot summary').click();
  await press(page, 'link', 'History');
  const shown = await text(page);
  for (const { name: other, medicine } of MEMBERS) {
    check(`${name} sees what ${other} wrote down`, shown.includes(`${other} added the medicine ${medicine}`));
  }
  check(`${name} reads the history in the time of the person`, shown.includes('Times are those of Chicago'));
  check(`the history has the times of the person for ${name}`, says(shown, '', PERSON_ZONE, ''));
}

async function move(page, origin) {
  await page.goto(`${origin}/me/edit`);
  await choose(page, 'Your time zone', 'America/Denver');
  await press(page, 'button', 'Save');
  await page.goto(`${origin}/p/1`);
  check('a member who moves reads the new own time', says(await text(page), '', 'America/Denver', ' for you'));
}

export async function threeZones(browser) {
  const { origin, first } = await empty();
  const faults = [];
  const ines = await opened(browser, origin, first, faults);
  await setUp(ines);
  const pages = [];
  for (const member of MEMBERS) {
    const page = await opened(browser, origin, await invite(ines, member.name), faults);
    await join(page, member);
    await writeDown(page, member.medicine);
    pages.push(page);
  }
  await ines.goto(`${origin}/p/1`);
  await readHistory(ines, 'Ines');
  for (const [at, page] of pages.entries()) await readHistory(page, MEMBERS[at].name);
  await ines.goto(`${origin}/p/1/family`);
  const shown = await text(ines);
  for (const { name, zone } of MEMBERS) {
    const place = zone.split('/').pop().replace('_', ' ');
    check(`the family shows what time it is for ${name}`, says(shown, '', zone, ` in ${place}`));
  }
  await move(pages[1], origin);
  const wide = await ines.evaluate(() => document.documentElement.scrollWidth);
  check('nothing is wider than the phone', wide <= 320);
  check('no page of the three broke its policy or asked another host', faults);
  for (const page of [ines, ...pages]) await page.context().close();
}
