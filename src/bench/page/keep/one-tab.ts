/**
 * One tab at a time keeps its work in the browser. The first takes a lock that the browser frees when the tab closes or
 * crashes; a later tab can ask for it, whereupon the first writes what it has and lets go.
 */
const lockName = "gylebook-bench-workbook";
const channelName = "gylebook-bench-tabs";
const handOver = "hand over";

export interface TabTurn {
  readonly mine: boolean;
  /** Asks the other tab to write and let go; resolves when this tab holds the turn. */
  take(): Promise<void>;
}

export interface TabTurnOptions {
  /** Called before the turn goes to another tab; it is given away when this resolves. */
  beforeLoss: () => Promise<void>;
  lost: () => void;
}

export async function claimTurn(options: TabTurnOptions): Promise<TabTurn> {
  // A browser that blocks sites' data, or a page served without https, has no locks: tabs cannot know of each other then.
  if (navigator.locks === undefined || globalThis.BroadcastChannel === undefined) return alone;
  const turn = { mine: false, take };
  const channel = new BroadcastChannel(channelName);
  let letGo: (() => void) | undefined;

  function hold(): Promise<void> {
    turn.mine = true;
    return new Promise((resolve) => {
      letGo = resolve;
    });
  }

  function request(lockOptions: LockOptions): Promise<boolean> {
    return new Promise((answer, fail) => {
      navigator.locks
        .request(lockName, lockOptions, (lock) => {
          answer(lock !== null);
          return lock === null ? undefined : hold();
        })
        .catch((problem: unknown) => {
          // Another tab took the lock by force because this one did not answer in time.
          if (turn.mine) release();
          else fail(problem instanceof Error ? problem : new Error(String(problem)));
        });
    });
  }

  function release(): void {
    turn.mine = false;
    letGo?.();
    options.lost();
  }

  async function take(): Promise<void> {
    channel.postMessage(handOver);
    // A tab that hangs does not answer; its last kept state is then all there is.
    const patience = AbortSignal.timeout(3000);
    const given = await request({ signal: patience }).catch(() => false);
    if (!given) await request({ steal: true });
  }

  channel.addEventListener("message", ({ data }) => {
    if (data === handOver && turn.mine) void options.beforeLoss().finally(release);
  });
  try {
    await request({ ifAvailable: true });
  } catch (problem) {
    console.error(problem);
    return alone;
  }
  return turn;
}

const alone: TabTurn = { mine: true, take: () => Promise.resolve() };
