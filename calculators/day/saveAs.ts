/** Gives the reader a file, as a download that they confirm or find in their folder. */
export function saveAs(text: string, name: string, type: string): void {
  const address = URL.createObjectURL(new Blob([text], { type }));
  const link = globalThis.document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // the browser reads it a moment later
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

/** A name for the file of a day: its title in letters that every system takes, or what it is. */
export function fileName(title: string | undefined, ending: string): string {
  const clean = (title ?? '')
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60);
  return `${clean || 'test-day'}.${ending}`;
}
