// A fitter types an engine, reads which channel fires what, and finds and cures a mistake in the wiring.
import { test } from "node:test";
import assert from "node:assert/strict";
import { FOUR, answered, field, findings, go, numbers, reads, rows, shown, stands, toDo, type, typeAll, typed, unfold, workshop } from "./fitter.mjs";

const visit = workshop();

const PLANNED = "channels.ignition_mode";
const WIRED = "channels.coils_wired";
const leads = (cylinders) => Object.fromEntries(cylinders.map((it, at) => [`${WIRED}.${at}`, it]));

/** What a card asks, as it is seen. */
const asked = async (page, card) => {
  await go(page, card);
  return page.locator("main").locator("input:visible, select:visible").evaluateAll((all) => all.map((it) => it.id));
};

test("a new user types three things and reads the mapping", () => visit(async ({ page }) => {
  await page.locator(".start a").click();
  const first = await asked(page, "engine");
  // how the coils are fired has its home on the card that answers it
  assert.deepEqual(first, ["at-engine.cylinders", "at-engine.order", "also-at-channels.ignition_mode"]);
  await typeAll(page, FOUR);
  await reads(page, PLANNED, /^Not yet proved: 4 channels, one for each cylinder$/);
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
  const first = await page.locator(".list a").evaluateAll((all) => all.map((it) => it.getAttribute("href").slice(1)));
  assert.equal(first.length, 13);
  for (const card of first) {
    const { length } = await asked(page, card);
    if (card === "conditions") {
      // of what every answer rests on nothing need be typed: it is all on one card, and taken as usual where it is blank
      assert.ok(await page.locator("main .field", { hasText: "Assumed: " }).count() >= 5);
      continue;
    }
    // no load and no relay is there yet
    const least = ["outputs", "pins", "feeds"].includes(card) ? 0 : 1;
    assert.ok(length >= least && length <= 3, `${card} asks ${length} things`);
  }
}));

test("two leads exchanged are found, and the repair, applied, leaves nothing to repair", () => visit(async ({ page }) => {
  await typeAll(page, { ...FOUR, "channels.ignition_habit": "by-cylinder" });
  await typeAll(page, leads(["1", "4", "3", "2"]));
  await reads(page, WIRED, /^Wired wrong: 2 of 4$/);
  const repair = await toDo(page, WIRED);
  assert.match(repair[0], /Enter this order of channels in the controller: 1-3-2-4\./);
  assert.match(repair[1], /1 swap \(2 with 4\)/);
  assert.match(await (await findings(page)).locator("li.danger a").innerText(), /Cylinder 2: spark .* early, in the intake stroke/);
  // the error is told with its sign and in words, not by a colour
  const wrong = (await rows(page, WIRED, "What really happens")).filter((row) => row[3].includes("180°"));
  assert.deepEqual(wrong.map((row) => row[0].trim().at(-1)), ["2", "4"]);
  await type(page, `${WIRED}.1`, "2");
  await type(page, `${WIRED}.3`, "4");
  await reads(page, WIRED, /^Wired right: all 4$/);
  assert.equal(await (await findings(page)).locator("li.danger, li.fault").count(), 0);
}));

test("what is found at the car is typed in one go, from field to field", () => visit(async ({ page }) => {
  await typeAll(page, FOUR);
  await unfold(await shown(page, `${WIRED}.0`));
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
  assert.equal(await stands(page, `${WIRED}.0`), "1");
}));

test("the picture of the cycle says in words what it shows", () => visit(async ({ page }) => {
  await typeAll(page, FOUR);
  const picture = (await answered(page, PLANNED)).getByRole("img");
  assert.match(await picture.first().getAttribute("aria-label"), /1-3-4-2/);
}));

test("both plugs of a rotor are named where they fire, and none runs over the edge", () => visit(async ({ page }) => {
  await typeAll(page, { "engine.cylinders": "2", "engine.kind": "rotary", "channels.ignition_mode": "sequential" });
  await typeAll(page, leads(["1T", "2L", "1L", "2T"]));
  await reads(page, WIRED, /^Wired wrong: 2 of 4$/);
  const names = await (await answered(page, WIRED)).locator("figure svg .channel").allTextContents();
  assert.deepEqual(names.map((it) => it.split(" ").sort().join(" ")), ["1 3", "2 4"]);
  // a table may scroll, its name must not need to
  await numbers(page, WIRED);
  assert.ok(await page.locator("caption span").count() >= 1);
  const beyond = await page.locator("caption span").evaluateAll(
    (all) => all.filter((it) => it.getBoundingClientRect().right > innerWidth).map((it) => it.innerText),
  );
  assert.deepEqual(beyond, []);
}));
