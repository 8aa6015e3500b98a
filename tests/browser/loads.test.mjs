// A load is added to an output: may it be connected?
import { test } from "node:test";
import assert from "node:assert/strict";
import { add as addTo, answer, answered, findings, press, reads, stands, toDo, type, typeAll, undo, workshop } from "./fitter.mjs";

const visit = workshop();

const OUTPUT = { "outputs.0.name": "P7", "outputs.0.stage": "half-bridge", "outputs.0.on_level": "ground" };
const LOAD = {
  "loads.0.name": "idle valve",
  "loads.0.far_end": "ground",
  "loads.0.output": "P7",
  "loads.0.kind": "solenoid",
};

async function add(page) {
  await addTo(page, "Add a load");
  await typeAll(page, { ...OUTPUT, ...LOAD });
}

test("a grounded solenoid on a half-bridge is live when off, and the advice fixes it", () => visit(async ({ page }) => {
  await add(page);
  await reads(page, "loads.0", /^Don't connect it: live when off$/);
  const advice = await toDo(page, "loads.0");
  assert.ok(advice.some((it) => /Move its other end to the ignition switch \(15\)/.test(it)), advice.join("\n"));
  assert.ok(advice.some((it) => /battery counts as on/.test(it)), advice.join("\n"));
  const found = async () => (await findings(page)).locator("ol a", { hasText: "idle valve is live while P7 is off" }).count();
  assert.equal(await found(), 1);
  await type(page, "loads.0.far_end", "ignition");
  await reads(page, "loads.0", /^Connect it$/);
  assert.equal(await found(), 0);
}));

test("the other advice, another level for on, cures it as well", () => visit(async ({ page }) => {
  await add(page);
  await type(page, "outputs.0.on_level", "battery");
  await reads(page, "loads.0", /^Connect it$/);
}));

test("the picture shows each state of the key, and says it", () => visit(async ({ page }) => {
  await add(page);
  const picture = (await answered(page, "loads.0")).locator("figure.circuit");
  const buttons = picture.getByRole("group", { name: "Key state" }).getByRole("button");
  const caption = picture.locator("figcaption");
  assert.match(await caption.innerText(), /^Running, output off: /, "the worst state comes first");
  const said = [];
  for (const button of await buttons.all()) {
    await button.tap();
    assert.equal(await button.getAttribute("aria-pressed"), "true");
    const name = (await button.innerText()).replace(/^\W+/, "").trim();
    const text = await caption.innerText();
    assert.ok(text.startsWith(`${name}: `), `${text} is not about ${name}`);
    assert.equal(await picture.getByRole("img").getAttribute("aria-label"), text.replace(": ", " "));
    said.push(text);
  }
  assert.equal(new Set(said).size, 7, said.join("\n"));
  assert.equal(await buttons.and(page.locator("[aria-pressed=true]")).count(), 1);
}));

test("a load is removed with its answer, and comes back by undo", () => visit(async ({ page }) => {
  await add(page);
  await press(page, "Remove load “idle valve”", "loads.0");
  // one is back among the loads, where there is none now
  await page.getByRole("heading", { name: "Loads", exact: true }).waitFor();
  assert.equal(await page.locator('main a[href="#loads.0"]').count(), 0);
  assert.equal(await answer(page, "loads.0").count(), 0);
  await undo(page);
  await page.locator('.fields a.row[href="#loads.0"]').tap();
  await reads(page, "loads.0", /live when off$/);
  assert.equal(await stands(page, "loads.0.name"), "idle valve");
}));

test("an output that is named anew keeps its load", () => visit(async ({ page }) => {
  await add(page);
  await type(page, "outputs.0.name", "P8");
  await reads(page, "loads.0", /live when off$/);
  assert.equal(await stands(page, "loads.0.output"), "P8");
}));
