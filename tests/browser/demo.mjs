// The program, started on a fresh folder and a free port: the demo with the door of each of its members, or an empty
// house.
//
// The demo prints a line `Ines (steward): http://127.0.0.1:PORT/sign-in/demo/TOKEN` for each member, then `Listening on URL`.

import { spawn } from 'node:child_process';
import fs from 'node:fs';
import net from 'node:net';
import path from 'node:path';
import { OUT, TARGET, finallyDo } from './kit.mjs';

const DOOR = /^\s*(?<name>[^(]+?) \((?<role>[^)]+)\): (?<url>http\S+)$/;
const READY = /^Listening on (?<url>http\S+)/;
const PATIENCE = 60_000;
const ARGUMENTS = { demo: data => ['demo', '--data', data], serve: () => ['serve'] };

/** A port that was free a moment ago: `serve` prints the address it was told, so it must be told a real one. */
const freePort = () => new Promise(found => {
  const probe = net.createServer().listen(0, '127.0.0.1', () => {
    const { port } = probe.address();
    probe.close(() => found(port));
  });
});

/** { origin, said }: the program with this command on a fresh folder, as soon as it listens; it ends with the script. */
async function started(command) {
  fs.mkdirSync(OUT, { recursive: true });
  const folder = fs.mkdtempSync(path.join(OUT, `${command}-`));
  const env = { ...process.env, KINSHEAF_LISTEN: `127.0.0.1:${await freePort()}`, KINSHEAF_DATA: path.join(folder, 'data') };
  const program = spawn(path.join(TARGET, 'debug', 'kinsheaf'), ARGUMENTS[command](env.KINSHEAF_DATA), { env, stdio: ['ignore', 'pipe', 'pipe'] });
  finallyDo(() => end(program));
  const log = fs.createWriteStream(path.join(folder, 'log'));
  program.stderr.pipe(log);

  return new Promise((ready, broken) => {
    let said = '';
    const late = setTimeout(() => broken(new Error(`${command} said nothing of listening: ${said}`)), PATIENCE);
    program.once('error', broken);
    program.once('exit', code => broken(new Error(`${command} ended with ${code}: ${said}`)));
    program.stdout.on('data', data => {
      said += data;
      const listening = said.split('\n').map(line => line.match(READY)).find(Boolean);
      if (!listening) return;
      clearTimeout(late);
      ready({ origin: new URL(listening.groups.url).origin, said });
    });
  });
}

/** { origin, doors: [{ name, role, url }] } */
export async function demo() {
  const { origin, said } = await started('demo');
  const doors = said.split('\n').map(line => line.match(DOOR)?.groups).filter(Boolean);
  if (doors.length === 0) throw new Error('the demo printed no door');
  return { origin, doors };
}

/** { origin, first }: an empty house, and the path of the link by which the first member begins. */
export async function empty() {
  const { origin, said } = await started('serve');
  const first = said.match(/\/setup\/\w+/)?.[0];
  if (!first) throw new Error(`no link to begin with: ${said}`);
  return { origin, first };
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
