/** Numbers from 0 to below 1, evenly, the same for the same seed: the sfc32 generator (Doty-Humphrey, public domain). */
export function randomSource(seed: number): () => number {
  let [a, b, c, counter] = [0, Math.floor(seed / 4_294_967_296) | 0, seed | 0, 1];
  const next = (): number => {
    const value = (((a + b) | 0) + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (((c << 21) | (c >>> 11)) + value) | 0;
    return (value >>> 0) / 4_294_967_296;
  };
  // seeds that are alike have parted after so many
  for (let i = 0; i < 20; i++) next();
  return next;
}

/** A standard normal value (Box and Muller). */
export function normalDraw(random: () => number): number {
  // 1 less a value below 1, so that the logarithm is finite
  const size = Math.sqrt(-2 * Math.log(1 - random()));
  return size * Math.cos(2 * Math.PI * random());
}

/** A value of chi-square with `freedom` degrees of freedom, any number above 0 (Marsaglia and Tsang's gamma). */
export function chiSquareDraw(random: () => number, freedom: number): number {
  if (freedom < 2) return chiSquareDraw(random, freedom + 2) * (1 - random()) ** (2 / freedom);
  const d = freedom / 2 - 1 / 3;
  for (;;) {
    const z = normalDraw(random);
    const v = (1 + z / Math.sqrt(9 * d)) ** 3;
    if (v > 0 && Math.log(1 - random()) < 0.5 * z * z + d * (1 - v + Math.log(v))) return 2 * d * v;
  }
}

/** A value of Student's t. Freedom is any number above 0; Infinity is the normal. */
export function tDraw(random: () => number, freedom: number): number {
  const z = normalDraw(random);
  return freedom === Infinity ? z : z / Math.sqrt(chiSquareDraw(random, freedom) / freedom);
}
