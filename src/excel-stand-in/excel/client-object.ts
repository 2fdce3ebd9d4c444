import { apiNotFound, invalidArgument, itemNotFound, notLoaded } from "./errors";
import type { RequestQueue } from "./request-context";

/** How a stand-in finds what it stands for when its turn in the queue comes. */
export interface Locator<Target> {
  find(): Target | undefined;
  /** "null" for the ...OrNullObject methods. */
  missing: "throws" | "null";
  name: string;
}

/** Classes that have their properties. */
const equipped = new Set<object>();

export type LoadOptions = string | string[] | Record<string, unknown> | undefined;

/**
 * Base of every stand-in: a promise of something in the workbook. Nothing can be read before it was loaded and synced;
 * whatever is set can be read back at once, as in Excel.
 */
export abstract class ClientObject<Target, Queue extends RequestQueue = RequestQueue> {
  private found: Target | undefined;
  private resolved = false;
  private readonly known = new Map<string, unknown>();
  private readonly parts = new Map<string, unknown>();

  constructor(
    readonly context: Queue,
    protected readonly locator: Locator<Target>,
  ) {
    if (!equipped.has(new.target)) this.equip(new.target.prototype as object);
    equipped.add(new.target);
    context.find(() => this.resolve());
  }

  get isNullObject(): boolean {
    if (!this.resolved) throw notLoaded("isNullObject");
    return this.found === undefined;
  }

  /** Reads properties at the next sync: names separated by commas or in an array, or an object with `true` for each. */
  load(options?: LoadOptions): this {
    for (const path of this.asked(options)) this.loadPath(path);
    return this;
  }

  /** What load() is to read: everything where nothing is named, or "*"; nothing where that is what Microsoft's own samples call it. */
  protected asked(options: LoadOptions): string[] {
    const paths = pathsOf(options).filter((path) => path !== "no-properties-needed");
    const everything = () => Object.keys(this.readers());
    if (options === undefined || options === "") return everything();
    return paths.flatMap((path) => (path === "*" ? everything() : [path]));
  }

  toJSON(): Record<string, unknown> {
    return Object.fromEntries(this.known);
  }

  /** How each property is read from the grid. A class that declares a property of this name has it: see `equip`. */
  protected readers(): Record<string, (target: Target) => unknown> {
    return {};
  }

  /** How each property that can be set reaches the workbook. */
  protected changes(): Record<string, (value: never) => void> {
    return {};
  }

  /** Objects below this one that a path such as "format/fill/color" leads through; made when they are asked for. */
  protected children(): Record<string, () => { load(options?: LoadOptions): unknown }> {
    return {};
  }

  /** What this stands for; only while the queue is worked off. */
  get target(): Target {
    if (!this.resolved) this.resolve();
    if (this.found === undefined) throw itemNotFound(this.locator.name);
    return this.found;
  }

  protected get(property: string): never {
    if (!this.known.has(property)) throw notLoaded(property);
    return this.known.get(property) as never;
  }

  protected set(property: string, value: unknown, apply: (target: Target) => void): void {
    this.known.set(property, value);
    this.write(apply);
  }

  protected write(apply: (target: Target) => void | Promise<void>, when: "always" | "if there" = "always"): void {
    this.context.write(() => (when === "if there" && this.isNullObject ? undefined : apply(this.target)));
  }

  /** For delete(), which does nothing where a null object is asked for it. */
  protected remove(apply: (target: Target) => void): void {
    this.write(apply, "if there");
  }

  /** For results of methods such as getCount. */
  protected keep(property: string, value: unknown): void {
    this.known.set(property, value);
  }

  /** For members that are newer than ExcelApi 1.12: an older Excel's library refuses them at once. */
  protected since(excelApi: number, member: string): void {
    const newest = this.context.host.switches.excelApi;
    if (newest !== undefined && newest < excelApi) throw apiNotFound(member, `ExcelApi 1.${excelApi}`);
  }

  /** An object below this one: the same each time, as in Excel. */
  protected part<Part>(name: string, make: () => Part): Part {
    if (!this.parts.has(name)) this.parts.set(name, make());
    return this.parts.get(name) as Part;
  }

  /** Gives a class the properties of its tables, once. */
  private equip(prototype: object): void {
    const changes = Object.keys(this.changes());
    for (const name of new Set([...Object.keys(this.readers()), ...changes])) {
      if (name in prototype) continue;
      Object.defineProperty(prototype, name, {
        configurable: true,
        get(this: ClientObject<unknown>) {
          return this.get(name);
        },
        set: changes.includes(name)
          ? function (this: ClientObject<unknown>, value: never) {
              this.changes()[name]!(value);
            }
          : undefined,
      });
    }
  }

  private resolve(): void {
    this.found = this.locator.find();
    this.resolved = true;
    if (this.found === undefined && this.locator.missing === "throws") throw itemNotFound(this.locator.name);
  }

  private loadPath(path: string): void {
    const [first = "", ...rest] = path.split("/");
    const child = this.children()[first];
    if (child) {
      child().load(rest.length > 0 ? rest.join("/") : undefined);
      return;
    }
    if (path === "isNullObject") return; // known after the next sync in any case
    const reader = this.readers()[first];
    if (!reader || rest.length > 0) throw invalidArgument(`There is no property "${path}" to load on ${this.locator.name}.`);
    this.context.read(() => {
      if (!this.resolved) this.resolve();
      if (this.found !== undefined) this.known.set(first, reader(this.found));
    });
  }
}

export function pathsOf(options: LoadOptions): string[] {
  if (typeof options === "string")
    return options
      .split(",")
      .map((path) => path.trim())
      .filter(Boolean);
  if (Array.isArray(options)) return options.flatMap(pathsOf);
  return Object.entries(options ?? {}).flatMap(([key, value]) =>
    value === true ? [key] : pathsOf(value as LoadOptions).map((path) => `${key}/${path}`),
  );
}
