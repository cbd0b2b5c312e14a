/** One relation of the model, as data: the page's typesetting and the checks come from it. */
export type Formula = {
  id: string;
  title: string;
  /** Name of the symbol that `expression` gives. */
  result: string;
  /** A mathjs expression in the symbols below. */
  expression: string;
  symbols: Record<
    string,
    {
      meaning: string;
      /** A mathjs unit such as `m / s^2`; `1` for none. */
      unit: string;
      tex: string;
    }
  >;
  /** An id of content/sources.ts, or `definition`. */
  source: string;
  note?: string;
};
