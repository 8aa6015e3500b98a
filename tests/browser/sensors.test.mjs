// What should each sensor read now? As a fitter types it, on a phone.
import { test } from "node:test";
import assert from "node:assert/strict";
import { add, answered, found, go, numbers, reads, rows, toDo, type, typeAll, undo, workshop } from "./fitter.mjs";

const visit = workshop();

const INPUT = { "inputs.0.name": "T1", "inputs.0.takes": "analogue", "inputs.0.pull": "up", "inputs.0.pull_up": "2.49k", "inputs.0.range": "5 V" };

async function coolant(page) {
  await go(page, "sensors");
  await add(page, "Add a sensor");
  await typeAll(page, { "sensors.0.name": "coolant", "sensors.0.purpose": "coolant", "sensors.0.kind": "ntc", ...INPUT });
}

/** The first fix that is offered on the card, done by a tap. */
async function enter(page) {
  await go(page, "sensors.0");
  const button = page.locator("button", { hasText: "I have entered it" });
  const finding = page.locator(".found li", { has: button }).first();
  await finding.locator("summary").first().tap();
  await finding.getByRole("button", { name: "I have entered it" }).first().tap();
}

// 250 ohm at 85 °C lie between 380 at 60 and 80 at 100 of the table: 70 °C by the law of a B value
test("the wrong table of a coolant sensor is found by two readings", () => visit(async ({ page }) => {
  await go(page, "sensors");
  await reads(page, "sensors", /^Needs: a sensor and its type$/);
  await coolant(page);
  await reads(page, "sensors.0", /^Needs: its data, or ohms at two temperatures$/);
  await typeAll(page, {
    "sensors.0.table_of": "ohms", "sensors.0.table": "0 7k, 20 2480, 60 380, 100 80",
    "today.temperature": "20 °C", "sensors.0.read_ohms": "20 2480",
  });
  // right at 20 °C, one reading says nothing
  await reads(page, "sensors.0", /^Needs: its data/);
  await type(page, "sensors.0.read_ohms", "20 2480, 85 250");
  await reads(page, "sensors.0", /^The table entered is another sensor's$/);
  assert.match(await found(page), /250.Ω was read at 85.°C; the table entered makes 69\.9.°C of it/);
  const table = await rows(page, "sensors.0", "What it reads");
  assert.equal(table.length, 3, "cold, now, hot");
  // the fix types the table that the readings give
  await enter(page);
  await reads(page, "sensors.0", /^Now 2\.\d+ to 2\.\d+ kΩ unplugged, 2\.\d+ to 2\.\d+ V plugged in$/);
  await undo(page);
  await reads(page, "sensors.0", /^The table entered is another sensor's$/);
}));

test("a pressure sensor is moved to another purpose, and what the controller still has is told", () => visit(async ({ page }) => {
  await go(page, "sensors");
  await add(page, "Add a sensor");
  await typeAll(page, {
    "sensors.0.name": "P1", "sensors.0.purpose": "manifold", "sensors.0.kind": "ratiometric",
    "inputs.0.name": "A1", "inputs.0.takes": "analogue", "inputs.0.pull": "none",
    "sensors.0.range_low": "0 kPa", "sensors.0.range_high": "1000 kPa", "sensors.0.counted_from": "absolute",
    "sensors.0.entered": "manifold", "today.altitude": "0 m",
  });
  await reads(page, "sensors.0", /^Now \d+ mV to 1\.\d+ V plugged in$|^Now \d+ to \d+ mV plugged in$|^Now 0?\.?\d+ to 1/);
  await type(page, "sensors.0.purpose", "oil-pressure");
  await reads(page, "sensors.0", /^Its input is set as another sensor$/);
  assert.match(await found(page), /A1 is set as manifold pressure in the controller; P1 tells oil pressure/);
  await type(page, "sensors.0.entered", "oil-pressure");
  assert.match((await toDo(page, "sensors.0")).join("\n"), /set A1 as oil pressure: 0.bar at 500.mV, 10.bar at 4\.5.V/);
  await numbers(page, "sensors.0");
}));

test("a card is three phone screens at the most, and nothing stands over its edge", () => visit(async ({ page }) => {
  await coolant(page);
  await answered(page, "sensors.0");
  const size = await page.evaluate(() => [document.documentElement.scrollWidth, document.documentElement.scrollHeight]);
  assert.ok(size[0] <= 360, `${size[0]} wide`);
}));
