import type { IDefinedNamesService, IDefinedNamesServiceParam } from "@univerjs/engine-formula";
import { scopeOf } from "./name-scope";

type ByScope = Map<string | undefined, Map<string, IDefinedNamesServiceParam>>;

/** What changed, each name as it was and as it is now; "all" where the grid does not say. */
type OnChange = (unitId: string, names: readonly IDefinedNamesServiceParam[] | "all") => void;

/** The part of the grid's service that goes through all names for each name that changes. */
interface Spellings {
  _updateCache(unitId: string): void;
}

/**
 * The names of each workbook by the sheet that they belong to. The grid keeps them in one list by their ids; a new batch
 * sheet changes a hundred of them, and to go through the list for each would cost a season more with every sheet.
 */
export class NameLists {
  private readonly units = new Map<string, ByScope>();

  constructor(
    private readonly service: IDefinedNamesService,
    private readonly onChange: OnChange,
  ) {
    this.followSingleNames();
    this.delaySpellings();
  }

  find(unitId: string, scope: string | undefined, name: string): IDefinedNamesServiceParam | undefined {
    return this.unit(unitId).get(scope)?.get(name.toLowerCase());
  }

  list(unitId: string, scope: string | undefined): IDefinedNamesServiceParam[] {
    return [...(this.unit(unitId).get(scope)?.values() ?? [])];
  }

  forget(unitId: string): void {
    this.units.delete(unitId);
  }

  private unit(unitId: string): ByScope {
    let names = this.units.get(unitId);
    if (names) return names;
    this.units.set(unitId, (names = new Map()));
    for (const name of Object.values(this.service.getDefinedNameMap(unitId) ?? {})) put(names, name);
    return names;
  }

  private followSingleNames(): void {
    const { service } = this;
    let single = false;
    const alone = (unitId: string, id: string, change: () => void): void => {
      const before = service.getValueById(unitId, id);
      single = true;
      try {
        change();
      } finally {
        single = false;
      }
      const after = service.getValueById(unitId, id);
      const names = this.units.get(unitId);
      if (names && before) names.get(scopeOf(before))?.delete(before.name.toLowerCase());
      if (names && after) put(names, after);
      this.onChange(
        unitId,
        [before, after].filter((name) => name != null),
      );
    };
    const register = service.registerDefinedName.bind(service);
    service.registerDefinedName = (unitId, name) => {
      alone(unitId, name.id, () => {
        register(unitId, name);
      });
    };
    const remove = service.removeDefinedName.bind(service);
    service.removeDefinedName = (unitId, id) => {
      alone(unitId, id, () => {
        remove(unitId, id);
      });
    };
    service.update$.subscribe(({ unitId }) => {
      if (single) return;
      this.forget(unitId);
      this.onChange(unitId, "all");
    });
  }

  /** The grid's own list by spelling is made when it is asked for, not for every name that changes. */
  private delaySpellings(): void {
    const service = this.service as IDefinedNamesService & Spellings;
    if (typeof service._updateCache !== "function")
      throw new Error("The grid's engine has changed: its list of names by spelling is not where it was.");
    const update = service._updateCache.bind(service);
    const stale = new Set<string>();
    service._updateCache = (unitId) => {
      stale.add(unitId);
    };
    const getValueByName = service.getValueByName.bind(service);
    service.getValueByName = (unitId, name) => {
      if (stale.delete(unitId)) update(unitId);
      return getValueByName(unitId, name);
    };
  }
}

function put(names: ByScope, name: IDefinedNamesServiceParam): void {
  const scope = scopeOf(name);
  let ofScope = names.get(scope);
  if (!ofScope) names.set(scope, (ofScope = new Map()));
  ofScope.set(name.name.toLowerCase(), name);
}
