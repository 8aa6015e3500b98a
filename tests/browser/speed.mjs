// How long an edit keeps the browser busy, and how much memory the program takes: node speed.mjs. Printed beside the medians
// of the release before, which stand in speed.json; `node speed.mjs --keep` writes today's there. No test: machines differ.
import { readFile, readdir, writeFile } from "node:fs/promises";
import { createServer } from "node:http";
import path from "node:path";
import { brotliCompressSync } from "node:zlib";
import { DESK, PHONE, dist, kept, launch, open, root, serve, started, watched } from "./support.mjs";
import { field, go, shown, unfold } from "./fitter.mjs";

const KEPT = path.join(root, "tests", "browser", "speed.json");
const RUNS = 50;
const SLOWED = 4;

const STAGES = ["open-drain", "high-side", "half-bridge"];
const ENDS = { "open-drain": "ignition", "high-side": "ground", "half-bridge": "relay" };
const KINDS = ["", "solenoid", "lamp", "motor", "led"];

/** A plan with forty outputs and a load on each. */
function forty() {
  const all = Array.from({ length: 40 }, (_, at) => ({ at, name: `P${at + 1}`, stage: STAGES[at % 3] }));
  return {
    quietpin: 2,
    outputs: all.map(({ name, stage }) => ({ name, stage, on_level: "ground", pull_up: "100 kohm" })),
    loads: all.map(({ at, name, stage }) => ({
      name: `load ${at + 1}`, kind: KINDS[at % 5], resistance: "40 ohm", output: name, far_end: ENDS[stage],
    })),
  };
}

const json = async (...names) => JSON.parse(await readFile(path.join(root, "tests", "plans", ...names), "utf8"));

/** What is edited where, to and fro. */
const EDITS = [
  ["demo", "injectors.resistance", ["2.5 ohm", "2.6 ohm"]],
  ["demo", "relays.0.relay_on_at", ["101 rpm", "112 rpm"]],
  ["demo", "loads.0.resistance", ["13 ohm", "12 ohm"]],
  ["demo", "battery.cold_cranking", ["8.5 V", "8.4 V"]],
  ["whole", "loads.4.resistance", ["9 ohm", "7 ohm"]],
  ["whole", "injectors.resistance", ["12.5 ohm", "12.6 ohm"]],
  ["whole", "battery.cold_cranking", ["8.5 V", "8.4 V"]],
  ["forty", "loads.20.resistance", ["41 ohm", "42 ohm"]],
];

const sorted = (numbers) => numbers.toSorted((a, b) => a - b);
const median = (numbers) => sorted(numbers)[Math.floor(numbers.length / 2)];

/** A page with this plan open; its memory is told by what started its program. */
async function opened(browser, address, plan, size) {
  const { context } = await watched(browser, { ...size, serviceWorkers: "block" });
  await context.addInitScript((text) => {
    localStorage.setItem("quietpin.plan.1", text);
    localStorage.setItem("quietpin.open", "1");
    for (const name of ["instantiate", "instantiateStreaming"]) {
      const own = WebAssembly[name];
      WebAssembly[name] = async (...given) => {
        const made = await own.apply(WebAssembly, given);
        const memory = (made.instance ?? made).exports.memory;
        if (memory) window.memoryOfProgram = memory;
        return made;
      };
    }
  }, JSON.stringify(plan));
  const page = await open(context, address);
  await started(page);
  return { page, context };
}

/** Types into a field once, and waits until what follows is drawn. */
async function edit(page, path_, text) {
  await field(page, path_).evaluate((input, text) => new Promise((done) => {
    const setText = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, "value").set;
    performance.mark("edit-begins");
    setText.call(input, text);
    input.dispatchEvent(new InputEvent("input", { bubbles: true }));
    // the letter is drawn first, and answered after that
    const end = () => (document.querySelector("main[data-due]") ? setTimeout(end, 5)
      : requestAnimationFrame(() => requestAnimationFrame(() => { performance.mark("edit-ends"); done(); })));
    setTimeout(end, 5);
  }), text);
}

