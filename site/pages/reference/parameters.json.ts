import type { Readers } from '../../../calculators/scenario/unread.ts';
import { calculators, namesOf } from '../../../calculators/scenario/vocabulary.ts';

/** Which calculator reads which parameters of a link, for a page that was sent more than it reads. */
export function GET(): Response {
  const readers: Readers = Object.fromEntries(
    Object.values(calculators).map(({ name, title }) => [name, { title, reads: namesOf(name) }]),
  );
  return Response.json(readers);
}
