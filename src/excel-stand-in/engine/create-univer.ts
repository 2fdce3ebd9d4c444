import { LogLevel, Univer, type IUniverConfig, type Plugin, type PluginCtor } from "@univerjs/core";
import { FUniver } from "@univerjs/core/facade";

type PluginEntry = PluginCtor<Plugin> | [PluginCtor<Plugin>, unknown];
export interface Preset {
  plugins: readonly PluginEntry[];
}

/**
 * The same job as `createUniver` of @univerjs/presets, which we do not install: it would bring some 25 packages
 * without a licence. When two presets name the same plugin, the later entry (with its options) wins.
 */
export function createUniver(presets: readonly Preset[], config: Partial<IUniverConfig> = {}): Grid {
  const univer = new Univer({ logLevel: LogLevel.WARN, ...config });
  const entries = new Map<string, [PluginCtor<Plugin>, unknown]>();
  for (const entry of presets.flatMap((preset) => preset.plugins)) {
    const [plugin, options] = Array.isArray(entry) ? entry : [entry, undefined];
    entries.delete(plugin.pluginName);
    entries.set(plugin.pluginName, [plugin, options]);
  }
  for (const [plugin, options] of entries.values()) univer.registerPlugin(plugin, options);
  return { univer, univerAPI: FUniver.newAPI(univer) };
}

export interface Grid {
  univer: Univer;
  univerAPI: FUniver;
}
