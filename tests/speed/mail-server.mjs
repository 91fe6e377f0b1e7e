// A mail server in a process of its own, which takes everything; it tells its parent on which port.
import { SMTPServer } from 'smtp-server';

const server = new SMTPServer({
  authOptional: true,
  disabledCommands: ['STARTTLS', 'AUTH'],
  disableReverseLookup: true,
  onData: (stream, _, done) => {
    stream.resume();
    stream.on('end', () => done());
  },
});
server.listen(0, '127.0.0.1', () => process.send(server.server.address().port));
