// On paper: what was found and why, and no buttons.
import { test } from "node:test";
import assert from "node:assert/strict";
import { DESK } from "./support.mjs";
import { demo, field, type, unfoldAll, workshop } from "./fitter.mjs";

const visit = workshop();

async function printed(page) {
  await demo(page);
  await page.emulateMedia({ media: "print" });
}

test("a printed plan has its name, the day and every verdict, and nothing to press", () => visit(async ({ page }) => {
  await printed(page);
  const name = page.locator(".plan-name");
  assert.ok(await name.isVisible());
  const today = await page.evaluate(() => new Date().toLocaleDateString("sv-SE"));
  assert.equal(await name.innerText(), `Hill-climb special, straight-six, printed ${today}`);
  assert.ok(await page.locator(".printed").isVisible());
  const all = page.locator(".verdict p");
  assert.ok(await all.count() >= 6);
  for (const verdict of await all.all()) assert.ok(await verdict.isVisible(), await verdict.textContent());
  assert.deepEqual(await page.locator("button:visible, nav:visible, summary:visible, .tool:visible").allInnerTexts(), []);
  assert.match(await page.locator(".caution").last().innerText(), /Caution/);
}, DESK));

test("on paper every state of the key is written out", () => visit(async ({ page }) => {
  await printed(page);
  const states = page.locator("[id='answer-loads.0'] .all-states li");
  assert.equal(await states.count(), 7);
  for (const state of await states.all()) assert.ok(await state.isVisible());
}, DESK));

test("what was typed is on paper though it was folded away, and is folded away again afterwards", () => visit(async ({ page }) => {
  await demo(page);
  await type(page, "outputs.0.clamp", "45 V");
  const fold = page.locator("details.rare", { has: field(page, "outputs.0.clamp") });
  await fold.locator("> summary").click();
  const [typed, blank] = [field(page, "outputs.0.clamp"), field(page, "outputs.0.leakage")];
  assert.ok(await typed.isHidden() && await blank.isHidden());
  // a browser tells of a print so; what the sheet looks like is asked for in between
  await page.evaluate(() => dispatchEvent(new Event("beforeprint")));
  await page.emulateMedia({ media: "print" });
  assert.ok(await typed.isVisible(), "the clamp decides the verdict, and is not on the sheet");
  assert.ok(await blank.isHidden(), "what is blank and rare takes no room");
  assert.ok(await page.locator(".controller").isHidden());
  await page.emulateMedia({ media: "screen" });
  await page.evaluate(() => dispatchEvent(new Event("afterprint")));
  assert.ok(await typed.isHidden(), "it was folded away before");
}, DESK));

test("the day of printing is not on the screen", () => visit(async ({ page }) => {
  await demo(page);
  assert.ok(await page.locator(".printed").isHidden());
}, DESK));

test("nothing is cut off at the edge of a sheet of A4", () => visit(async ({ page }) => {
  await printed(page);
  await unfoldAll(page);
  // 210 mm less two margins of 14 mm, at 96 pixels an inch
  await page.setViewportSize({ width: 687, height: 1000 });
  const wide = await page.locator("main *").evaluateAll((all) => all
    .filter((it) => it.checkVisibility() && it.getBoundingClientRect().right > 688)
    .map((it) => `${it.tagName}.${it.getAttribute("class")}`).slice(0, 10));
  assert.deepEqual(wide, []);
  const sheet = await page.pdf({ format: "A4" });
  assert.equal(sheet.subarray(0, 5).toString(), "%PDF-");
}, DESK));
