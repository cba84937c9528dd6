import { createServer, type Server } from 'node:http';
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

/** Serves dist to this computer alone, on port 4173 or the next one that is free. */
function listen(port: number): void {
  server.once('error', (fault: NodeJS.ErrnoException) => {
    if (fault.code === 'EADDRINUSE' && port < 4273) listen(port + 1);
    else throw fault;
  });
  server.listen(port, '127.0.0.1', () => {
    server.removeAllListeners('error');
    console.log(`Bedding Ledger is at http://localhost:${port}/ (stop it with Ctrl+C)`);
  });
}

listen(4173);
