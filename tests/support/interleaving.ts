/** One person's pane at work: does what it does with a context of its own. */
export type Writer = (context: Excel.RequestContext) => Promise<unknown>;

/** How a writer's work ended. */
export type Ending = { readonly ended: "done" } | { readonly ended: "refused"; readonly problem: Error };

/** One person's part in an order of turns. */
type Turn = 0 | 1;

/**
 * Every order in which two writers can take turns at Excel, up to so many round trips each: [0,0,1,1], [0,1,0,1] and so
 * on. Writers that need fewer turns let theirs pass, so orders longer than needed do no harm.
 */
export function everyOrder(first: number, second: number): Turn[][] {
  if (first === 0 && second === 0) return [[]];
  return [
    ...(first > 0 ? everyOrder(first - 1, second).map((rest): Turn[] => [0, ...rest]) : []),
    ...(second > 0 ? everyOrder(first, second - 1).map((rest): Turn[] => [1, ...rest]) : []),
  ];
}

/**
 * The orders that matter when each writer reads for a while and writes in its last trip: all of one writer's trips
 * between two of the other's, and turn by turn. Far fewer than every order, and every pair of read and write is crossed.
 */
export function crossingOrders(first: number, second: number): Turn[][] {
  const times = (who: Turn, count: number): Turn[] => Array.from({ length: count }, () => who);
  const between = (who: Turn, mine: number, theirs: number): Turn[][] =>
    Array.from({ length: mine - 1 }, (_, index) => [
      ...times(who, index + 1),
      ...times(who === 0 ? 1 : 0, theirs),
      ...times(who, mine - index - 1),
    ]);
  const turnByTurn = (start: Turn): Turn[] =>
    Array.from({ length: 2 * Math.max(first, second) }, (_, index) => (index % 2 === 0 ? start : start === 0 ? 1 : 0));
  return [...between(0, first, second), ...between(1, second, first), turnByTurn(0), turnByTurn(1)];
}

/**
 * Lets two writers work on the open workbook as two panes would: each goes on at once until it wants a round trip, and
 * `order` says whose round trip comes next. What one has read may so be out of date when it writes.
 */
export async function interleaved(writers: readonly [Writer, Writer], order: readonly Turn[]): Promise<[Ending, Ending]> {
  const desk = new Desk(order);
  const endings = await Promise.all(writers.map((writer, index) => run(writer, index as Turn, desk)));
  return endings as [Ending, Ending];
}

async function run(writer: Writer, who: Turn, desk: Desk): Promise<Ending> {
  try {
    await Excel.run(async (context) => {
      const sync = context.sync.bind(context);
      // Excel.run's own last sync is a round trip like the others.
      Object.defineProperty(context, "sync", {
        value: async <T>(passThrough?: T): Promise<T> => {
          await desk.turn(who);
          return sync(passThrough) as Promise<T>;
        },
      });
      await writer(context);
    });
    return { ended: "done" };
  } catch (problem) {
    return { ended: "refused", problem: problem instanceof Error ? problem : new Error(String(problem)) };
  } finally {
    desk.leave(who);
  }
}

/** Gives out the turns: nobody is called before both have come to the desk or gone home. */
class Desk {
  private readonly waiting: (((go: void) => void) | undefined)[] = [undefined, undefined];
  private readonly gone = [false, false];
  private readonly left: Turn[];

  constructor(order: readonly Turn[]) {
    this.left = [...order];
  }

  turn(who: Turn): Promise<void> {
    return new Promise((resolve) => {
      this.waiting[who] = resolve;
      this.call();
    });
  }

  leave(who: Turn): void {
    this.gone[who] = true;
    this.call();
  }

  private call(): void {
    if (([0, 1] as const).some((who) => !this.gone[who] && !this.waiting[who])) return;
    const here = ([0, 1] as const).filter((who) => this.waiting[who]);
    if (here.length === 0) return;
    let next = this.left.shift();
    while (next !== undefined && !here.includes(next)) next = this.left.shift();
    const called = next ?? here[0]!;
    const go = this.waiting[called]!;
    this.waiting[called] = undefined;
    go();
  }
}
