// @ts-check
// What each kind of page may load and do, as a content security policy. The pages carry it themselves (a static site may
// not let its owner set headers), and `_headers` repeats it for servers that do. Nothing may be evaluated from text anywhere.

/** Microsoft insists that office.js comes from its own address. */
const microsoft = "https://appsforoffice.microsoft.com";

/** @param {Record<string, string>} rules */
const policy = (rules) =>
  Object.entries({ "default-src": "'none'", ...rules, "base-uri": "'none'", "form-action": "'none'", "object-src": "'none'" })
    .map(([name, value]) => `${name} ${value}`)
    .join("; ");

/** The bench's side of the pane; its host is the page around it. */
const pane = { "script-src": "'self'", "style-src": "'self'", "img-src": "'self' data: blob:", "connect-src": "'self'" };

export const policies = {
  /**
   * The pane in Excel. office.js hides a frame of its own with a style attribute, which a stricter style rule would lay
   * open. On the web it asks in such a frame whether the page that Excel shows it in may be trusted (AgaveErrorUX, beside office.js); the
   * other frame, for Microsoft's usage reports, is not among what may be loaded, and office.js works without it.
   */
  pane: policy({ ...pane, "script-src": `'self' ${microsoft}`, "style-src": "'self' 'unsafe-inline'", "frame-src": microsoft }),
  benchPane: policy(pane),
  /** The grid sets style attributes and style elements itself. */
  bench: policy({
    "script-src": "'self'",
    "style-src": "'self' 'unsafe-inline'",
    "img-src": "'self' data: blob:",
    "font-src": "'self' data:",
    "connect-src": "'self'",
    "frame-src": "'self'",
    "worker-src": "'self' blob:",
  }),
  /** Pages that are only read: help, guide, installing. */
  reading: policy({ "style-src": "'self'", "img-src": "'self'" }),
};
