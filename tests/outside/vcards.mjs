// Reads a file of vCards with ical.js and writes what it found as JSON, for vcards.py.
//
// usage: vcards.mjs FILE MODULES      MODULES is the folder whose node_modules holds ical.js

import fs from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';

const [file, modules] = process.argv.slice(2);
const ICAL = createRequire(path.resolve(modules, 'here.js'))('ical.js');
const parsed = (ICAL.default ?? ICAL).parse(fs.readFileSync(file, 'utf8'));
// One card comes as itself, several as a list: [name, [[property, parameters, type, value ..] ..], parts].
const cards = typeof parsed[0] === 'string' ? [parsed] : parsed;
console.log(JSON.stringify(cards.map(([name, properties]) => ({ name, properties }))));
