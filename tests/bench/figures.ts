/** How is a figure taken and printed? */

/** The middle one of some numbers. */
export const median = (numbers: readonly number[]): number =>
  numbers.toSorted((a, b) => a - b)[numbers.length >> 1]!;

/** Prints one figure on a line. */
export function print(what: string, value: number, unit: string): void {
  console.log(`${what.padEnd(58)}${value.toPrecision(4).padStart(10)} ${unit}`);
}

/** Seconds of computing that some work takes this process: whoever else is at work on the machine does not count. */
export function computingS(work: () => void): number {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1e6;
}
