import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import sirv from 'sirv';

const files = sirv('dist', {
  dev: true,
  setHeaders(response) {
    response.setHeader('X-Content-Type-Options', 'nosniff');
    response.setHeader('Referrer-Policy', 'no-referrer');
    // The page's own policy stands in the page; only this part of it has to be a header.
    response.setHeader('Content-Security-Policy', "frame-ancestors 'none'");
  },
});

const server: Server = createServer((request, response) => {
  if (request.url === '/') request.url = '/sheet.html';
  files(request, response);
});

const first = 4173;
const last = first + 100;

/** Serves dist to this computer alone, on the first port that is free. */
function listen(port: number): void {
  server.once('error', (fault: NodeJS.ErrnoException) => {
    if (fault.code !== 'EADDRINUSE' || port === last) throw fault;
    listen(port + 1);
  });
  server.listen(port, '127.0.0.1');
}

server.once('listening', () => {
  const { port } = server.address() as AddressInfo;
  console.log(`Bedding Ledger is at http://localhost:${port}/ (stop it with Ctrl+C)`);
});
listen(first);
