/** Processor time that this program has taken, in microseconds. The wall clock would tell of the machine's other work, too. */
export function processorMicroseconds(): number {
  const { user, system } = process.cpuUsage();
  return user + system;
}

/** Microseconds that one call takes: the middle of several runs, each long enough for the clock. */
export function microsecondsPer(work: () => unknown, budgetMilliseconds = 30): number {
  // Warm: what a sheet in use sees, not the first call.
  const warmUntil = performance.now() + budgetMilliseconds;
  let repeats = 0;
  while (performance.now() < warmUntil || repeats < 3) {
    work();
    repeats += 1;
  }
  const runs = Array.from({ length: 5 }, () => {
    const started = processorMicroseconds();
    for (let count = 0; count < repeats; count++) work();
    return (processorMicroseconds() - started) / repeats;
  });
  return median(runs);
}

export function median(values: readonly number[]): number {
  return [...values].sort((one, other) => one - other)[Math.floor(values.length / 2)] ?? NaN;
}
