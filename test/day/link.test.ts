import { deflateRawSync, inflateRawSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { emptyDay } from '../../calculators/day/editing.ts';
import { exampleDay } from '../../calculators/day/example.ts';
import { checksum, dayFragment, lengthNote, readFragment } from '../../calculators/day/link.ts';
import { random } from '../random.ts';
import { randomDay, withPlainIds } from './documents.ts';

const messageOf = async (fragment: string): Promise<string> => {
  const opened = await readFragment(fragment);
  return opened && !opened.ok ? opened.message : `read: ${JSON.stringify(opened)?.slice(0, 80)}`;
};

/** A fragment around any JSON, as a later or a careless program might write it. */
function fragmentOf(value: unknown, version = 1): string {
  const bytes = deflateRawSync(JSON.stringify(value));
  const check = Buffer.alloc(4);
  check.writeUInt32BE(checksum(bytes));
  return `#day=${version}.${Buffer.concat([check, bytes]).toString('base64url')}`;
}

describe('a test day as a link', () => {
  test('comes back as it went', async () => {
    for (let seed = 0; seed < 200; seed++) {
      const day = randomDay(random(seed));
      const opened = await readFragment(await dayFragment(day));
      expect(opened?.ok && withPlainIds(opened.document), `seed ${seed}`).toEqual(withPlainIds(day));
    }
  });

  test('is raw deflate of JSON behind a check, in base64url: zlib reads it', async () => {
    const fragment = await dayFragment(exampleDay());
    expect(fragment).toMatch(/^#day=1\.[\w-]+$/);
    const bytes = Buffer.from(fragment.slice('#day=1.'.length), 'base64url');
    expect(bytes.readUInt32BE(0)).toBe(checksum(bytes.subarray(4)));
    const packed = JSON.parse(inflateRawSync(bytes.subarray(4)).toString());
    expect(packed.r[1]).toEqual([1, 1, { time: '6:48', power: '203', cadence: '76', start: '97', end: '86' }]);
  });

  test('the check is the CRC-32 of everybody else', () => {
    // the check value of CRC-32/ISO-HDLC that the catalogues of such codes give for these nine letters
    expect(checksum(new TextEncoder().encode('123456789'))).toBe(0xcbf43926);
  });

  test('is short: the example fits what programs pass on uncut', async () => {
    const { length } = await dayFragment(exampleDay());
    expect(length).toBeLessThan(900);
    expect(lengthNote(await dayFragment(exampleDay()))).toBeUndefined();
    expect(lengthNote('x'.repeat(2001))).toContain('2001 characters');
  });

  test('brings who rode and where along', async () => {
    const setup = { title: 'One hill', place: 'Invented valley', tester: 'A. B.' };
    const opened = await readFragment(await dayFragment({ ...emptyDay(), setup }));
    expect(opened?.ok && opened.document.setup).toEqual(setup);
  });

  test('cut anywhere, it says so', async () => {
    const fragment = await dayFragment(exampleDay());
    for (let length = '#day='.length; length < fragment.length; length++)
      expect(await messageOf(fragment.slice(0, length)), `cut at ${length}`).toMatch(/damaged/);
    expect(await messageOf(fragment.slice(0, fragment.length / 2))).toBe(
      'This link to a test day is incomplete or damaged: a part was lost on the way. Copy it anew.',
    );
  });

  test('with any letter changed, it says so', async () => {
    const fragment = await dayFragment({ ...emptyDay(), setup: { title: 'One hill' } });
    for (let at = '#day=1.'.length; at < fragment.length - 1; at++) {
      const other = fragment[at] === 'A' ? 'B' : 'A';
      expect(await messageOf(fragment.slice(0, at) + other + fragment.slice(at + 1))).toContain('damaged');
    }
  });

  test('bears what mail and chat do to it', async () => {
    const fragment = await dayFragment(exampleDay());
    const wrapped = fragment.replace(/(.{70})/g, '$1\r\n');
    for (const said of [`${fragment}.`, `${fragment})`, `${fragment}”`, `${fragment} `, wrapped])
      expect((await readFragment(said))?.ok, said.slice(-3)).toBe(true);
  });

  test('a sentence for each link that is none', async () => {
    expect(await readFragment('')).toBeUndefined();
    expect(await readFragment('#results')).toBeUndefined();
    expect(await messageOf('#day=1.%E2%98%83%E2%98%83')).toContain('characters that do not belong in it');
    expect(await messageOf('#day=hello')).toContain('damaged');
    expect(await messageOf('#day=1.')).toContain('incomplete');
    expect(await messageOf(fragmentOf({}, 2))).toContain('later version of this site (2; this page knows 1)');
    expect(await messageOf(`#day=1.${'A'.repeat(600_000)}`)).toContain('too long');
  });

  test('well packed, and nonsense', async () => {
    const whole = { s: {}, b: [{ name: 'Light' }], r: [[0, 1, { time: '6:48' }]] };
    // as it is, the link is read: so what is said of the others is about the one thing in them that is wrong
    const read = await readFragment(fragmentOf(whole));
    expect(read?.ok && read.document.runs).toMatchObject([{ bike: 'bike-1', assisted: true, texts: { time: '6:48' } }]);
    for (const [value, message] of [
      [null, 'a part was lost'],
      [7, 'a part was lost'],
      ['text', 'a part was lost'],
      [[], 'a part was lost'],
      [{}, 'a part was lost'],
      [{ ...whole, s: undefined }, 'a part was lost'],
      [{ ...whole, b: 5 }, 'a part was lost'],
      [{ ...whole, r: [7] }, 'a part was lost'],
      [{ ...whole, s: [] }, 'the set-up cannot be read'],
      [{ ...whole, b: [7] }, 'bike 1 cannot be read'],
      [{ ...whole, b: [{ name: {} }] }, '“name” of bike 1 is no text'],
      [{ ...whole, r: [[0, 1, 'text']] }, 'run 1 cannot be read'],
      [{ ...whole, b: Array(25).fill({}) }, '25 bikes, and a test day holds at most 24'],
    ] as const) {
      const said = await messageOf(fragmentOf(value));
      expect(said, JSON.stringify(value)).toContain('damaged');
      expect(said, JSON.stringify(value)).toContain(message);
    }
    // a run may lack its bike and its texts: it is there to be filled in
    const bare = await readFragment(fragmentOf({ ...whole, r: [[0], [9, 1]] }));
    expect(bare?.ok && bare.document.runs.map(({ bike, texts }) => [bike, texts])).toEqual([
      ['bike-1', {}],
      ['', {}],
    ]);
  });

  test('unpacks no more than a day can be', async () => {
    const long = (letters: number): string => fragmentOf({ s: { title: 'x'.repeat(letters) }, b: [], r: [] });
    // what stays below the limit is read, so that it is the length alone that is refused
    expect((await readFragment(long(4_000_000)))?.ok).toBe(true);
    const bomb = long(20_000_000);
    expect(bomb.length).toBeLessThan(60_000);
    expect(await messageOf(bomb)).toContain('damaged');
  });
});
