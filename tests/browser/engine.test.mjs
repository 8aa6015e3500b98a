// An odd-fire engine by its crank, and a firing order from another numbering, on a phone.
import { test } from "node:test";
import assert from "node:assert/strict";
import { answered, field, findings, go, plain, problem, reads, rows, stands, type, typeAll, workshop } from "./fitter.mjs";

const visit = workshop();

const found = async (page) => (await findings(page)).locator("li");

test("a V-twin on one pin fires at 0 and 410, found from its bank angle", () => visit(async ({ page }) => {
  await typeAll(page, { "engine.cylinders": "2", "engine.spacing": "geometry" });
  await reads(page, "engine", /^Not answered yet$/);
  await (await answered(page, "engine")).getByText("It needs the crank").waitFor();
  await type(page, "engine.bank_angles", "50");
  await reads(page, "engine", /^Odd-fire: 1-2 at 0° and 410°$/);
  const firings = await rows(page, "engine", "The firings, in order");
  assert.deepEqual(firings.map((row) => row.slice(0, 3)), [["1", "0°", "410°"], ["2", "410°", "310°"]]);
  // the way that was not taken, and how to tell
  const told = (await found(page)).filter({ hasText: "0 410 (assumed, as more even) and 0 50" });
  assert.match(await told.first().innerText(), /Rocking: a turn later/);
  // what can't be read is named at its field, and kept as it was typed
  for (const [path, text, message] of [
    ["engine.bank_angles", "410", /same place is 50°/],
    ["engine.pins", "front", /is not a number of degrees/],
    ["engine.split", "30 ohm", /it needs an angle/],
  ]) {
    const right = await stands(page, path);
    await type(page, path, text);
    assert.match(await problem(page, path), message);
    assert.equal(await stands(page, path), text);
    assert.equal(await field(page, path).getAttribute("aria-invalid"), "true");
    await reads(page, "engine", /^Not answered yet$/);
    await field(page, path).fill(right);
    await reads(page, "engine", /^Odd-fire: 1-2 at 0° and 410°$/);
  }
}));

test("a firing order counted along the crank is translated into banks", () => visit(async ({ page }) => {
  await typeAll(page, { "engine.cylinders": "8", "engine.order": "1-8-4-3-6-5-7-2" });
  await reads(page, "engine", /1-8-4-3-6-5-7-2$/);
  // where another numbering is asked for, once the own one is known
  await go(page, "engine");
  assert.equal(await field(page, "engine.order_numbering").count(), 0);
  await type(page, "engine.numbering", "banks-left-front");
  await type(page, "engine.order_numbering", "alternating-left");
  await reads(page, "engine", /^Fires every 90°: 1-8-6-2-7-3-4-5$/);
  assert.match(plain(await (await found(page)).first().innerText()), /1-8-4-3-6-5-7-2 there is 1-8-6-2-7-3-4-5 in your numbering/);
  const places = await rows(page, "engine", "in both numberings");
  assert.deepEqual(places[1], ["Right, 1 from the front", "2", "5"]);
  // what was typed stays as it was
  assert.equal(await stands(page, "engine.order"), "1-8-4-3-6-5-7-2");
  // banks that contradict the numbering, and a numbering of another kind of engine
  await type(page, "engine.banks", "1 3 5 7 / 2 4 6 8");
  assert.match(await problem(page, "engine.banks"), /1-2-3-4 \/ 5-6-7-8/);
  await field(page, "engine.banks").fill("");
  await type(page, "engine.order_numbering", "inline-front");
  assert.match(await problem(page, "engine.order_numbering"), /two of the same kind/);
  await reads(page, "engine", /^Fires every 90°: 1-8-4-3-6-5-7-2$/);
  // nothing runs over the phone's edge
  const wide = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  assert.ok(wide <= 0, `${wide} px over the edge`);
  assert.ok(await (await answered(page, "engine")).isVisible());
}));
