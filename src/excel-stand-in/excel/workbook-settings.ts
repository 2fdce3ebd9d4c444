import { ClientCollection } from "./collection";
import { ClientObject } from "./client-object";
import type { Context } from "./context";
import type { StandsFor } from "./standing";

const settingsOf = (context: Context): Record<string, unknown> => (context.host.extras.of(context.host.unitId).settings ??= {});

/** Stands in for Excel.SettingCollection: what this add-in keeps in the workbook. */
export class SettingCollection
  extends ClientCollection<Setting, true, Context>
  implements StandsFor<Excel.SettingCollection, keyof SettingCollection>
{
  add(key: string, value: unknown): Setting {
    this.write(() => {
      settingsOf(this.context)[key] = structuredClone(value);
    });
    return this.getItem(key);
  }

  getItem(key: string): Setting {
    return this.standIn(key, "throws");
  }
  getItemOrNullObject(key: string): Setting {
    return this.standIn(key, "null");
  }

  protected list(): Setting[] {
    return Object.keys(settingsOf(this.context)).map((key) => this.standIn(key, "throws"));
  }

  private standIn(key: string, missing: "throws" | "null"): Setting {
    return new Setting(this.context, {
      name: "setting",
      missing,
      find: () => (Object.hasOwn(settingsOf(this.context), key) ? key : undefined),
    });
  }
}

/** Stands in for Excel.Setting. */
export class Setting extends ClientObject<string, Context> implements StandsFor<Excel.Setting, keyof Setting> {
  declare readonly key: string;
  declare value: Excel.Setting["value"];

  delete(): void {
    this.remove((key) => {
      delete settingsOf(this.context)[key];
    });
  }

  protected override changes() {
    return {
      value: (value: unknown) =>
        this.set("value", value, (key) => {
          settingsOf(this.context)[key] = structuredClone(value);
        }),
    };
  }

  protected override readers() {
    return { key: (key: string) => key, value: (key: string) => structuredClone(settingsOf(this.context)[key]) };
  }
}
