// A controller that is described once: from a generic description, into a file, into the next plan.
import { test } from "node:test";
import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { add, answered, go, notices, plans, reads, stands, typeAll, undo, workshop } from "./fitter.mjs";

const visit = workshop();

async function fold(page) {
  await go(page, "outputs");
  const controller = page.locator("details.rare", { hasText: "The controller, described once" });
  if (await controller.getAttribute("open") === null) await controller.locator("> summary").tap();
  return controller;
}

/** The descriptions of outputs: one that has no load is a row of its own on the overview. */
const outputs = async (page) => {
  await go(page, "outputs");
  return page.locator('.fields a.row[href^="#outputs."]').count();
};

test("a generic description gives the outputs, and undo takes them back", () => visit(async ({ page }) => {
  await (await fold(page)).getByRole("button", { name: "eight switches to ground", exact: true }).tap();
  assert.equal(await outputs(page), 1, "one description serves all eight");
  assert.equal(await stands(page, "outputs.0.name"), "D1 to D8");
  await add(page, "Add a load");
  await typeAll(page, { "loads.0.name": "fan relay", "loads.0.far_end": "ignition", "loads.0.output": "D3" });
  await reads(page, "loads.0", /^Connect it$/);
  for (const _ of [1, 2, 3, 4, 5]) await undo(page);
  assert.equal(await outputs(page), 0);
}));

test("a controller saved from one plan serves the next, and loads hang on what they name", () => visit(async ({ page }) => {
  await (await fold(page)).getByRole("button", { name: /two to battery/ }).tap();
  await typeAll(page, { "outputs.0.current_limit": "1.5 A" });
  const download = page.waitForEvent("download");
  await (await fold(page)).getByRole("button", { name: "Save the outputs as a file" }).tap();
  const file = await download;
  const text = await readFile(await file.path(), "utf8");
  assert.deepEqual(Object.keys(JSON.parse(text)).sort(), ["name", "outputs", "quietpin"]);

  await (await plans(page)).getByRole("button", { name: "New, blank" }).tap();
  await add(page, "Add a load");
  await typeAll(page, { "loads.0.name": "horn relay", "loads.0.far_end": "ground" });
  const take = async (name, body) => (await fold(page)).locator("#controller-file").setInputFiles({
    name, mimeType: "application/json", buffer: Buffer.from(body),
  });
  await take("controller.quietpin.json", text);
  await typeAll(page, { "loads.0.output": "S1" });
  await reads(page, "loads.0", /^Connect it$/);
  assert.equal(await stands(page, "outputs.0.current_limit"), "1.5 A");
  assert.equal(await stands(page, "loads.0.name"), "horn relay", "the load stays");

  await take("blank.json", '{ "quietpin": 1, "name": "nothing" }');
  await notices(page).first().waitFor();
  assert.match((await notices(page).allInnerTexts()).join(" "), /describes no outputs/);
  // and one of them on the load's card
  assert.equal(await outputs(page), 2, "what was there is still there");
  assert.ok(await (await answered(page, "loads.0")).isVisible());
  assert.equal(await stands(page, "outputs.0.current_limit"), "1.5 A");
}));
