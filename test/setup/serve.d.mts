/** Starts a static server for a folder on a free port of this machine. */
export function serve(folder: string): Promise<{ address: string; close: () => Promise<void> }>;
