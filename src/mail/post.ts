/** One request to an address somebody gave, over http or https; redirects are not followed. */
import { request as requestHttp } from 'node:http';
import { request as requestHttps } from 'node:https';
import { useAgent } from 'request-filtering-agent';

export interface Answered {
  status: number;
  text: string;
}

export interface Asking {
  method: 'GET' | 'POST';
  headers?: Readonly<Record<string, string>>;
  body?: string;
  /** Whether it may lead into this machine or its own network. */
  allowPrivate: boolean;
  /** Patience, in milliseconds. */
  timeout?: number;
}

/** An answer is read no further than that many characters. */
const MOST_READ = 500;

/** Rejects where no answer came; `connected` on the error tells whether the other side can have heard it. */
export const ask = (address: string, asking: Asking): Promise<Answered> =>
  new Promise((resolve, reject) => {
    const { method, headers = {}, body = '', allowPrivate, timeout = 20_000 } = asking;
    let connected = false;
    const fail = (error: Error): void => reject(Object.assign(error, { connected }));
    const request = (address.startsWith('https:') ? requestHttps : requestHttp)(
      address,
      {
        method,
        headers: { ...headers, 'content-length': Buffer.byteLength(body) },
        agent: useAgent(address, { allowPrivateIPAddress: allowPrivate }),
        timeout,
      },
      (response) => {
        let text = '';
        response.setEncoding('utf8');
        response.on('data', (chunk: string) => {
          text = (text + chunk).slice(0, MOST_READ);
        });
        response.on('end', () => resolve({ status: response.statusCode ?? 0, text }));
        response.on('error', fail);
      },
    );
    request.on('socket', (socket) =>
      socket.once(address.startsWith('https:') ? 'secureConnect' : 'connect', () => {
        connected = true;
      }),
    );
    request.on('timeout', () => request.destroy(new Error(`No answer within ${timeout / 1000} seconds`)));
    request.on('error', fail);
    request.end(body);
  });
