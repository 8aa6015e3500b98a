// A fitter types an engine, reads which channel fires what, and finds and cures a mistake in the wiring.
import { test } from "node:test";
import assert from "node:assert/strict";
import { FOUR, answer, field, reads, rows, toDo, type, typeAll, typed, workshop } from "./fitter.mjs";

const visit = workshop();

const PLANNED = "channels.ignition_mode";
const WIRED = "channels.coils_wired";
const leads = (cylinders) => Object.fromEntries(cylinders.map((it, at) => [`${WIRED}.${at}`, it]));

const asked = (page) => page.locator("[id='at-firing']").locator("input:visible, select:visible")
  .evaluateAll((all) => all.map((it) => it.id));

test("a new user types three things and reads the mapping", () => visit(async ({ page }) => {
  const first = await asked(page);
  assert.ok(first.length <= 3, `asked before the first answer: ${first}`);
  assert.deepEqual(first, Object.keys(FOUR).map((it) => `at-${it}`));
  await typeAll(page, FOUR);
  await reads(page, PLANNED, /^4 channels, one for each cylinder$/);
  // Four firings in 720 degrees are 180 apart, in the order typed: arithmetic of the four-stroke cycle.
  assert.deepEqual(await rows(page, PLANNED, "Two ways to number the channels"), [
    ["1", "0°", "1", "1"],
    ["3", "180°", "2", "3"],
    ["4", "360°", "3", "4"],
    ["2", "540°", "4", "2"],
    ["Order of channels to enter", "", "1-2-3-4", "1-3-4-2"],
  ]);
}));

test("the other questions ask no more than three things each at first", () => visit(async ({ page }) => {
  for (const question of ["injectors", "cranking"]) {
    const fields = page.locator(`[id='at-${question}']`).locator("input:visible, select:visible");
    const count = await fields.count();
    assert.ok(count >= 1 && count <= 3, `${question} asks ${count} things`);
  }
}));

test("two leads exchanged are found, and the repair, applied, leaves nothing to repair", () => visit(async ({ page }) => {
  await typeAll(page, { ...FOUR, "channels.ignition_habit": "by-cylinder" });
  await typeAll(page, leads(["1", "4", "3", "2"]));
  await reads(page, WIRED, /^Wired wrong: 2 of 4$/);
  const repair = await toDo(page, WIRED);
  assert.match(repair[0], /Enter this order of channels in the controller: 1-3-2-4\./);
  assert.match(repair[1], /1 swap \(2 with 4\)/);
  assert.match(await page.locator("#at-found li.danger a").innerText(), /Cylinder 2: spark .* early, in the intake stroke/);
  // the error is told with its sign and in words, not by a colour
  const wrong = (await rows(page, WIRED, "What really happens")).filter((row) => row[3].includes("180°"));
  assert.deepEqual(wrong.map((row) => row[0].trim().at(-1)), ["2", "4"]);
  await type(page, `${WIRED}.1`, "2");
  await type(page, `${WIRED}.3`, "4");
  await reads(page, WIRED, /^Wired right: all 4$/);
  assert.equal(await page.locator("#at-found li.danger, #at-found li.fault").count(), 0);
}));

test("what is found at the car is typed in one go, from field to field", () => visit(async ({ page }) => {
  await typeAll(page, FOUR);
  await page.getByText("Found at the car: each ignition channel fired alone").click();
  await field(page, `${WIRED}.0`).click();
  // the answer changes its place while this is typed: the keyboard must not lose the field
  for (const cylinder of ["1", "3", "4", "2"]) {
    await page.keyboard.type(cylinder);
    await page.waitForTimeout(50);
    for (let presses = 0; presses < 4; presses += 1) {
      await page.keyboard.press("Tab");
      if (await page.evaluate(() => document.activeElement.tagName === "INPUT")) break;
    }
  }
  assert.deepEqual(await typed(page, Object.keys(leads([1, 2, 3, 4]))), leads(["1", "3", "4", "2"]));
  await reads(page, WIRED, /^Wired right: all 4$/);
}));

test("a field that is emptied to be typed again stays in view", () => visit(async ({ page }) => {
  await typeAll(page, FOUR);
  await type(page, `${WIRED}.0`, "1");
  await page.keyboard.press("Backspace");
  await page.waitForTimeout(50);
  assert.ok(await field(page, `${WIRED}.0`).isVisible(), "the fields of what was found at the car folded up");
  await page.keyboard.type("1");
  assert.equal(await field(page, `${WIRED}.0`).inputValue(), "1");
}));

test("the picture of the cycle says in words what it shows", () => visit(async ({ page }) => {
  await typeAll(page, FOUR);
  const picture = answer(page, PLANNED).getByRole("img");
  assert.match(await picture.first().getAttribute("aria-label"), /1-3-4-2/);
}));

test("both plugs of a rotor are named where they fire, and none runs over the edge", () => visit(async ({ page }) => {
  await typeAll(page, { "engine.cylinders": "2", "engine.kind": "rotary", "channels.ignition_mode": "sequential" });
  await typeAll(page, leads(["1T", "2L", "1L", "2T"]));
  await reads(page, WIRED, /^Wired wrong: 2 of 4$/);
  const names = await answer(page, WIRED).locator("figure svg .channel").allTextContents();
  assert.deepEqual(names.map((it) => it.split(" ").sort().join(" ")), ["1 3", "2 4"]);
  // a table may scroll, its name must not need to
  const beyond = await page.locator("caption span").evaluateAll(
    (all) => all.filter((it) => it.getBoundingClientRect().right > innerWidth).map((it) => it.innerText),
  );
  assert.deepEqual(beyond, []);
}));
