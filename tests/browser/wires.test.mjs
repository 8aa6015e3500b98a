// What do I cut, crimp, label and buy? As a fitter measures it, and ticks it off under the car.
import { test } from "node:test";
import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { parse } from "csv-parse/sync";
import { answer, FOUR, go, plain, reads, stands, toDo, type, typeAll, workshop } from "./fitter.mjs";

const visit = workshop();

const WAYS = { "harness.coils.0": "1.2 m", "harness.coils.1": "1.3 m", "harness.coils.2": "1.4 m", "harness.coils.3": "1.5 m" };

/** A four whose coils are measured, in a harness of 2.5 m. */
async function four(page) {
  await typeAll(page, { ...FOUR, "harness.length": "2.5 m", ...WAYS });
  await reads(page, "wires.coils", /^4 wires: cut off 0\.90 m to 1\.20 m$/);
}

const items = async (page) => {
  const boxes = page.getByRole("checkbox");
  return (await boxes.allInnerTexts()).map((it) => plain(it).replace(/^[☐☑]\s*/u, ""));
};

// 2.5 m less each way less 0.1 m to spare
test("the cut list is ticked off under the car, and stays ticked", () => visit(async ({ page }) => {
  await four(page);
  await go(page, "wires.cut");
  assert.deepEqual(await items(page), [
    "Ignition 1 - coil 1: cut off 1.20 m", "Ignition 2 - coil 3: cut off 1.10 m",
    "Ignition 3 - coil 4: cut off 1.00 m", "Ignition 4 - coil 2: cut off 0.90 m",
  ]);
  await page.getByRole("checkbox").nth(1).tap();
  await reads(page, "wires.cut", /^1 of 4 done$/);
  await page.reload();
  await reads(page, "wires.cut", /^1 of 4 done$/);
  assert.equal(await page.getByRole("checkbox", { checked: true }).count(), 1);
  for (const at of [0, 2, 3]) await page.getByRole("checkbox").nth(at).tap();
  await reads(page, "wires.cut", /^All 4 done$/);
}));

test("a wire that doesn't reach is said before it is cut", () => visit(async ({ page }) => {
  await four(page);
  await type(page, "harness.coils.3", "2.8 m");
  await reads(page, "wires.coils", /^1 of 4 wires don't reach$/);
  await reads(page, "harness", /^1 of 4 wires don't reach$/);
  await type(page, "harness.length", "3 m");
  await reads(page, "harness", /^All 4 wires reach$/);
  assert.equal(await stands(page, "harness.coils.3"), "2.8 m");
}));

test("the lists are saved as files that a spreadsheet reads", () => visit(async ({ page }) => {
  await four(page);
  await go(page, "wires");
  const saved = async (list) => {
    const download = page.waitForEvent("download");
    await page.getByRole("button", { name: `Save ${list} (CSV)` }).tap();
    const file = await download;
    assert.match(file.suggestedFilename(), new RegExp(`\\.${list}\\.csv$`));
    return parse(await readFile(await file.path(), "utf8"), { columns: true });
  };
  const wires = await saved("wires");
  assert.equal(wires.length, 4);
  assert.equal(wires[0].Label, "Ignition 1 - coil 1");
  assert.equal(wires[0]["Cut off, m"], "1.20");
  assert.equal((await saved("cuts")).length, 4);
  assert.equal((await saved("labels")).length, 8);
  const sleeves = (await saved("shopping")).find((it) => it.Part === "label sleeves");
  assert.equal(sleeves?.Count, "8");
}));

test("each wire's label is printed twice", () => visit(async ({ page }) => {
  await four(page);
  await go(page, "wires");
  await page.getByRole("link", { name: "Labels to print" }).tap();
  await page.locator(".labels li").first().waitFor();
  const labels = (await page.locator(".labels li").allInnerTexts()).map(plain);
  assert.equal(labels.length, 8);
  assert.equal(labels.filter((it) => it === "Ignition 2 - coil 3").length, 2);
  await page.getByRole("button", { name: "Print these labels" }).waitFor();
}));

test("what is bought is on its card, and all of it in sight", () => visit(async ({ page }) => {
  await four(page);
  await reads(page, "wires.buy", /wire, 0 fuses$/);
  assert.deepEqual((await toDo(page, "wires.buy")).map(plain), ["Buy 8 label sleeves, two for each wire."]);
  assert.equal(await answer(page, "wires.buy").locator("details.ways").count(), 0);
}));
