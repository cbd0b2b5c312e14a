/** What the tests use of jstat, which comes without types. */
declare module 'jstat' {
  interface Distribution<Parameters extends number[]> {
    cdf(x: number, ...parameters: Parameters): number;
    inv(p: number, ...parameters: Parameters): number;
  }
  const jstat: {
    normal: Distribution<[mean: number, deviation: number]>;
    studentt: Distribution<[freedom: number]>;
    centralF: Distribution<[above: number, below: number]>;
    chisquare: Distribution<[freedom: number]>;
    noncentralt: Distribution<[freedom: number, noncentrality: number]>;
    tukey: Distribution<[groups: number, freedom: number]>;
  };
  export default jstat;
}
