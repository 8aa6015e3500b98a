// Two pages of one browser never lose what was typed on one of them.
import { test } from "node:test";
import assert from "node:assert/strict";
import { FOUR, notices, plans, reads, stands, type, typeAll, workshop } from "./fitter.mjs";
import { open, started, until } from "./support.mjs";

const visit = workshop();

const press = async (page, name) => (await plans(page)).getByRole("button", { name, exact: true }).click();
const named = async (page) => (await page.locator("ul.kept button").allInnerTexts()).map((it) => it.trim());

/** Waits until this stands in a field. */
async function shows(page, path, text) {
  const end = Date.now() + 60_000;
  while (await stands(page, path) !== text) {
    assert.ok(Date.now() < end, `${path} shows “${await stands(page, path)}”, not “${text}”`);
    await page.waitForTimeout(20);
  }
}

/** A second page with the plan that is open on the first. */
async function both(page, context, address) {
  await typeAll(page, FOUR);
  const other = await open(context, address);
  await shows(other, "engine.order", FOUR["engine.order"]);
  return other;
}

test("what is typed on one page shows on the other, and both are kept", () => visit(async ({ page, context, address }) => {
  const other = await both(page, context, address);
  await type(page, "injectors.resistance", "2.4 ohm");
  await shows(other, "injectors.resistance", "2.4 ohm");
  await type(other, "engine.order", "1-2-4-3");
  await shows(page, "engine.order", "1-2-4-3");
  await reads(page, "channels.ignition_mode", /: 4 channels/);
  for (const it of [page, other]) {
    await it.reload();
    await shows(it, "injectors.resistance", "2.4 ohm");
    await shows(it, "engine.order", "1-2-4-3");
    assert.equal(await notices(it).count(), 0);
  }
}));

test("what is typed on both at once, in different fields, is on both", () => visit(async ({ page, context, address }) => {
  const other = await both(page, context, address);
  await Promise.all([
    type(page, "injectors.resistance", "2.4 ohm"),
    type(other, "cranking.speed", "200 rpm"),
  ]);
  for (const it of [page, other]) {
    await shows(it, "injectors.resistance", "2.4 ohm");
    await shows(it, "cranking.speed", "200 rpm");
  }
}));

test("of a field that both changed unseen, the last text stays and the other is told", () => visit(async ({ page, context, address }) => {
  await typeAll(page, FOUR);
  // the other page is told of nothing, as one that is put away
  const other = await context.newPage();
  await other.addInitScript(() => { addEventListener("storage", (event) => event.stopImmediatePropagation(), true); });
  await other.goto(address);
  await started(other);
  const name = await page.evaluate(() => `quietpin.plan.${localStorage.getItem("quietpin.open")}`);
  const before = await page.evaluate((name) => localStorage.getItem(name), name);
  await type(page, "fuel.flow", "500 cc/min");
  await page.evaluate(([name, before]) => localStorage.setItem(name, before), [name, before]);
  await type(other, "fuel.flow", "600 cc/min");
  const told = notices(page).filter({ hasText: "open on two pages" });
  await told.waitFor();
  assert.match(await told.innerText(), /held open: 6 stays; 500 cc\/min was typed on the other page/, "it is told with the first letter");
  for (const it of [page, other]) await shows(it, "fuel.flow", "600 cc/min");
}));

test("an undo takes back what was typed here, not there", () => visit(async ({ page, context, address }) => {
  const other = await both(page, context, address);
  await type(page, "injectors.resistance", "2.4 ohm");
  await shows(other, "injectors.resistance", "2.4 ohm");
  await type(other, "cranking.speed", "200 rpm");
  await shows(page, "cranking.speed", "200 rpm");
  await page.getByRole("button", { name: "Undo", exact: true }).tap();
  await shows(page, "injectors.resistance", "");
  await shows(page, "cranking.speed", "200 rpm");
  await shows(other, "injectors.resistance", "");
}));

test("two blank pages become two plans", () => visit(async ({ page, context, address }) => {
  const other = await open(context, address);
  await type(page, "engine.cylinders", "4");
  await type(other, "engine.cylinders", "6");
  const third = await open(context, address);
  await plans(third);
  assert.equal((await named(third)).length, 2);
  assert.equal(await stands(page, "engine.cylinders"), "4");
  assert.equal(await stands(other, "engine.cylinders"), "6");
}));

test("a plan that one page removes is told on the other, and what is typed there keeps it beside a new one", () =>
  visit(async ({ page, context, address }) => {
    const other = await both(page, context, address);
    await press(page, "Remove this plan");
    await press(page, "Press again: remove this plan");
    await notices(other).filter({ hasText: "removed on another page" }).waitFor();
    await type(page, "engine.cylinders", "6");
    await type(other, "engine.order", "1-2-4-3");
    await until(page, "two plans are kept",
      () => Object.keys(localStorage).filter((it) => it.startsWith("quietpin.plan.")).length === 2);
    assert.equal(await stands(page, "engine.cylinders"), "6");
    assert.equal(await stands(other, "engine.cylinders"), "4");
    await other.reload();
    await shows(other, "engine.order", "1-2-4-3");
  }));
