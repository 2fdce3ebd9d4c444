import { ICommandService, type ICommandInfo, type IDisposable, type IExecutionOptions } from "@univerjs/core";
import type { Context } from "./context";
import type { Host } from "./host";

type Handler<Args> = (args: Args) => Promise<unknown>;
export type Command = Readonly<ICommandInfo>;

/** How one of Excel's events is recognised among the grid's commands. */
export interface EventSource<Args> {
  /** What must be remembered before the command runs, such as a sheet's old name. */
  before?(host: Host, command: Command): unknown;
  /** What to tell the handlers about a command that has run; nothing if it is not the event. */
  after(host: Host, command: Command, options: IExecutionOptions | undefined, before: unknown): readonly Args[];
}

/** Stands in for OfficeExtension.EventHandlers: handlers take effect, and stop, at the next sync. */
export class EventHandlers<Args> {
  constructor(
    private readonly context: Context,
    private readonly source: EventSource<Args>,
  ) {}

  add(handler: Handler<Args>): EventHandlerResult<Args> {
    const result = new EventHandlerResult<Args>(this.context, handler);
    this.context.write(() => result.attach(this.source));
    return result;
  }

  remove(_handler: Handler<Args>): void {
    throw new Error("Remove a handler through the result of add().");
  }
}

/** Stands in for OfficeExtension.EventHandlerResult. As in Excel it can be removed only by the context that made it. */
export class EventHandlerResult<Args> {
  private listening: IDisposable[] = [];

  constructor(
    readonly context: Context,
    private readonly handler: Handler<Args>,
  ) {}

  attach(source: EventSource<Args>): void {
    const { host } = this.context;
    host.handlers.add(this);
    const commands = host.engine.injector.get(ICommandService);
    const remembered = new WeakMap<object, unknown>();
    if (source.before) {
      this.listening.push(
        commands.beforeCommandExecuted((command) => {
          if (command.params) remembered.set(command.params, source.before!(host, command));
        }),
      );
    }
    this.listening.push(
      commands.onCommandExecuted((command, options) => {
        const before = command.params ? remembered.get(command.params) : undefined;
        for (const args of source.after(host, command, options, before)) {
          // Excel calls handlers later, never in the middle of a change.
          queueMicrotask(() => void this.handler(args));
        }
      }),
    );
  }

  remove(): void {
    this.context.write(() => this.detach());
  }

  detach(): void {
    this.context.host.handlers.delete(this);
    for (const one of this.listening.splice(0)) one.dispose();
  }
}
