/** What the tests use of two packages that bring no types. */
declare module 'smtp-server' {
  import type { AddressInfo } from 'node:net';
  import type { Readable } from 'node:stream';

  type Done = (error?: (Error & { responseCode?: number }) | null, message?: string) => void;
  interface Session {
    envelope: { mailFrom: { address: string } | false; rcptTo: { address: string }[] };
  }
  export class SMTPServer {
    constructor(options: {
      secure: boolean;
      disabledCommands: string[];
      logger: boolean;
      onData(stream: Readable, session: Session, done: Done): void;
      onRcptTo(address: { address: string }, session: Session, done: Done): void;
    });
    server: { address(): AddressInfo };
    listen(port: number, host: string, listening: () => void): void;
    on(event: 'error', listener: (error: Error) => void): void;
    close(closed: () => void): void;
  }
}

declare module 'mailparser' {
  interface ParsedMail {
    subject?: string;
    text?: string;
    html?: string | false;
    messageId?: string;
    date?: Date;
    from?: { text: string };
    to?: { text: string };
    headers: Map<string, unknown>;
  }
  export const simpleParser: (source: Buffer | string) => Promise<ParsedMail>;
}
