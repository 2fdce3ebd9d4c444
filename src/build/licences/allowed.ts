/** Licences that what we ship may have: all let anybody use, change and pass on, given that the notice goes along (licences.txt). */
export const shipped: Readonly<Record<string, string>> = {
  MIT: "notice goes along",
  ISC: "notice goes along",
  "BSD-2-Clause": "notice goes along",
  "BSD-3-Clause": "notice goes along; no use of the authors' names",
  "Apache-2.0": "notice goes along; patents granted",
  "0BSD": "no condition at all",
  Unlicense: "no condition at all",
};

/** Further licences of packages that only build and test: nothing of theirs is passed on. */
export const toolsOnly: Readonly<Record<string, string>> = {
  "MPL-2.0": "changed files of theirs would have to be published; we change none and ship none",
  "BlueOak-1.0.0": "as free as MIT",
  "Python-2.0": "as free as BSD",
  "CC-BY-4.0": "a table of browsers, with attribution in the package itself",
};

/** Packages whose licence is not in the lock file, or is somebody's own; each was read. */
export const byName: Readonly<Record<string, { readonly licence: string; readonly toolOnly: boolean; readonly reason: string }>> = {
  "@univerjs/telemetry": {
    licence: "Apache-2.0",
    toolOnly: false,
    reason: "LICENSE is in the package. The name of an interface and nothing else: it sends nothing",
  },
  "node-forge": {
    licence: "BSD-3-Clause",
    toolOnly: true,
    reason: "offered under it or the GPL 2.0, as one likes. Makes the certificate of `npm run excel`",
  },
  "@microsoft/office-js": {
    licence: "Microsoft's own",
    toolOnly: true,
    reason: "a test host only, neither committed nor shipped; in Excel it comes from Microsoft",
  },
};
