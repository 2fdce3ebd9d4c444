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

  override load(options?: LoadOptions): this {
    const paths = pathsOf(options);
    const ofItems = paths.filter((path) => path !== "items").map((path) => path.replace(/^items\//u, ""));
    this.context.read(() => {
      this.loadedItems = this.list(this.target);
      for (const item of this.loadedItems) item.load(ofItems.length > 0 ? ofItems : undefined);
    });
    return this;
  }

  getCount(): ClientResult<number> {
    const result = new ClientResult<number>();
    this.context.read(() => result.settle(this.list(this.target).length));
    return result;
  }

  protected override readers(): Record<string, never> {
    return {};
  }
}
