// Undo and redo, several plans, and plan files: saved, opened, dropped, and refused.
import { test } from "node:test";
import assert from "node:assert/strict";
import { randomBytes } from "node:crypto";
import { readFile } from "node:fs/promises";
import { FOUR, demo, field, findings, go, notices, plans, reads, shown, stands, type, typeAll, typed, workshop } from "./fitter.mjs";
import { started } from "./support.mjs";

const visit = workshop();

const named = async (page) => (await (await plans(page)).locator("ul.kept button").allInnerTexts()).map((it) => it.trim());
/** The name of the plan, above the list of questions. */
async function title(page) {
  await go(page, "list");
  return page.locator(".plan-name").innerText();
}
async function rename(page, name) {
  await (await plans(page)).getByLabel("Name of this plan").fill(name);
}
const press = async (page, name) => (await plans(page)).getByRole("button", { name, exact: true }).click();
const pressOn = async (page, address, name) => {
  await go(page, address);
  await page.getByRole("button", { name }).tap();
};
const stored = (page) => page.evaluate(() => JSON.stringify(Object.entries(localStorage).sort()));

test("undo and redo by button", () => visit(async ({ page }) => {
  const [undo, redo] = ["Undo", "Redo"].map((name) => page.getByRole("button", { name, exact: true }));
  assert.ok(await undo.isDisabled());
  assert.ok(await redo.isDisabled(), "there is nothing to make again");
  await typeAll(page, FOUR);
  await type(page, "engine.order", "1-2-4-3");
  await undo.tap();
  assert.equal(await stands(page, "engine.order"), "1-3-4-2");
  await undo.tap();
  assert.equal(await stands(page, "channels.ignition_mode"), "");
  await redo.tap();
  await redo.tap();
  assert.equal(await stands(page, "engine.order"), "1-2-4-3");
  assert.equal(await stands(page, "channels.ignition_mode"), "sequential");
  assert.ok(await redo.isDisabled(), "all of it is made again");
  await reads(page, "channels.ignition_mode", /: 4 channels/);
}));

test("what is taken back is told, and can be made again there", () => visit(async ({ page }) => {
  await type(page, "injectors.resistance", "2.4 ohm");
  await page.keyboard.press("Control+z");
  const done = page.locator(".done");
  assert.match(await done.innerText(), /Undone: Resistance of one injector.*, 2\.4 ohm → blank/);
  await done.getByRole("button", { name: "Redo this" }).click();
  assert.equal(await stands(page, "injectors.resistance"), "2.4 ohm");
  assert.match(await done.innerText(), /Redone: .*blank → 2\.4 ohm/);
  await type(page, "engine.cylinders", "4");
  assert.equal(await done.count(), 0, "it is about the last press alone");
}));

test("what was typed in a plan can be taken back when one comes back to it", () => visit(async ({ page }) => {
  await rename(page, "First");
  await type(page, "engine.cylinders", "6");
  await press(page, "New, blank");
  await type(page, "engine.cylinders", "4");
  await press(page, "First");
  await page.getByRole("button", { name: "Undo", exact: true }).tap();
  assert.equal(await stands(page, "engine.cylinders"), "");
  assert.match(await title(page), /^First/);
}));

test("what was done can be taken back after the page is loaded again", () => visit(async ({ page }) => {
  await demo(page);
  await pressOn(page, "loads.0", /^Remove load “fuel valve”/);
  await page.reload();
  await started(page);
  await page.getByRole("button", { name: "Undo", exact: true }).tap();
  assert.equal(await stands(page, "loads.0.name"), "fuel valve");
  assert.ok(await page.getByRole("button", { name: "Undo", exact: true }).isDisabled(), "it was the first change");
}));

test("undo and redo keep their places", () => visit(async ({ page }) => {
  await typeAll(page, FOUR);
  const places = () => page.locator("nav.bar .tool").evaluateAll((all) => all.map((it) => it.getBoundingClientRect().left));
  const before = await places();
  const undo = page.getByRole("button", { name: "Undo", exact: true });
  for (let steps = 0; steps < 2; steps += 1) {
    await undo.tap();
    assert.deepEqual(await places(), before);
  }
}));

