/**
 * Adds a link and its outcome to `links.json`: a promise that it will always mean the same.
 *   npx node test/scenario/add-link.ts climb-time 'gain=300m&power=200W' 'why this one'
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { type CalculatorName, calculators } from '../../calculators/scenario/vocabulary.ts';
import { answersOf } from './answers.ts';

const file = new URL('links.json', import.meta.url);
const [calculator = '', query, why] = process.argv.slice(2);
if (!(calculator in calculators) || query === undefined || !why)
  throw new Error('Give a calculator, a query (which may be empty) and the reason for keeping it, each in quotes.');
const list = JSON.parse(readFileSync(file, 'utf8')) as { links: { calculator: string; query: string }[] };
if (list.links.some((link) => link.calculator === calculator && link.query === query))
  throw new Error('This link is listed already, and a listed link is never edited.');
const name = calculator as CalculatorName;
const link = { calculator: name, query, why, answers: answersOf(name, query) };
writeFileSync(file, `${JSON.stringify({ ...list, links: [...list.links, link] }, null, 2)}\n`);
