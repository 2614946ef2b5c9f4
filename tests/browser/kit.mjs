// What every browser script stands on: Debian's Chromium, started alike, and a tally whose last line counts.
// The packages lie in $KIT/npm (see tests/steps/kit.sh); what is written goes to $OUT.

import { createRequire } from 'node:module';
import fs from 'node:fs';
import path from 'node:path';

export const TARGET = process.env.TARGET ?? path.resolve('target');
export const KIT = process.env.KIT ?? path.join(TARGET, 'test-kit');
export const OUT = process.env.OUT ?? path.join(TARGET, 'test-out');
/** The pages as they were served, one file each, with routes.json: written by crawl.mjs, read by nu.mjs. */
export const PAGES = path.join(OUT, 'pages');

const need = createRequire(path.join(KIT, 'npm', 'x'));

const FLAGS = [
  '--headless', '--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run',
  '--disable-background-networking', '--disable-component-update', '--disable-sync',
];

/** A browser with a profile of its own, which goes when it closes. */
export async function browse() {
  const { chromium } = need('playwright-core');
  // Ended by `run` below, which also waits for the profile to go.
  const signals = { handleSIGINT: false, handleSIGTERM: false, handleSIGHUP: false };
  return chromium.launch({ executablePath: '/usr/bin/chromium', args: FLAGS, ...signals });
}

/** The source of axe, to be evaluated in a page: so it runs under the page's own strict policy. */
export const axe = () => fs.readFileSync(need.resolve('axe-core/axe.min.js'), 'utf8');

/** The path of the Nu HTML checker. */
export const nu = () => path.join(KIT, 'npm', 'node_modules', 'vnu-jar', 'build', 'dist', 'vnu.jar');

export const tally = { passed: 0, failed: 0 };

/** One promise, kept or not; `faults` is a list or a truth. */
export function check(promise, faults) {
  const list = Array.isArray(faults) ? faults : faults === true ? [] : [faults || 'it is not so'];
  if (list.length === 0) {
    tally.passed += 1;
  } else {
    tally.failed += 1;
    console.log([`FAIL ${promise}`, ...list.slice(0, 10).map(fault => `  ${fault}`)].join('\n'));
    if (list.length > 10) console.log(`  and ${list.length - 10} more`);
  }
  return list.length === 0;
}

/** Does `work` for each of `all`, two at a time, and gives what came of each, in the order of `all`: the machine has two cores. */
export async function byTwos(all, work) {
  const came = [], waiting = [...all.entries()];
  const lane = async () => {
    while (waiting.length > 0) {
      const [place, one] = waiting.shift();
      came[place] = await work(one);
    }
  };
  await Promise.all([lane(), lane()]);
  return came;
}

const closing = [];

/** Something that must end whatever happens: the server, the browser. Last come, first ended. */
export function finallyDo(end) {
  closing.unshift(end);
}

/** Runs a script to its end: closes all that it opened, prints the count, sets the exit code. */
export async function run(script) {
  const close = async () => {
    for (const end of closing.splice(0)) await end();
  };
  for (const [signal, code] of [['SIGTERM', 143], ['SIGINT', 130], ['SIGHUP', 129]]) {
    process.once(signal, () => close().finally(() => process.exit(code)));
  }
  try {
    await script();
  } catch (error) {
    check('the script runs to its end', error.stack.replace(/\x1b\[\d+m/g, ''));
  }
  await close();
  console.log(`${tally.passed} passed, ${tally.failed} failed`);
  process.exit(tally.failed > 0 || tally.passed === 0 ? 1 : 0);
}

/** Everything a page does that it must not: errors in its console, a broken policy, a request to another host. */
export function watch(page, origin, faults) {
  page.on('console', said => {
    if (said.type() === 'error' || /content security policy/i.test(said.text())) {
      faults.push(`console: ${said.text()} (${said.location().url})`);
    }
  });
  page.on('pageerror', error => faults.push(`script: ${error.message}`));
  page.on('request', request => {
    const url = new URL(request.url());
    if (/^(http|ws)s?:$/.test(url.protocol) && url.origin !== origin) {
      faults.push(`asked another host: ${request.url()}`);
    }
  });
}
