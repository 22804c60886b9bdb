/**
 * How does the terminal come back as it was? Whatever ends the program, an error or a signal too, the
 * alternate screen, the cursor and the modes are put back, exactly once; and stopping it for a while
 * (Ctrl-Z) does the same.
 */
import { writeSync } from 'node:fs';

/** The streams of a terminal. */
export interface TerminalStreams {
  stdin: { setRawMode(mode: boolean): unknown };
  stdout: { readonly fd: number };
}

/** A terminal that the program has to itself. */
export interface Terminal {
  /** Gives the terminal back as it was. */
  close(): void;
  /** Gives the terminal back and stops the program until the shell lets it go on. */
  suspend(): void;
}

const CONTROL = `${String.fromCodePoint(0x1b)}[`;

/** The alternate screen; entered twice it would forget where the cursor of the other one was. */
const ENTER = `${CONTROL}?1049h`;

/** No cursor, pastes in brackets. */
const SET_MODES = `${CONTROL}?25l${CONTROL}?2004h`;

/** The same undone; and what an update cut short may have left: held back, not wrapping, not plain. */
const LEAVE = `${CONTROL}?2026l${CONTROL}?7h${CONTROL}m${CONTROL}?2004l${CONTROL}?25h${CONTROL}?1049l`;

/** How often a full terminal is tried again. */
const WRITE_ATTEMPTS = 1000;

/** The program and whatever started it in the same job, npm for instance: the shell waits for all of them to stop. */
const OWN_GROUP = 0;

/** Writes before it returns, so also while the program ends; a terminal that is gone needs nothing. */
function writeNow(fd: number, text: string): void {
  for (let attempt = 0; attempt < WRITE_ATTEMPTS; attempt++) {
    try {
      writeSync(fd, text);
      return;
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'EAGAIN') return;
    }
  }
}

/** Keys come one by one and unechoed, or line by line; a terminal that is gone has no modes. */
function setRawMode(stdin: TerminalStreams['stdin'], mode: boolean): void {
  try {
    stdin.setRawMode(mode);
  } catch {
    return;
  }
}

/**
 * Takes a terminal: alternate screen, no cursor, raw keys. `onResume` is called when it was taken again
 * after a stop; what stands on it is unknown then.
 */
export function openTerminal({
  stdin,
  stdout,
  onResume,
}: TerminalStreams & { onResume?: () => void }): Terminal {
  let isTaken = false;

  const take = () => {
    setRawMode(stdin, true);
    writeNow(stdout.fd, (isTaken ? '' : ENTER) + SET_MODES);
    isTaken = true;
  };
  const giveBack = () => {
    if (!isTaken) return;
    isTaken = false;
    writeNow(stdout.fd, LEAVE);
    setRawMode(stdin, false);
  };
  const takeAgain = () => {
    setRawMode(stdin, false); // a shell may have changed the mode, which Node would not notice
    take();
    onResume?.();
  };
  const close = () => {
    process.off('exit', close);
    process.off('SIGCONT', takeAgain);
    giveBack();
  };
  const suspend = () => {
    giveBack();
    process.kill(OWN_GROUP, 'SIGTSTP'); // comes back when the shell lets the program go on
    takeAgain();
  };

  process.on('exit', close);
  process.on('SIGCONT', takeAgain); // after a stop from outside, which leaves no time to give anything back
  take();
  return { close, suspend };
}
