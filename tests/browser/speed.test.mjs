// How long an edit takes until its answer stands on the page: printed, without a limit, since machines differ.
import { test } from "node:test";
import assert from "node:assert/strict";
import { demo, field, workshop } from "./fitter.mjs";
import { open } from "./support.mjs";

const visit = workshop();
const RUNS = 50;

/** Types one character, waits until the page has changed and the next frame is due; in milliseconds. */
async function roundTrip(page, path, texts) {
  return field(page, path).evaluate(async (input, { texts, runs }) => {
    const frame = () => new Promise((resolve) => { requestAnimationFrame(resolve); });
    const setText = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, "value").set;
    const answers = () => document.querySelector("main").innerText;
    const times = [];
    let seen = 0;
    for (let run = 0; run < runs; run += 1) {
      const before = answers();
      await frame();
      const changed = new Promise((resolve) => {
        const observer = new MutationObserver(() => { observer.disconnect(); resolve(); });
        observer.observe(document.querySelector("main"), { childList: true, subtree: true, characterData: true });
      });
      const start = performance.now();
      setText.call(input, texts[run % texts.length]);
      input.dispatchEvent(new InputEvent("input", { bubbles: true }));
      await changed;
      const rendered = performance.now();
      await frame();
      times.push({ rendered: rendered - start, shown: performance.now() - start });
      if (answers() !== before) seen += 1;
    }
    return { times, seen };
  }, { texts, runs: RUNS });
}

const median = (numbers) => numbers.toSorted((a, b) => a - b)[Math.floor(numbers.length / 2)];

/** Prints how long the edits of a field took. */
async function timed(page, path, texts, name) {
  const { times, seen } = await roundTrip(page, path, texts);
  assert.equal(seen, RUNS, "an edit did not change what is answered");
  for (const part of ["rendered", "shown"]) {
    const all = times.map((it) => it[part]);
    console.log(`${name}: ${part} after ${median(all).toFixed(1)} ms (median of ${RUNS}, at most ${Math.max(...all).toFixed(1)} ms)`);
  }
}

for (const [path, texts] of [["injectors.resistance", ["2.5 ohm", "2.6 ohm"]], ["relays.0.relay_on_at", ["101 rpm", "112 rpm"]]]) {
  test(`an edit of ${path} in the demo`, () => visit(async ({ page }) => {
    await demo(page);
    await timed(page, path, texts, path);
  }));
}

test("an edit in the whole car", () => visit(async ({ page }) => {
  await page.getByRole("button", { name: /The whole car/ }).first().click();
  await page.locator("#at-found ol").waitFor();
  assert.equal(await page.locator("[id^='answer-loads.']").count(), 18, "each of its loads is answered");
  await timed(page, "loads.4.resistance", ["9 ohm", "7 ohm"], "a load of the whole car");
  await timed(page, "battery.cold_cranking", ["8.5 V", "8.4 V"], "the whole car's battery");
}));

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

test("an edit of one load among forty", () => visit(async ({ page, context, address }) => {
  await page.evaluate((plan) => {
    localStorage.setItem("quietpin.plan.1", plan);
    localStorage.setItem("quietpin.open", "1");
  }, JSON.stringify(forty()));
  await page.close();
  const full = await open(context, address);
  await timed(full, "loads.20.resistance", ["41 ohm", "42 ohm"], "one load among forty");
}));
