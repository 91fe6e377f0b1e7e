/** A real HTTP server that answers as told, and keeps what it heard. */
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { text } from 'node:stream/consumers';

interface Heard {
  headers: IncomingMessage['headers'];
  body: string;
}

export interface ListeningPost {
  heard: Heard[];
  url: string;
  close(): void;
}

export const openListeningPost = async (
  answer: (response: ServerResponse, n: number) => void,
): Promise<ListeningPost> => {
  const heard: Heard[] = [];
  const server = createServer(async (request, response) => {
    heard.push({ headers: request.headers, body: await text(request) });
    answer(response, heard.length);
  });
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
  return {
    heard,
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}/barn`,
    close: () => {
      server.closeAllConnections();
      server.close();
    },
  };
};
