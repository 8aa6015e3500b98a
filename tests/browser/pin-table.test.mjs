// A pin table is pasted: what is known of it is taken, what is not is asked back, and nothing is typed on a phone.
import { test } from "node:test";
import assert from "node:assert/strict";
import { add, go, reads, stands, type, undo, unfold, workshop } from "./fitter.mjs";

const visit = workshop();

const TABLE = [
  "Pin\tType\tMax current (A)\tLoom colour",
  ...Array.from({ length: 8 }, (_, at) => `D${at + 1}\tLow side\t3\tred`),
  "H1\tPush-pull\t8\tblue",
  "H2\tPush-pull\t8\tgreen",
  ...Array.from({ length: 12 }, (_, at) => `A${at + 1}\tAnalogue input\t\twhite`),
  "L1\t5 V out\t0.02\tgrey",
].join("\n");

/** Pastes a table, as the clipboard does. */
async function paste(page, text) {
  await go(page, "outputs");
  const area = page.locator("#pin-table");
  await unfold(area);
  await area.fill(text);
}

const asked = (page, label) => page.getByLabel(label, { exact: false });
const take = (page) => page.getByRole("button", { name: /^Use these/ });

test("a pin table is taken once what is not known of it was answered", () => visit(async ({ page }) => {
  await paste(page, TABLE);
  assert.equal(await take(page).count(), 0, "it is taken before the column of colours is known");
  assert.match(await page.locator(".controller").innerText(), /Say first what “Loom colour” is/);
  assert.equal(await asked(page, "“Max current (A)”").inputValue(), "current_limit", "what is known is not asked");
  await asked(page, "“Loom colour”").selectOption("-");
  assert.match(await take(page).innerText(), /10 outputs/);
  assert.match(await page.locator(".controller").innerText(), /13 rows are not an output/);
  await asked(page, "“5 V out” (1 row)").selectOption("logic");
  assert.match(await take(page).innerText(), /11 outputs/);
  await take(page).click();
  await page.locator('.fields a.row[href="#outputs.2"]').waitFor();
  const typed = [];
  for (let at = 0; at < 3; at += 1) {
    const texts = [];
    for (const name of ["name", "stage", "current_limit"]) texts.push(await stands(page, `outputs.${at}.${name}`));
    typed.push(texts);
  }
  assert.deepEqual(typed, [
    ["D1 to D8", "open-drain", "3 A"], ["H1, H2", "half-bridge", "8 A"], ["L1", "logic", "0.02 A"],
  ]);
}));

test("a load hangs on one of the outputs that go by one description", () => visit(async ({ page }) => {
  await paste(page, TABLE);
  await asked(page, "“Loom colour”").selectOption("-");
  await take(page).click();
  await add(page, "Add a load");
  await type(page, "loads.0.output", "D7");
  await type(page, "loads.0.far_end", "ignition");
  await type(page, "loads.0.kind", "solenoid");
  await reads(page, "loads.0", /^(?!Not answered yet)/);
  await undo(page);
  assert.equal(await stands(page, "loads.0.kind"), "");
}));

test("what is no table says what one is", () => visit(async ({ page }) => {
  await paste(page, "eight outputs or so");
  assert.match(await page.locator(".controller").innerText(), /Not a table yet/);
}));
