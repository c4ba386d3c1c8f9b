import { createReadStream } from 'node:fs';
import { realpath, stat } from 'node:fs/promises';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, sep } from 'node:path';

const mimeTypes: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.map': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.txt': 'text/plain; charset=utf-8',
  '.md': 'text/markdown; charset=utf-8',
  '.csv': 'text/csv; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.jpg': 'image/jpeg',
  '.webp': 'image/webp',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
  '.wasm': 'application/wasm',
  '.glb': 'model/gltf-binary',
  '.pdf': 'application/pdf',
  '.webm': 'video/webm',
};

/** How many ports after the one asked for are tried while they are taken. */
const portsTried = 50;

export interface ServeOptions {
  /** First port to try; 0 takes any free one. Default 0. */
  readonly port?: number;
}

export interface Served {
  readonly url: string;
  readonly port: number;
  close(): Promise<void>;
}

/**
 * Serves the files below `folder` to this machine alone (127.0.0.1), reading and never writing.
 *
 * If the port is taken the next free one is used. Throws when the folder is missing or no port is free.
 */
export async function serveFolder(folder: string, options: ServeOptions = {}): Promise<Served> {
  const root = await realpath(folder);
  const server = createServer((request, response) => {
    answer(root, request, response).catch(() => refuse(response, 500, 'the file could not be read'));
  });
  await listen(server, options.port ?? 0);
  const { port } = server.address() as AddressInfo;
  return {
    url: `http://127.0.0.1:${port}/`,
    port,
    close: () =>
      new Promise((resolve, reject) => {
        server.close((problem) => (problem ? reject(problem) : resolve()));
        server.closeAllConnections();
      }),
  };
}

async function listen(server: Server, first: number): Promise<void> {
  const last = first === 0 ? 0 : Math.min(first + portsTried - 1, 65_535);
  for (let port = first; ; port++) {
    try {
      return await new Promise<void>((resolve, reject) => {
        server.once('error', reject);
        server.listen(port, '127.0.0.1', () => {
          server.off('error', reject);
          resolve();
        });
      });
    } catch (problem) {
      const taken = ['EADDRINUSE', 'EACCES'].includes((problem as NodeJS.ErrnoException).code ?? '');
      if (!taken || port >= last) throw problem;
    }
  }
}

async function answer(root: string, request: IncomingMessage, response: ServerResponse): Promise<void> {
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    response.setHeader('Allow', 'GET, HEAD');
    return refuse(response, 405, 'only reading is possible here');
  }
  const file = await fileFor(root, request.url ?? '/');
  if (!file) return refuse(response, 404, 'there is no such file');
  response.writeHead(200, {
    'Content-Type': mimeTypes[extname(file.path).toLowerCase()] ?? 'application/octet-stream',
    'Content-Length': file.size,
    'Cache-Control': 'no-cache',
    'X-Content-Type-Options': 'nosniff',
  });
  if (request.method === 'HEAD') {
    response.end();
    return;
  }
  createReadStream(file.path)
    .on('error', () => response.destroy())
    .pipe(response);
}

/** The file that an address means, or undefined: for what is missing, hidden, or outside the root by dots or a link. */
async function fileFor(root: string, url: string): Promise<{ path: string; size: number } | undefined> {
  let path: string;
  try {
    path = decodeURIComponent(url.replace(/[?#].*$/s, ''));
  } catch {
    return undefined;
  }
  if (!path.startsWith('/') || /[\\\0]/.test(path) || path.split('/').some((part) => part.startsWith('.')))
    return undefined;
  if (path.endsWith('/')) path += 'index.html';
  try {
    const real = await realpath(join(root, path));
    if (!real.startsWith(root.endsWith(sep) ? root : root + sep)) return undefined;
    const found = await stat(real);
    return found.isFile() ? { path: real, size: found.size } : undefined;
  } catch {
    return undefined;
  }
}

function refuse(response: ServerResponse, status: number, words: string): void {
  if (response.headersSent) {
    response.destroy();
    return;
  }
  response.writeHead(status, { 'Content-Type': 'text/plain; charset=utf-8', 'X-Content-Type-Options': 'nosniff' });
  response.end(`${words}\n`);
}
