import { once } from 'node:events';
import { connect, createServer, type AddressInfo, type Socket } from 'node:net';

/** The only road to a server, so that a test can cut it without stopping a server that others use. */
export interface Gate {
  /** The server's address with the gate's host and port in place of its own. */
  readonly url: string;
  /** Cuts all connections and refuses new ones. */
  close(): Promise<void>;
  open(): Promise<void>;
}

/** @param target URL of a server that listens on TCP */
export async function openGate(target: string): Promise<Gate> {
  const to = new URL(target);
  const sockets = new Set<Socket>();
  const server = createServer((near) => {
    const far = connect(Number(to.port), to.hostname);
    for (const [socket, other] of [
      [near, far],
      [far, near],
    ] as const) {
      sockets.add(socket);
      socket.on('error', () => other.destroy());
      socket.on('close', () => {
        sockets.delete(socket);
        other.destroy();
      });
      socket.pipe(other);
    }
  });
  const listen = async (port: number): Promise<void> => {
    server.listen(port, '127.0.0.1');
    await once(server, 'listening');
  };
  await listen(0);
  const { port } = server.address() as AddressInfo;
  const url = new URL(target);
  url.hostname = '127.0.0.1';
  url.port = String(port);
  return {
    url: url.href,
    open: () => listen(port),
    close: async () => {
      if (!server.listening) return;
      server.close();
      for (const socket of sockets) socket.destroy();
      await once(server, 'close');
    },
  };
}
