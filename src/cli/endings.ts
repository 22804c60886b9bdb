/**
 * How does the program end when it is stopped from outside? Ctrl-C, TERM and a closed terminal end it with their own
 * codes; a reader that closes the pipe ends it quietly.
 */
import { closeSync } from 'node:fs';
import { isatty } from 'node:tty';
import { problemLines } from '../show/problems.js';
import { systemFault } from '../store/system-fault.js';
import { EXIT } from './exit-codes.js';
import { printRemark } from './output.js';

function endQuietlyWhenClosed(stream: NodeJS.WriteStream): void {
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') process.exit();
    if (error.code === 'EIO' && stream.isTTY) process.exit(EXIT.hungUp); // the signal that says so may come later
    if (stream === process.stdout && error.syscall === 'write') endWithoutRoom(error);
    throw error;
  });
}

/** A standard output that takes no more, such as a file on a full disk: told in a line, the rest is lost. */
function endWithoutRoom(error: NodeJS.ErrnoException): never {
  printRemark(problemLines([systemFault('the standard output', 'room for the whole result', error)]));
  process.exit(EXIT.badInput);
}

const STANDARD_STREAMS = [0, 1, 2];

/** At its end Node resets its terminals and crashes over one that is gone; what is closed it leaves alone. */
function letGoOfLostTerminals(): void {
  const terminals = STANDARD_STREAMS.filter((fd) => isatty(fd));
  process.on('exit', () => terminals.filter((fd) => !isatty(fd)).forEach((fd) => closeSync(fd)));
}

/** Takes care of signals and closed pipes for the whole program. */
export function watchForEndings(): void {
  process.on('SIGINT', () => process.exit(EXIT.interrupted));
  process.on('SIGTERM', () => process.exit(EXIT.terminated));
  process.on('SIGHUP', () => process.exit(EXIT.hungUp));
  letGoOfLostTerminals();
  endQuietlyWhenClosed(process.stdout);
  endQuietlyWhenClosed(process.stderr);
}
