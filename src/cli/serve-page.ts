import { createServer } from 'node:http';
import { Fail } from '../index.ts';
import { answerRequest } from './answer-request.ts';
import { readPageFiles } from './page-files.ts';

export interface ServedPage {
  readonly address: string;
  /** Resolves once every connection is closed */
  readonly stop: () => Promise<void>;
}

/**
 * Serves a built page to this machine only, on exactly this port: what a browser keeps belongs to one exact address,
 * so another port would look as if all work were gone.
 *
 * Throws Fail `no-page`, or `no-port` where the port is taken or not allowed.
 */
export function servePage(folder: string, port: number): Promise<ServedPage> {
  const page = readPageFiles(folder);
  const server = createServer(({ method, headers: { host }, url }, response) => {
    const { status, headers, body } = answerRequest(page, port, { method, host, url });
    response.writeHead(status, headers).end(method === 'HEAD' ? undefined : body);
  });
  return new Promise((resolve, reject) => {
    server.once('error', (error: NodeJS.ErrnoException) => reject(explain(error, port)));
    server.listen({ host: '127.0.0.1', port, exclusive: true }, () => {
      resolve({
        address: `http://127.0.0.1:${port}/`,
        stop: () =>
          new Promise((done) => {
            server.close(() => done());
            server.closeAllConnections();
          }),
      });
    });
  });
}

function explain(error: NodeJS.ErrnoException, port: number): Error {
  const remedy = `Look at http://127.0.0.1:${port}/ (perhaps it runs already), stop what is there, or name another with --port. Work that a browser kept stays with the port it was made on.`;
  if (error.code === 'EADDRINUSE') {
    return new Fail('no-port', '--port', `port ${port} is taken by another program`, remedy, { port });
  }
  if (error.code === 'EACCES') {
    return new Fail(
      'no-port',
      '--port',
      `port ${port} may not be used by you`,
      'Name one above 1023 with --port.',
      { port },
    );
  }
  return error;
}
