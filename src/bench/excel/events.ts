import { ICommandService, type ICommandInfo, type IDisposable, type IExecutionOptions } from "@univerjs/core";
import type { Context } from "./context";

type Handler<Args> = (args: Args) => Promise<unknown>;

/** Stands in for Excel's EventHandlers: handlers take effect, and stop, at the next sync. */
export class EventHandlers<Args> {
  /** @param argumentsFor what to tell the handlers about a command of the grid; undefined if it is not the event */
  constructor(
    private readonly context: Context,
    private readonly argumentsFor: (command: Readonly<ICommandInfo>, options: IExecutionOptions | undefined) => Args | undefined,
  ) {}

  add(handler: Handler<Args>): EventHandlerResult<Args> {
    const result = new EventHandlerResult<Args>(this.context, handler);
    this.context.write(() => result.attach((command, options) => this.argumentsFor(command, options)));
    return result;
  }

  remove(_handler: Handler<Args>): void {
    throw new Error("Remove a handler through the result of add().");
  }
}

export class EventHandlerResult<Args> {
  private listening: IDisposable | undefined;

  constructor(readonly context: Context, private readonly handler: Handler<Args>) {}

  attach(argumentsFor: (command: Readonly<ICommandInfo>, options: IExecutionOptions | undefined) => Args | undefined): void {
    this.listening = this.context.host.engine.injector.get(ICommandService).onCommandExecuted((command, options) => {
      const args = argumentsFor(command, options);
      // Excel calls handlers later, never in the middle of a change.
      if (args !== undefined) queueMicrotask(() => void this.handler(args));
    });
  }

  remove(): void {
    this.context.write(() => this.listening?.dispose());
  }
}
