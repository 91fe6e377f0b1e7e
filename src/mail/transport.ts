/** Where letters leave the house: a mail server, or .eml files in the data folder where none is configured. */
import { mkdirSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { createTransport, type SendMailOptions } from 'nodemailer';

export interface Transport {
  /** Sends one letter; answers what the server (or the file system) said. Throws where it was not taken. */
  send(mail: SendMailOptions, name: string): Promise<string>;
  close(): void;
}

/** Patience with a silent mail server, in milliseconds. */
const TIMEOUTS = { connectionTimeout: 20_000, greetingTimeout: 20_000, socketTimeout: 60_000 };

export const smtpTransport = (url: string): Transport => {
  const mailer = createTransport({ url, pool: true, maxConnections: 2, ...TIMEOUTS });
  return {
    send: async (mail) => (await mailer.sendMail(mail)).response,
    close: () => mailer.close(),
  };
};

export const fileTransport = (folder: string): Transport => {
  const mailer = createTransport({ streamTransport: true, buffer: true, newline: 'windows' });
  return {
    send: async (mail, name) => {
      mkdirSync(folder, { recursive: true });
      const { message } = await mailer.sendMail(mail);
      const file = join(folder, `${name}.eml`);
      // A reader never sees half a letter: written aside, then named.
      writeFileSync(`${file}.part`, message as Buffer);
      renameSync(`${file}.part`, file);
      return `Written to ${file}`;
    },
    close: () => mailer.close(),
  };
};
