// What power do the injectors feed? From a flow, a pressure, a power and a speed, each in the unit of its data sheet.
import { test } from "node:test";
import assert from "node:assert/strict";
import { answered, findings, go, reads, rows, stands, toDo, type, typeAll, verdict, workshop } from "./fitter.mjs";

const visit = workshop();

const asked = async (page, card) => {
  await go(page, card);
  return page.locator("main").locator("input:visible, select:visible").evaluateAll((all) => all.map((it) => it.id));
};

test("a blank plan is not asked about fuel until a finger asks for it", () => visit(async ({ page }) => {
  await page.getByRole("link", { name: /injectors/ }).first().click();
  const before = await asked(page, "injectors");
  assert.ok(before.length >= 1 && before.length <= 3, `asked at first: ${before}`);
  assert.ok(before.every((it) => !it.startsWith("at-fuel.")), `asked at first: ${before}`);
  // by its name: in the bar, where it is the next card
  await page.locator("nav.bar").getByRole("link", { name: "Flow, power and fuel" }).click();
  await answered(page, "fuel");
  assert.equal(await verdict(page, "fuel").innerText(), "Needs: the flow of one injector");
  assert.deepEqual(await asked(page, "fuel"), ["at-fuel.flow", "at-fuel.power"]);
}));

test("a fitter types what is known in mixed units and reads verdict and duty", () => visit(async ({ page }) => {
  await type(page, "fuel.flow", "550 cc/min");
  await reads(page, "fuel", /^One feeds \d+.* how many are there\?$/);
  await typeAll(page, { "engine.cylinders": "6", "engine.order": "1-5-3-6-2-4" });
  await reads(page, "fuel", /^They feed at least /);
  await typeAll(page, { "fuel.power": "300 hp", "fuel.stated_pressure": "43.5 psi", "fuel.rail_pressure": "3 bar" });
  await reads(page, "fuel", /^Enough for 224 kW \(300 hp\), dead time not counted$/);
  await type(page, "engine.highest_speed", "7200 rpm");
  // 300 hp at 0.55 lb/(hp h) are 165 lb/h of 6 · 52.4 lb/h, 52.5 %; and 1.2 ms of 120 s / 7200 are 7.2 %
  await reads(page, "fuel", /^Enough for 224 kW \(300 hp\): duty 59\.7% at most$/);
  const [stated, , leanest] = await rows(page, "fuel", "Flow of one injector, held open");
  assert.deepEqual(stated.slice(1), ["3 bar (43.5 psi)", "550 cc/min", "54.2 lb/h", "6.83 g/s"]);
  assert.equal(leanest[3], "52.4 lb/h");
  await type(page, "fuel.kind", "methanol");
  await reads(page, "fuel", /^Too small: only sure of \d+ kW \(\d+ hp\)$/);
  assert.match((await toDo(page, "fuel")).join("\n"), /Fit injectors of \d+ cc\/min \([\d.]+ lb\/h\) or more each/);
  assert.match(await (await findings(page)).locator("li.danger").first().innerText(), /run lean/);
  assert.match(await (await answered(page, "fuel")).locator(".caution").first().innerText(), /hole a piston/);
}));

test("a flow in pounds is read as a mass, and shown back in both", () => visit(async ({ page }) => {
  await type(page, "fuel.flow", "52 lb/h");
  const note = page.locator('[id="note-fuel.flow"]');
  // it is told once the hand rests
  await note.filter({ hasText: /Read as 52.lb\/h, 6\.55.g\/s/ }).waitFor();
  assert.equal(await stands(page, "fuel.flow"), "52 lb/h");
}));
