// Which output takes which load? As a fitter types it, on a phone.
import { test } from "node:test";
import assert from "node:assert/strict";
import { add, found, reads, toDo, typeAll, workshop } from "./fitter.mjs";

const visit = workshop();

const OUTPUTS = {
  "outputs.0.name": "D1 to D2", "outputs.0.stage": "open-drain", "outputs.0.current_limit": "3 A",
};

async function valves(page, count) {
  await add(page, "Add an output");
  await typeAll(page, OUTPUTS);
  for (let at = 0; at < count; at += 1) {
    await add(page, "Add a load");
    await typeAll(page, {
      [`loads.${at}.name`]: `valve ${at + 1}`, [`loads.${at}.far_end`]: "ignition", [`loads.${at}.kind`]: "solenoid",
      [`loads.${at}.resistance`]: "26 ohm", [`loads.${at}.suppression`]: "diode", [`loads.${at}.unasked`]: "harmless",
    });
  }
}

test("loads without an output are told which to take", () => visit(async ({ page }) => {
  await valves(page, 2);
  await reads(page, "pins", /^2 of 2 loads need an output: there is one for each$/);
  assert.match((await toDo(page, "pins")).join(" "), /Plan valve 1 on D1 and valve 2 on D2\./);
  await typeAll(page, { "loads.0.output": "D1", "loads.1.output": "D2" });
  await reads(page, "pins", /^All 2 loads are on outputs that suit$/);
}));

// Hall's theorem, by hand: three loads, two outputs that suit any of them
test("one output too few is told with the loads that compete, and a way out is taken", () => visit(async ({ page }) => {
  await valves(page, 3);
  await reads(page, "pins", /^Too few outputs for valve 1, valve 2 and valve 3$/);
  assert.match(await found(page), /Valve 1, valve 2 and valve 3 compete for 2 outputs \(D1, D2\): 1 too few/);
  await typeAll(page, { "loads.2.keeps": "by-hand" });
  await reads(page, "pins", /^2 of 2 loads need an output: there is one for each$/);
}));
