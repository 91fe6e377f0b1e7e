/** A real mail server in this process, on a port of its own, that keeps what it takes. */
import { buffer } from 'node:stream/consumers';
import { type ParsedMail, simpleParser } from 'mailparser';
import { SMTPServer } from 'smtp-server';

export interface PostOffice {
  url: string;
  mails: ParsedMail[];
  recipients: string[];
  /** What the next letters are answered with in place of being taken: an SMTP code, or null. */
  refuseWith: number | null;
  close(): Promise<void>;
}

/** Mail servers like to repeat the address in their answer. */
const no = (code: number, address: string): Error =>
  Object.assign(new Error(`<${address}>: recipient not taken`), { responseCode: code });

export const openPostOffice = async (): Promise<PostOffice> => {
  const server = new SMTPServer({
    secure: false,
    disabledCommands: ['STARTTLS', 'AUTH'],
    logger: false,
    onRcptTo: ({ address }, _, done) => {
      if (office.refuseWith) return done(no(office.refuseWith, address));
      office.recipients.push(address);
      done();
    },
    onData: (stream, _, done) => {
      buffer(stream)
        .then(simpleParser)
        .then((mail) => {
          office.mails.push(mail);
          done(null, 'Taken');
        }, done);
    },
  });
  // A client that hangs up in the middle is not this server's fault.
  server.on('error', () => {});
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
  const office: PostOffice = {
    url: `smtp://127.0.0.1:${server.server.address().port}`,
    mails: [],
    recipients: [],
    refuseWith: null,
    close: () => new Promise((closed) => server.close(closed)),
  };
  return office;
};
