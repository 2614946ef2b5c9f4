// The demo, started on a fresh folder and a free port, and the door of each of its members.
//
// It prints a line `Ines (steward): http://127.0.0.1:PORT/sign-in/demo/TOKEN` for each member, then `Listening on URL`.

import { spawn } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { OUT, TARGET, finallyDo } from './kit.mjs';

const DOOR = /^\s*(?<name>[^(]+?) \((?<role>[^)]+)\): (?<url>http\S+)$/;
const READY = /^Listening on (?<url>http\S+)/;
const PATIENCE = 60_000;

/** { origin, doors: [{ name, role, url }] }; it ends with the script. */
export async function demo() {
  fs.mkdirSync(OUT, { recursive: true });
  const folder = fs.mkdtempSync(path.join(OUT, 'demo-'));
  const env = { ...process.env, KINSHEAF_LISTEN: '127.0.0.1:0' };
  const program = spawn(path.join(TARGET, 'debug', 'kinsheaf'), ['demo', '--data', path.join(folder, 'data')], { env, stdio: ['ignore', 'pipe', 'pipe'] });
  finallyDo(() => end(program));
  const log = fs.createWriteStream(path.join(folder, 'log'));
  program.stderr.pipe(log);

  const doors = [];
  const origin = await new Promise((ready, broken) => {
    let text = '';
    const late = setTimeout(() => broken(new Error(`the demo said nothing of listening: ${text}`)), PATIENCE);
    program.once('error', broken);
    program.once('exit', code => broken(new Error(`the demo ended with ${code}: ${text}`)));
    program.stdout.on('data', data => {
      text += data;
      const listening = text.split('\n').map(line => line.match(READY)).find(Boolean);
      if (!listening) return;
      clearTimeout(late);
      doors.push(...text.split('\n').map(line => line.match(DOOR)?.groups).filter(Boolean));
      ready(new URL(listening.groups.url).origin);
    });
  });
  if (doors.length === 0) throw new Error('the demo printed no door');
  return { origin, doors };
}

function end(program) {
  if (program.exitCode !== null || program.signalCode !== null) return undefined;
  return new Promise(done => {
    const hard = setTimeout(() => program.kill('SIGKILL'), 5_000);
    program.once('exit', () => done(clearTimeout(hard)));
    program.kill('SIGTERM');
  });
}

/** A page of this member, signed in through the door of the demo. */
export async function enter(browser, door, options = {}) {
  const context = await browser.newContext(options);
  const page = await context.newPage();
  const answer = await page.goto(door.url);
  if (!answer.ok()) throw new Error(`${door.name} was not let in: ${answer.status()}`);
  return page;
}
