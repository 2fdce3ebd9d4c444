import { ClientObject, pathsOf, type LoadOptions, type Locator } from "./client-object";
import { notLoaded } from "./errors";
import type { RequestQueue } from "./request-context";

/** The result of a method that answers with a plain value after the next sync, such as getCount. */
export class ClientResult<T> {
  private result: { value: T } | undefined;

  get value(): T {
    if (!this.result) throw notLoaded("value");
    return this.result.value;
  }

  settle(value: T): void {
    this.result = { value };
  }
}

/** Base of worksheets, tables, names and so on. Their items exist after `load("items/...")` and a sync. */
export abstract class ClientCollection<
  Item extends { load(options?: LoadOptions): unknown },
  Target,
  Queue extends RequestQueue = RequestQueue,
> extends ClientObject<Target, Queue> {
  private loadedItems: Item[] | undefined;

  constructor(context: Queue, locator: Locator<Target>) {
    super(context, locator);
  }

  get items(): Item[] {
    if (!this.loadedItems) throw notLoaded("items");
    return this.loadedItems;
  }

  /** The stand-ins of all items, made while the queue is worked off. */
  protected abstract list(target: Target): Item[];

  /** How many there are, after load("count"). */
  get count(): number {
    return this.get("count");
  }

  /** Names of the items' properties, with or without "items/" before them; "items" alone is everything of theirs. */
  override load(options?: LoadOptions): this {
    const paths = pathsOf(options);
    const ofItems = paths.filter((path) => path !== "count").map((path) => path.replace(/^items(?:\/|$)/u, "") || "*");
    this.context.read(() => {
      const items = this.list(this.target);
      this.keep("count", items.length);
      if (paths.length > 0 && ofItems.length === 0) return;
      this.loadedItems = items;
      for (const item of items) item.load(paths.length > 0 ? ofItems : undefined);
    });
    return this;
  }

  getCount(): ClientResult<number> {
    const result = new ClientResult<number>();
    this.context.read(() => result.settle(this.list(this.target).length));
    return result;
  }
}
