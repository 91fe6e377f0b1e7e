/** A mail server in this process that misbehaves as told, and keeps what it has really taken. */
import { once } from 'node:events';
import { type AddressInfo, createServer, type Socket } from 'node:net';

type Moment = 'greeting' | 'mail' | 'rcpt' | 'data' | 'end';

export type Behavior =
  | 'take'
  | 'refuse connections'
  | 'never greet'
  /** Greets, and never says anything again. */
  | 'hang after EHLO'
  /** Keeps the whole message, and never says so. */
  | 'hang after DATA'
  /** Keeps the whole message, and cuts the line in place of saying so. */
  | 'cut after DATA'
  | 'cut during DATA'
  /** Offers STARTTLS, and talks nonsense in place of a handshake. */
  | 'broken TLS'
  | { code: 421 | 450 | 451 | 452 | 500 | 550 | 552 | 554; at: Moment };

export interface BadMailServer {
  url: string;
  /** Holds from the next thing said; how a line is opened and greeted holds for lines opened from now on. */
  behavior: Behavior;
  /** The messages it has kept, whether or not it said so. */
  taken: { messageId: string; raw: Buffer }[];
  /** How often it was called. */
  connections: number;
  /** Cuts every line that is open. */
  hangUp(): void;
  close(): Promise<void>;
}

export const openBadMailServer = async (behavior: Behavior = 'take'): Promise<BadMailServer> => {
  const lines = new Set<Socket>();
  const server = createServer((socket) => {
    bad.connections++;
    lines.add(socket);
    socket.on('close', () => lines.delete(socket));
    // Whoever hangs up on a bad server is right.
    socket.on('error', () => {});
    if (bad.behavior === 'refuse connections') socket.destroy();
    else talk(bad, socket);
  });
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  const bad: BadMailServer = {
    url: `smtp://127.0.0.1:${(server.address() as AddressInfo).port}`,
    behavior,
    taken: [],
    connections: 0,
    hangUp: () => {
      for (const line of lines) line.destroy();
    },
    close: async () => {
      bad.hangUp();
      await new Promise((closed) => server.close(closed));
    },
  };
  return bad;
};

/** One line, from the greeting to its end. */
const talk = (bad: BadMailServer, socket: Socket): void => {
  const say = (words: string) => socket.write(`${words}\r\n`);

  /** Says yes, or the no it is told to say at this moment. */
  const answer = (at: Moment, yes: string): boolean => {
    const { behavior } = bad;
    if (typeof behavior === 'string' || behavior.at !== at) {
      say(yes);
      return true;
    }
    say(`${behavior.code} told to say so`);
    // 421 means: and now I hang up.
    if (behavior.code === 421 || at === 'greeting') socket.end();
    return false;
  };

  const keep = (message: string): void => {
    const raw = Buffer.from(message.replace(/^\./gm, ''), 'latin1');
    bad.taken.push({ messageId: /^Message-ID:\s*(\S+)/im.exec(message)?.[1] ?? '', raw });
  };

  let hearing: 'commands' | 'message' | 'handshake' = 'commands';

  const command = (words: string): void => {
    if (bad.behavior === 'hang after EHLO') return;
    switch (words.slice(0, 4).toUpperCase()) {
      case 'EHLO':
        say('250-bad.example.test');
        if (bad.behavior === 'broken TLS') say('250-STARTTLS');
        return void say('250 8BITMIME');
      case 'STAR':
        hearing = 'handshake';
        return void say('220 go ahead');
      case 'MAIL':
        return void answer('mail', '250 fine');
      case 'RCPT':
        return void answer('rcpt', '250 fine');
      case 'DATA':
        if (answer('data', '354 go ahead')) hearing = 'message';
        return;
      case 'RSET':
        return void say('250 forgotten');
      case 'QUIT':
        say('221 bye');
        return void socket.end();
      default:
        say('500 what?');
    }
  };

  const message = (words: string): void => {
    hearing = 'commands';
    if (bad.behavior === 'cut after DATA' || bad.behavior === 'hang after DATA') {
      keep(words);
      if (bad.behavior === 'cut after DATA') socket.destroy();
    } else if (answer('end', '250 taken')) keep(words);
  };

  let heard = '';
  socket.on('data', (chunk) => {
    if (hearing === 'handshake') return void say('Is this TLS? It is not.');
    heard += chunk.toString('latin1');
    for (;;) {
      if (hearing === 'message' && bad.behavior === 'cut during DATA' && heard !== '') return void socket.destroy();
      const end = hearing === 'message' ? '\r\n.\r\n' : '\r\n';
      const at = heard.indexOf(end);
      if (at < 0) return;
      const words = heard.slice(0, at);
      heard = heard.slice(at + end.length);
      if (hearing === 'message') message(`${words}\r\n`);
      else command(words);
    }
  });

  if (bad.behavior !== 'never greet') answer('greeting', '220 bad.example.test ESMTP');
};
