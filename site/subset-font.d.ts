/** The package ships no types; this is the part we use. */
declare module 'subset-font' {
  export default function subsetFont(
    font: Uint8Array,
    characters: string,
    options?: { targetFormat?: 'sfnt' | 'woff' | 'woff2'; noHinting?: boolean; keepFeatures?: string[] },
  ): Promise<Uint8Array>;
}
