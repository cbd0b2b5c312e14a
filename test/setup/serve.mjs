/*
 * Serves a folder as a plain static host does, compressed, so that bytes can be counted:
 *   const server = await serve('dist'); server.address; await server.close();
 */
import { existsSync, readFileSync, statSync } from 'node:fs';
import { createServer } from 'node:http';
import { extname, join, normalize } from 'node:path';
import { gzipSync } from 'node:zlib';

const types = {
  '.html': 'text/html; charset=utf-8',
  '.css': 'text/css',
  '.js': 'text/javascript',
  '.svg': 'image/svg+xml',
  '.json': 'application/json',
  '.xml': 'application/xml',
  '.woff2': 'font/woff2',
};
const packed = new Set(['.woff2', '.png', '.pagefind', '.pf_index', '.pf_fragment', '.pf_meta']);

/** Starts a server on a free port of this machine; an address that does not exist answers 404 with 404.html. */
export async function serve(folder) {
  const server = createServer((request, response) => {
    const path = normalize(decodeURIComponent(new URL(request.url ?? '/', 'http://host').pathname));
    let file = join(folder, path);
    if (existsSync(file) && statSync(file).isDirectory()) file = join(file, 'index.html');
    const found = existsSync(file);
    if (!found) file = join(folder, '404.html');
    const kind = extname(file);
    const body = readFileSync(file);
    const headers = { 'content-type': types[kind] ?? 'application/octet-stream' };
    if (packed.has(kind)) response.writeHead(found ? 200 : 404, headers).end(body);
    else response.writeHead(found ? 200 : 404, { ...headers, 'content-encoding': 'gzip' }).end(gzipSync(body));
  });
  await new Promise((resolve) => server.listen(0, '127.0.0.1', resolve));
  return {
    address: `http://127.0.0.1:${server.address().port}`,
    close: () => new Promise((resolve) => server.close(resolve)),
  };
}