/** How long the main thread was busy with each edit, in milliseconds, from a trace of the browser's own. */
async function busy(page, cdp, path_, texts) {
  const place = await shown(page, path_);
  await unfold(place);
  for (let run = 0; run < 6; run += 1) await edit(page, path_, texts[run % 2]);
  const events = [];
  cdp.on("Tracing.dataCollected", ({ value }) => events.push(...value));
  const complete = new Promise((resolve) => { cdp.once("Tracing.tracingComplete", resolve); });
  await cdp.send("Tracing.start", { transferMode: "ReportEvents", traceConfig: {
    includedCategories: ["disabled-by-default-devtools.timeline", "devtools.timeline", "blink.user_timing", "toplevel"],
  } });
  for (let run = 0; run < RUNS; run += 1) {
    await edit(page, path_, texts[run % 2]);
    await page.waitForTimeout(30);
  }
  await cdp.send("Tracing.end");
  await complete;
  cdp.removeAllListeners("Tracing.dataCollected");
  const marks = events.filter((it) => /^edit-(begins|ends)$/.test(it.name)).toSorted((a, b) => a.ts - b.ts);
  const { pid, tid } = marks[0];
  const WORK = /^(EvaluateScript|FunctionCall|EventDispatch|RunMicrotasks|FireAnimationFrame|TimerFire|UpdateLayoutTree|Layout|PrePaint|Paint|Layerize|Commit|HitTest|MajorGC|MinorGC)$/;
  const spans = events.filter((it) => it.ph === "X" && it.pid === pid && it.tid === tid && WORK.test(it.name))
    .map((it) => [it.ts, it.ts + it.dur]).toSorted((a, b) => a[0] - b[0]);
  // spans lie in one another: time that two share counts once
  const within = (from, to) => {
    let [sum, end] = [0, from];
    for (const [begin, stop] of spans) {
      if (begin >= to) break;
      if (stop <= end) continue;
      sum += Math.min(stop, to) - Math.max(begin, end);
      end = Math.min(stop, to);
    }
    return sum / 1000;
  };
  const times = [];
  for (let at = 0; at + 1 < marks.length; at += 1) {
    if (marks[at].name === "edit-begins" && marks[at + 1].name === "edit-ends") times.push(within(marks[at].ts, marks[at + 1].ts));
  }
  if (times.length !== RUNS) throw new Error(`${times.length} edits were traced of ${RUNS}`);
  return times;
}

/** The letters of 200 edits over all questions of the demo, typed by the keyboard on a machine that is slowed. */
async function session(page, cdp) {
  await page.evaluate(() => {
    window.interactions = new Map();
    new PerformanceObserver((list) => {
      for (const it of list.getEntries()) {
        if (it.interactionId) interactions.set(it.interactionId, Math.max(it.duration, interactions.get(it.interactionId) ?? 0));
      }
    }).observe({ type: "event", durationThreshold: 16, buffered: true });
  });
  const places = [
    "engine.highest_speed", "injectors.resistance", "injectors.output_limit", "fuel.power", "loads.0.resistance",
    "outputs.0.current_limit", "crank_sensor.amplitude", "cranking.speed", "coils.resistance", "battery.cold_cranking",
  ];
  await cdp.send("Emulation.setCPUThrottlingRate", { rate: SLOWED });
  let edits = 0;
  while (edits < 200) {
    for (const place of places) {
      const input = await shown(page, place);
      await unfold(input);
      await input.focus();
      await input.evaluate((it) => it.setSelectionRange(it.value.length, it.value.length));
      const before = await input.inputValue();
      const digits = before.search(/[\d.]\D*$/) + 1;
      await input.evaluate((it, at) => it.setSelectionRange(at, at), digits);
      for (const key of ["1", "Backspace"]) {
        await page.keyboard.press(key);
        await page.waitForTimeout(120);
        edits += 1;
      }
    }
  }
  await page.waitForTimeout(1500);
  await cdp.send("Emulation.setCPUThrottlingRate", { rate: 1 });
  const all = sorted(await page.evaluate(() => [...interactions.values()]));
  // what took less than a frame is not reported, and took less than these
  const short = Math.max(0, edits - all.length);
  const at = Math.ceil(0.98 * (all.length + short)) - 1 - short;
  return { p98: at < 0 ? 16 : all[at], most: all.at(-1) ?? 16, count: edits };
}

