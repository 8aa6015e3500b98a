// The field under the hand stays the same one while its answer changes around it: no letter is lost.
import { test } from "node:test";
import assert from "node:assert/strict";
import { demo, shown, unfold, workshop } from "./fitter.mjs";

const visit = workshop();

/** Types letter by letter; says after which letter the keyboard was no longer in that very field. */
async function lostAfter(page, path, text) {
  const place = await shown(page, path);
  await unfold(place);
  await place.evaluate((it) => {
    it.focus();
    it.select();
    window.held = it;
  });
  await page.keyboard.press("Delete");
  for (const [at, letter] of [...text].entries()) {
    await page.keyboard.type(letter);
    // the page answers in a task of its own, at the next frame at the latest
    const isHeld = await page.evaluate(() => new Promise((resolve) => {
      requestAnimationFrame(() => resolve(window.held.isConnected && document.activeElement === window.held));
    }));
    if (!isHeld) return `lost after “${text.slice(0, at + 1)}”`;
  }
  const stands = await place.inputValue();
  return stands === text ? "" : `“${stands}” stands there in place of “${text}”`;
}

const FIRST = {
  "engine.cylinders": "12",
  "engine.order": "1-7-5-11-3-9-6-12-2-8-4-10",
  "injectors.resistance": "1.5 ohm",
  "injectors.per_output": "2",
  "injectors.output_limit": "3.5 A",
  "fuel.flow": "52 lb/h",
  "fuel.power": "300 hp",
  "cranking.speed": "200 rpm",
  "relays.0.relay_on_at": "110 rpm",
  "temperatures.cold": "-25 °C",
};

async function check(page, plan) {
  const lost = [];
  for (const [path, text] of Object.entries(plan)) {
    const at = await lostAfter(page, path, text);
    if (at) {
      lost.push(`${path}: ${at}`);
      const place = await shown(page, path);
      await unfold(place);
      await place.fill(text);
    }
  }
  assert.deepEqual(lost, []);
}

test("no letter is lost on a blank plan", () => visit(({ page }) => check(page, FIRST)));

test("no letter is lost in the demo, whatever the answers turn into", () => visit(async ({ page }) => {
  await demo(page);
  await check(page, {
    ...FIRST,
    "channels.ignition_count": "16",
    "channels.coils_wired.0": "12",
    "loads.0.name": "other valve",
    "loads.0.resistance": "28 ohm",
    "loads.0.pull_in": "6.5 V",
    "outputs.0.current_limit": "4.5 A",
    "outputs.0.pull_up": "10 kohm",
    "relays.0.pull_in": "0.8 V",
    "relays.0.resistance": "85 ohm",
    "switched_feeds.off_resistance": "x 500 ohm",
  });
}));
