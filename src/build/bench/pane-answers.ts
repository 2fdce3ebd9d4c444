import { readFileSync } from "node:fs";
import type { RequestListener } from "node:http";
import path from "node:path";
import sirv from "sirv";
import { root } from "../run.mjs";
import type { BenchRow } from "./row";
import { askUnwatchedBench, patienceMs } from "./unwatched-page";

const limitMs = 2500;
/** Above this a click is felt to hang (Nielsen, "Response times: the 3 important limits", 1993: 0.1 s is instant, 1 s breaks the thought). */
const felt = 300;

interface Answered {
  readonly clicked: number;
  readonly answered: number;
}

declare global {
  interface Window {
    clicksAnswered?: Answered[];
  }
}

/**
 * Clicks at the pane's buttons all the time, as an impatient visitor would, and notes when each click has changed what is drawn. The
 * ticks come from a worker, whose clock does not stand still when the page is busy.
 */
const probe = `
window.clicksAnswered = [];
const worker = new Worker("/probe-worker.js");
const origin = performance.timeOrigin;
let waiting;
let turn = 0;
worker.onmessage = ({ data }) => {
  if (waiting) return;
  const buttons = document.getElementById("pane")?.contentDocument?.querySelectorAll("nav[aria-label='Places in the job'] button") ?? [];
  if (buttons.length < 7) return;
  // Where the visitor could first have clicked is when the worker's tick was sent, not when the page got round to it.
  waiting = data - origin;
  const next = buttons[5 + (turn += 1) % 2];
  next.click();
  const look = () => {
    if (next.getAttribute("aria-current") !== "true") return requestAnimationFrame(look);
    requestAnimationFrame(() => {
      window.clicksAnswered.push({ clicked: waiting, answered: performance.now() });
      waiting = undefined;
    });
  };
  requestAnimationFrame(look);
};
`;
const probeWorker = "setInterval(() => postMessage(performance.timeOrigin + performance.now()), 25);";

function withProbe(): RequestListener {
  const dist = path.join(root, "dist");
  const files = sirv(dist, { dev: true });
  const page = readFileSync(path.join(dist, "bench/index.html"), "utf8").replace("</title>", '</title><script src="/probe.js"></script>');
  return (request, response) => {
    const own = {
      "/bench/": ["text/html", page],
      "/probe.js": ["text/javascript", probe],
      "/probe-worker.js": ["text/javascript", probeWorker],
    }[request.url ?? ""];
    if (own) response.writeHead(200, { "content-type": own[0]! }).end(own[1]);
    else files(request, response, () => void response.writeHead(404).end());
  };
}

/** From navigation to the moment from which every click into the pane is answered at once. */
export const paneAnswers: BenchRow = {
  what: "bench: pane answers every click, after navigation, sample batch open",
  target: `from ${limitMs / 1000} s on, on two cores`,
  measure: async () => {
    const clicks = await askUnwatchedBench(withProbe(), () => window.clicksAnswered);
    const first = clicks?.[0];
    if (!first) return { measured: `not within ${patienceMs / 1000} s, or no Chromium found` };
    const slow = clicks.filter(({ clicked, answered }) => answered - clicked > felt).at(-1);
    const usable = (slow ?? first).answered;
    const worst = Math.max(...clicks.map(({ clicked, answered }) => answered - clicked));
    return {
      measured: `${(usable / 1000).toFixed(2)} s (first answer at ${(first.answered / 1000).toFixed(2)} s; longest wait ${worst.toFixed(0)} ms)`,
      met: usable < limitMs,
    };
  },
};
