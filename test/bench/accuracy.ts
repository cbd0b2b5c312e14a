/** Writes the table "How sure the numbers are" of the readme from the reference checks: `npm run accuracy`. */
import { readFileSync, writeFileSync } from 'node:fs';
import { withAccuracy } from '../reference/accuracy.ts';

const file = new URL('../../README.md', import.meta.url);
writeFileSync(file, withAccuracy(readFileSync(file, 'utf8')));
