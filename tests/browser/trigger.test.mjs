// Do the crank and cam sensor suit? As a fitter types it, on a phone.
import { test } from "node:test";
import assert from "node:assert/strict";
import { answer, answered, found, go, numbers, problem, reads, shown, toDo, type, typeAll, unfold, verdict, workshop } from "./fitter.mjs";

const visit = workshop();

// f = n N / 60: 60 positions at 7000 rpm are 7 kHz; 5 kHz are reached at 5000 rpm
test("a wheel of 60 less 2 passes what the input follows", () => visit(async ({ page }) => {
  await answered(page, "trigger");
  assert.equal(await verdict(page, "trigger").innerText(), "Needs: the crank sensor's type");
  await typeAll(page, {
    "engine.cylinders": "6", "engine.order": "1-5-3-6-2-4", "engine.highest_speed": "7000 rpm",
    "wheels.crank_teeth": "60", "wheels.missing": "2", "crank_sensor.kind": "reluctance",
  });
  await reads(page, "trigger", /^Up to 7.kHz: compare with the controller's data$/);
  await type(page, "trigger_input.highest_frequency", "5 kHz");
  await reads(page, "trigger", /^Too fast for the input above 5000 rpm$/);
  assert.match(await found(page), /A wheel of 42 positions or fewer/);
  // the wheel is asked here, and no second time with cranking
  await go(page, "all");
  assert.equal(await page.locator('[id="at-wheels.crank_teeth"]').count(), 1, "asked once");
  assert.equal(await page.locator('#at-trigger [id="at-wheels.crank_teeth"]').count(), 1, "asked with its sensor");
  await go(page, "cranking");
  assert.equal(await page.locator('[id$="at-wheels.crank_teeth"]').count(), 0, "asked a second time");
  await type(page, "wheels.crank_teeth", "36");
  await type(page, "wheels.missing", "1");
  await reads(page, "trigger", /^In time: 4\.2.kHz of 5.kHz$/);
}));

test("a Hall sensor without a pull-up is found, and what cures it", () => visit(async ({ page }) => {
  await typeAll(page, {
    "engine.cylinders": "6", "engine.order": "1-5-3-6-2-4", "engine.highest_speed": "7000 rpm",
    "crank_sensor.kind": "open-collector", "crank_sensor.pull_rail": "none",
  });
  await reads(page, "crank_sensor", /^No pull-up: the input sees nothing$/);
  assert.match((await toDo(page, "crank_sensor")).join("\n"), /A pull-up of 1.kΩ to 5.V/);
  await typeAll(page, { "crank_sensor.pull_rail": "5", "crank_sensor.pull_up": "1 kohm", "trigger_input.bears": "5.5 V" });
  await reads(page, "crank_sensor", /^Levels suit: /);
  await type(page, "crank_sensor.pull_rail", "battery");
  await reads(page, "crank_sensor", /^Too much for the input: 14\.\d.V$/);
  await type(page, "crank_sensor.connector", "change");
  assert.match((await toDo(page, "crank_sensor")).join("\n"), /pin by pin: supply to the sensor supply/);
}));

// 1.8 degrees of 3000 rpm are 100 microseconds; 15.4 less 10 and their 0.6 are 6 degrees
test("offset and delay from two readings of the light", () => visit(async ({ page }) => {
  await type(page, "crank_sensor.kind", "reluctance");
  await typeAll(page, { "controller.offset": "84 deg", "trigger.tooth": "15" });
  await reads(page, "controller.offset", /^Right to 3°: prove it with a light$/);
  await typeAll(page, { "controller.locked_advance": "10 deg", "trigger.seen_low": "15.4 deg", "trigger.speed_low": "1000 rpm" });
  await reads(page, "controller.offset", /^Right to 3°|^5\.4° too early at 1000.rpm: offset or delay$/);
  await typeAll(page, { "trigger.seen_high": "13.6 deg", "trigger.speed_high": "4000 rpm" });
  await reads(page, "controller.offset", /^Enter an offset of 90°$/);
  await numbers(page, "controller.offset");
  assert.match(await (await answered(page, "controller.offset")).innerText(), /100.µs/);
  assert.match(await found(page), /6° too early at any speed/);
}));

test("what is wrong with a field is said there, and the keyboard stays in it", () => visit(async ({ page }) => {
  await type(page, "crank_sensor.kind", "reluctance");
  await type(page, "crank_sensor.amplitude", "2 ohm");
  assert.match(await problem(page, "crank_sensor.amplitude"), /\w/);
  const place = await shown(page, "cam_sensor.kind");
  await unfold(place);
  await place.selectOption("open-collector");
  await answer(page, "cam_sensor").waitFor();
  await type(page, "trigger_input.highest_frequency", "10 kHz");
  assert.equal(await page.evaluate(() => document.activeElement.id), "at-trigger_input.highest_frequency");
}));
