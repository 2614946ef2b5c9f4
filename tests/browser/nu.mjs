// The pages that crawl.mjs kept, read by the Nu HTML checker: no errors. Warnings are printed and count for nothing.
// Nothing is ignored; to leave out a message, name it here with its reason.

import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { PAGES, check, nu, run } from './kit.mjs';

await run(async () => {
  const files = fs.readdirSync(PAGES).filter(name => name.endsWith('.html'));
  const told = spawnSync('java', ['-Xss1m', '-jar', nu(), '--exit-zero-always', '--format', 'json', PAGES], { encoding: 'utf8', maxBuffer: 1 << 28 });
  if (told.error) throw told.error;
  const { messages } = JSON.parse(told.stderr);
  const faults = new Map(files.map(name => [name, []]));
  for (const { url, type, subType, lastLine, message, extract } of messages) {
    const name = path.basename(decodeURIComponent(new URL(url).pathname));
    const line = `line ${lastLine}: ${message} ${JSON.stringify(extract ?? '')}`;
    if (type === 'info') console.log(`${subType ?? 'note'} ${name} ${line}`);
    else faults.get(name).push(line);
  }
  for (const [name, list] of faults) check(`Nu: ${name}`, list);
});