test("undo and redo by the keyboard, in a field and outside", () => visit(async ({ page }) => {
  await typeAll(page, { "engine.cylinders": "4", "engine.order": "1-3-4-2" });
  await page.keyboard.press("Control+z");
  assert.equal(await stands(page, "engine.order"), "");
  await page.keyboard.press("Control+Shift+z");
  assert.equal(await stands(page, "engine.order"), "1-3-4-2");
  await page.evaluate(() => document.activeElement.blur());
  await page.keyboard.press("Control+z");
  await page.keyboard.press("Control+z");
  assert.equal(await stands(page, "engine.cylinders"), "");
  await page.keyboard.press("Control+y");
  await page.keyboard.press("Control+y");
  assert.equal(await stands(page, "engine.order"), "1-3-4-2");
}));

test("several plans: new, named, back, copied, removed", () => visit(async ({ page }) => {
  await typeAll(page, FOUR);
  await rename(page, "First");
  await press(page, "New, blank");
  await rename(page, "Second");
  await type(page, "engine.cylinders", "6");
  assert.deepEqual(await named(page), ["First", "Second (open)"]);
  await press(page, "First");
  assert.equal(await stands(page, "engine.order"), "1-3-4-2");
  assert.match(await title(page), /^First/);
  await press(page, "New, a copy of this");
  assert.equal(await stands(page, "engine.order"), "1-3-4-2");
  assert.match(await title(page), /^First, copy/);
  await type(page, "engine.order", "1-2-4-3");
  assert.deepEqual(await named(page), ["First", "Second", "First, copy (open)"]);
  await press(page, "Remove this plan");
  assert.match(await page.locator(".plan-name").innerText(), /^First, copy/, "one press alone removes nothing");
  await press(page, "Press again: remove this plan");
  assert.equal((await named(page)).filter((it) => it.startsWith("First, copy")).length, 0);
  await press(page, "Bring back “First, copy”");
  assert.match(await title(page), /^First, copy/);
  assert.equal(await stands(page, "engine.order"), "1-2-4-3", "it came back as it was");
  await press(page, "Second");
  await page.reload();
  await started(page);
  assert.match(await title(page), /^Second/);
  assert.equal(await stands(page, "engine.cylinders"), "6");
  await press(page, "First");
  assert.equal(await stands(page, "engine.order"), "1-3-4-2", "the copy changed what it was copied from");
}));

test("the last five removed plans can be brought back, also after a reload", () => visit(async ({ page }) => {
  for (let at = 1; at <= 7; at += 1) {
    await rename(page, `Plan ${at}`);
    await press(page, "Remove this plan");
    await press(page, "Press again: remove this plan");
  }
  const removed = page.locator("ul.removed button");
  await plans(page);
  assert.deepEqual(await removed.allInnerTexts(), [7, 6, 5, 4, 3].map((at) => `Bring back “Plan ${at}”`));
  await page.reload();
  await started(page);
  await press(page, "Bring back “Plan 4”");
  assert.match(await title(page), /^Plan 4/);
  await plans(page);
  await removed.nth(4).waitFor({ state: "detached" });
  assert.deepEqual(await removed.allInnerTexts(), [7, 6, 5, 3].map((at) => `Bring back “Plan ${at}”`));
}));

test("an undo after another plan was opened does not reach into it", () => visit(async ({ page }) => {
  await typeAll(page, FOUR);
  await press(page, "New, blank");
  assert.ok(await page.getByRole("button", { name: "Undo", exact: true }).isDisabled());
  assert.equal(await stands(page, "engine.order"), "");
}));

async function saved(page) {
  const download = page.waitForEvent("download");
  await press(page, "Save as a file");
  const file = await download;
  return { name: file.suggestedFilename(), text: await readFile(await file.path(), "utf8") };
}

test("a plan is saved to a file and opened from it", () => visit(async ({ page }) => {
  await typeAll(page, FOUR);
  await rename(page, "Hill: 1/4");
  const file = await saved(page);
  assert.equal(file.name, "Hill--1-4.quietpin.json");
  await press(page, "New, blank");
  await page.locator("#plan-file").setInputFiles({
    name: file.name, mimeType: "application/json", buffer: Buffer.from(file.text),
  });
  await reads(page, "channels.ignition_mode", /: 4 channels/);
  assert.deepEqual(await typed(page, Object.keys(FOUR)), FOUR);
  assert.equal((await saved(page)).text, file.text);
}));

