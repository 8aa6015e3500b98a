// At what speed do the relays pull in? As a fitter types it, on a phone.
import { test } from "node:test";
import assert from "node:assert/strict";
import { press, found, numbers, answered, plain, reads, toDo, type, typeAll, workshop } from "./fitter.mjs";

const visit = workshop();

const SIX = { "engine.cylinders": "6", "engine.order": "1-5-3-6-2-4", "engine.kind": "four-stroke" };

test("300 rpm on a weak battery: where it fails, what works, and the best cures it", () => visit(async ({ page }) => {
  await typeAll(page, { ...SIX, "cranking.speed": "220 rpm", "relays.0.relay_on_at": "300 rpm", "cranking.weak_speed": "120 rpm" });
  await reads(page, "cranking", /never pull/);
  assert.match(await found(page), /weak battery/, "the case is not named");
  await numbers(page, "cranking");
  const told = plain(await (await answered(page, "cranking")).textContent());
  assert.match(told, /Thresholds that work/);
  assert.match(told, /above: weak battery/, "what bounds the band is not named");
  const [, on, off] = /threshold (\d+) rpm, release (\d+) rpm/.exec(told);
  await typeAll(page, { "relays.0.relay_on_at": `${on} rpm`, "relays.0.relay_off_below": `${off} rpm` });
  await reads(page, "cranking", new RegExp(`^${on} rpm works`));
}));

test("a pump relay that keeps running after a stall", () => visit(async ({ page }) => {
  await typeAll(page, { ...SIX, "cranking.speed": "200 rpm", "relays.0.relay_on_at": "100 rpm" });
  await press(page, /Add a relay:/, "cranking");
  await typeAll(page, { "relays.1.name": "pump", "relays.1.purpose": "pump", "relays.1.relay_on_at": "100 rpm" });
  await reads(page, "relays.1", /^100 rpm works: the pump stops soon after the engine$/);
  await typeAll(page, { "relays.1.relay_off_below": "1 rpm", "cranking.stall_timeout": "5 s" });
  await reads(page, "relays.1", /^The pump runs on for .* after a stall$/);
  const advice = await found(page);
  assert.match(advice, /torn line/);
  assert.match(advice, /Set its release to \d+ rpm/);
  assert.match(await (await answered(page, "relays.1")).innerText(), /inertia switch/);
  assert.ok((await toDo(page, "relays.1")).some((it) => /Stall the engine on purpose/.test(it)));
  await type(page, "cranking.stall_timeout", "1 s");
  await reads(page, "relays.1", /^100 rpm works/);
}));