/** The built page as a host on the network serves it: each file as small as Brotli makes it. */
async function host() {
  const types = { html: "text/html", js: "text/javascript", wasm: "application/wasm", css: "text/css", svg: "image/svg+xml", webmanifest: "application/manifest+json" };
  const packed = new Map();
  const server = createServer(async (request, response) => {
    const name = new URL(request.url, "http://host").pathname.slice(1) || "index.html";
    try {
      if (!packed.has(name)) packed.set(name, brotliCompressSync(await readFile(path.join(dist, path.basename(name)))));
      response.writeHead(200, { "content-type": types[name.split(".").at(-1)] ?? "application/octet-stream", "content-encoding": "br" });
      response.end(packed.get(name));
    } catch {
      response.writeHead(404).end();
    }
  });
  await new Promise((done) => { server.listen(0, "127.0.0.1", done); });
  // packing takes longer than the network: it is done before anybody asks
  const address = `http://127.0.0.1:${server.address().port}/`;
  for (const name of await readdir(dist)) await (await fetch(address + name)).arrayBuffer();
  return { address, stop: () => server.close() };
}

/** Seconds until the form is there, and until it answers: on a slow network and a slow phone, the first time and the second. */
async function visits(browser) {
  const { address, stop } = await host();
  const { context } = await watched(browser, PHONE);
  const visit = async () => {
    const page = await context.newPage();
    const cdp = await context.newCDPSession(page);
    await cdp.send("Network.enable");
    await cdp.send("Network.emulateNetworkConditions", { offline: false, latency: 150, downloadThroughput: 200_000, uploadThroughput: 100_000 });
    await cdp.send("Emulation.setCPUThrottlingRate", { rate: SLOWED });
    const start = performance.now();
    await page.goto(address, { waitUntil: "commit" });
    await page.getByRole("heading", { level: 1 }).first().waitFor();
    const form = performance.now() - start;
    // what has to do with what is taken back comes with what answers
    await page.locator("main > .aside").waitFor({ state: "attached" });
    const answered = performance.now() - start;
    await started(page);
    await kept(page);
    await page.close();
    return [form, answered];
  };
  const all = [await visit(), await visit()];
  await context.close();
  stop();
  return all;
}

const before = JSON.parse(await readFile(KEPT, "utf8").catch(() => "{}"));
const now = {};
function tell(what, value, unit) {
  now[what] = Number(value.toFixed(1));
  const was = what in before ? `; was ${before[what]} ${unit}` : "";
  console.log(`${what}: ${value.toFixed(1)} ${unit}${was}`);
}

const server = await serve();
const browser = await launch(["--enable-precise-memory-info"]);
try {
  for (const [at, [form, answered]] of (await visits(browser)).entries()) {
    const which = ["first", "second"][at];
    tell(`${which} visit, 1.6 Mbit/s, 150 ms, slowed ${SLOWED} times: form`, form / 1000, "s");
    tell(`${which} visit: first answer`, answered / 1000, "s");
  }
  const plans = { demo: await json("demo.json"), whole: await json("whole-car.json"), forty: forty() };
  for (const name of Object.keys(plans)) {
    const { page, context } = await opened(browser, server.address, plans[name], name === "whole" ? DESK : PHONE);
    const cdp = await context.newCDPSession(page);
    for (const [plan, place, texts] of EDITS.filter((it) => it[0] === name)) {
      tell(`edit of ${place}, ${plan}`, median(await busy(page, cdp, place, texts)), "ms");
    }
    if (name === "demo") {
      const { p98, most, count } = await session(page, cdp);
      tell(`interaction to next paint, slowed ${SLOWED} times, 98 of 100 within`, p98, "ms");
      console.log(`  ${count} letters, at most ${most} ms`);
    }
    if (name === "forty") {
      await go(page, "loads.20");
      for (let run = 0; run < 200; run += 1) await edit(page, "loads.20.resistance", `${40 + (run % 10)} ohm`);
      const bytes = await page.evaluate(() => window.memoryOfProgram?.buffer.byteLength ?? 0);
      tell("memory of the program after 200 edits of forty loads", bytes / 2 ** 20, "MiB");
    }
    await context.close();
  }
} finally {
  await browser.close();
  server.stop();
}
if (process.argv.includes("--keep")) await writeFile(KEPT, `${JSON.stringify(now, null, 2)}\n`);