async function drop(page, name, text) {
  const transfer = await page.evaluateHandle(([name, text]) => {
    const transfer = new DataTransfer();
    transfer.items.add(new File([text], name, { type: "application/json" }));
    return transfer;
  }, [name, text]);
  const over = await page.evaluateHandle((transfer) => {
    const event = new DragEvent("dragover", { bubbles: true, cancelable: true, dataTransfer: transfer });
    document.body.dispatchEvent(event);
    return event;
  }, transfer);
  assert.ok(await over.evaluate((event) => event.defaultPrevented), "the browser would open the file itself");
  await page.dispatchEvent("body", "drop", { dataTransfer: transfer });
}

test("a plan file is opened by dropping it on the page", () => visit(async ({ page }) => {
  await drop(page, "plan.json", '{"quietpin": 1, "name": "Dropped", "engine": {"cylinders": 4, "order": "1-3-4-2"}}');
  await reads(page, "engine", /^Fires every 180°/);
  assert.match(await title(page), /^Dropped/);
}));

const file = (name, buffer) => ({ name, mimeType: "application/json", buffer: Buffer.from(buffer) });
const REFUSED = [
  ["of 10 MB", file("large.json", `{"quietpin": 1, "notes": "${"x".repeat(10_000_000)}"}`), /bytes; a plan has far less/],
  ["of random bytes", file("random.json", randomBytes(5000)), /not a plan/],
  ["nested too deep", file("deep.json", `{"quietpin": 1, "engine": ${"[".repeat(100_000)}`), /not a plan/],
  ["nested deep and closed", file("deep.json", `{"quietpin": 1, "engine": ${"[".repeat(5000)}${"]".repeat(5000)}}`), /not a plan/],
  ["of a newer version", file("newer.json", '{"quietpin": 3, "later": {}}'), /newer Quietpin/],
  ["with nothing in it", file("empty.json", ""), /not a plan/],
];

test("what has no place in a plan is told, kept through a reload, and removed by hand", () => visit(async ({ page }) => {
  await drop(page, "slip.json", '{"quietpin": 2, "engine": {"cylinders": 4, "order": "1-3-4-2", "cylindres": 6}}');
  await reads(page, "engine", /^Fires every 180°/);
  const told = async () => (await findings(page)).locator("li", { hasText: "engine.cylindres" });
  await (await told()).waitFor();
  await page.reload();
  await started(page);
  await (await told()).locator("a").tap();
  const left = page.locator("section.card", { hasText: "What has no place in this plan" });
  assert.match(await left.innerText(), /engine\.cylindres: 6/);
  await left.getByRole("button", { name: "Remove what has no place" }).tap();
  await left.waitFor({ state: "detached" });
  assert.equal(await (await told()).count(), 0);
}));

for (const [what, upload, message] of REFUSED) {
  test(`a file ${what} is refused, and the open plan is not touched`, () => visit(async ({ page }) => {
    await typeAll(page, FOUR);
    const before = await stored(page);
    await (await plans(page)).locator("#plan-file").setInputFiles(upload);
    await notices(page).waitFor();
    assert.match(await notices(page).innerText(), message);
    assert.equal(await page.locator(".notices").getAttribute("role"), "alert");
    assert.deepEqual(await typed(page, Object.keys(FOUR)), FOUR);
    assert.equal(await stored(page), before);
    await page.getByRole("button", { name: "OK" }).click();
    assert.equal(await notices(page).count(), 0);
  }));
}

test("a list far over its limit is drawn up to it, and the page goes on", () => visit(async ({ page }) => {
  const loads = Array.from({ length: 2000 }, (_, at) => ({ name: `load ${at + 1}` }));
  const left = Array.from({ length: 2000 }, (_, at) => [`none ${at}`, "x"]);
  await drop(page, "many.json", JSON.stringify({ quietpin: 2, loads, ...Object.fromEntries(left) }));
  await shown(page, "loads.63.name");
  await go(page, "loads.64.name");
  assert.equal(await field(page, "loads.64.name").count(), 0);
  await go(page, "left_over");
  assert.equal(await page.locator("section.card", { hasText: "What has no place in this plan" }).locator(".fields li").count(), 64);
  const file = JSON.parse((await saved(page)).text);
  assert.equal(file.loads.length, 2000, "what is not drawn is kept");
}));

test("the demo can be looked at beside one's own plan", () => visit(async ({ page }) => {
  await demo(page);
  await press(page, "New, blank");
  await typeAll(page, FOUR);
  await press(page, "New, from the demo");
  assert.equal(await stands(page, "engine.cylinders"), "6");
  assert.equal((await named(page)).length, 3);
}));
