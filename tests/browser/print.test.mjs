// On paper: what was found and why, and no buttons.
import { test } from "node:test";
import assert from "node:assert/strict";
import { DESK } from "./support.mjs";
import { demo, field, go, type, unfoldAll, workshop } from "./fitter.mjs";

const visit = workshop();

/** What can be put on paper: all questions, the list of them, one card, the sheet for the car. */
async function printed(page, address = "all") {
  await demo(page);
  await go(page, address);
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
  assert.ok(await all.count() >= 18, `${await all.count()} verdicts`);
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

for (const address of ["list", "loads.0", "sheet", "all"]) {
  test(`there is nothing to press on paper: ${address}`, () => visit(async ({ page }) => {
    await printed(page, address);
    const pressed = page.locator(".line:visible, button:not(.checklist button):visible, nav:visible, summary:not(.checklist summary):visible");
    assert.deepEqual(await pressed.allInnerTexts(), []);
  }, DESK));
}

test("the sheet for the car has its name, the day, each question's verdict, and boxes to tick", () => visit(async ({ page }) => {
  await printed(page, "sheet");
  const today = await page.evaluate(() => new Date().toLocaleDateString("sv-SE"));
  assert.equal(await page.locator("h1:visible").innerText(), "Hill-climb special, straight-six");
  assert.match(await page.locator(".car-sheet .basis").first().innerText(), new RegExp(`To take to the car\\. Printed ${today}\\.`));
  assert.equal(await page.locator(".verdicts > div:visible").count(), 12);
  for (const what of ["Findings", "Enter in the controller", "Buy", "Prove at the car", "Take care"]) {
    assert.ok(await page.getByRole("heading", { name: what, exact: true }).isVisible(), what);
  }
  const boxes = await page.locator(".ticks li:not(.plain)").evaluateAll((all) => all.map((it) => {
    const box = it.querySelector(".tick").getBoundingClientRect();
    return box.width > 8 && box.height > 8;
  }));
  assert.ok(boxes.length >= 10 && boxes.every((it) => it), `${boxes}`);
}, DESK));

test("all that is to be done is on paper, folded away or not", () => visit(async ({ page }) => {
  await demo(page);
  await go(page, "all");
  const steps = page.locator(".to-do li");
  const folded = page.locator("details:not([open]) .to-do li");
  assert.ok(await folded.count() >= 1, "some of them are folded away");
  await page.evaluate(() => dispatchEvent(new Event("beforeprint")));
  await page.emulateMedia({ media: "print" });
  for (const step of await steps.all()) assert.ok(await step.isVisible(), await step.textContent());
  await page.emulateMedia({ media: "screen" });
  await page.evaluate(() => dispatchEvent(new Event("afterprint")));
  assert.ok(await folded.count() >= 1, "they were folded away before");
}, DESK));

test("what was typed is on paper though it was folded away, and is folded away again afterwards", () => visit(async ({ page }) => {
  await demo(page);
  await go(page, "all");
  await type(page, "outputs.0.clamp", "45 V");
  // the rare fields of an output lie in a fold, and that of the output in another
  for (const fold of ["rare", "second"]) {
    await page.locator(`details.${fold}`, { has: field(page, "outputs.0.clamp") }).locator("> summary").click();
  }
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

for (const address of ["list", "loads.0", "sheet", "all"]) test(`nothing is cut off at the edge of a sheet of A4: ${address}`, () => visit(async ({ page }) => {
  await printed(page, address);
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
