import { createServer } from 'node:net';

/** A port that was free a moment ago. */
export function findFreePort(): Promise<number> {
  const probe = createServer();
  return new Promise((found, lost) => {
    probe.once('error', lost);
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address();
      const port = typeof address === 'object' && address ? address.port : 0;
      probe.close(() => found(port));
    });
  });
}
