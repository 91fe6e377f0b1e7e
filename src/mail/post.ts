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

/** What the filter says of an address within the network, for whoever gave it. */
const inWords = (error: Error): Error =>
  /private IP address/.test(error.message)
    ? new Error('The address lies within this server’s own network. HOOKS_MAY_BE_PRIVATE=true lets letters go there.')
    : error;

/** An answer is read no further than that many characters. */
const MOST_READ = 500;

/**
 * Answers once the status and enough of the text are there, and in any case when patience is over: who drips it out
 * holds nobody up. Rejects where no answer came; `connected` on the error tells whether the other side can have heard it.
 */
export const ask = (address: string, asking: Asking): Promise<Answered> =>
  new Promise((resolve, reject) => {
    const { method, headers = {}, body = '', allowPrivate, timeout = 20_000 } = asking;
    let connected = false;
    let answered: Answered | null = null;
    const end = (error: Error): void => {
      clearTimeout(patience);
      if (answered) resolve(answered);
      else reject(Object.assign(inWords(error), { connected }));
      request.destroy();
    };
    const request = (address.startsWith('https:') ? requestHttps : requestHttp)(
      address,
      {
        method,
        headers: { ...headers, 'content-length': Buffer.byteLength(body) },
        agent: useAgent(address, { allowPrivateIPAddress: allowPrivate }),
      },
      (response) => {
        const answer = { status: response.statusCode ?? 0, text: '' };
        answered = answer;
        response.setEncoding('utf8');
        response.on('data', (chunk: string) => {
          answer.text = (answer.text + chunk).slice(0, MOST_READ);
          if (answer.text.length === MOST_READ) end(new Error('Read enough'));
        });
        for (const over of ['end', 'error', 'aborted']) response.on(over, end);
      },
    );
    const patience = setTimeout(() => end(new Error(`No answer within ${timeout / 1000} seconds`)), timeout);
    request.on('socket', (socket) =>
      socket.once(address.startsWith('https:') ? 'secureConnect' : 'connect', () => {
        connected = true;
      }),
    );
    request.on('error', end);
    request.end(body);
  });
