// What stands around the injectors: remedies side by side, the driver's times, the clamp, a second set, the feed.
import { test } from "node:test";
import assert from "node:assert/strict";
import { answer, answered, findings, go, numbers, plain, press, reads, rows, stands, toDo, type, typeAll, verdict, workshop } from "./fitter.mjs";

const visit = workshop();

const LOW = {
  "injectors.resistance": "2.4 ohm", "injectors.per_output": "1", "injectors.output_limit": "2.5 A", "injectors.count": "6",
};

test("remedies stand side by side, and the one to take is named first", () => visit(async ({ page }) => {
  await typeAll(page, LOW);
  await type(page, "injectors.opening_current", "0.8 A");
  await reads(page, "injectors", /^Too much for the output/);
  const [first] = await toDo(page, "injectors");
  const table = await rows(page, "injectors", "side by side");
  assert.equal(table[0][0], "As planned");
  assert.match(table[0].at(-1), /^too much/);
  for (const series of ["E12", "E24"]) assert.ok(table.some((row) => row[0].includes(`(${series})`)), `no resistor of ${series}`);
  for (const means of [/^A driver, peak/, /^Outputs of/, /^Other injectors/]) {
    assert.ok(table.some((row) => means.test(row[0])), `${means} is not there`);
  }
  const taken = table.filter((row) => row.at(-1).startsWith("best"));
  assert.equal(taken.length, 1, JSON.stringify(table));
  assert.ok(first.startsWith(`Best: ${taken[0][0]}`), `${first}\n${taken[0][0]}`);
}));

test("current is drawn at three supplies, with the level that opens; and what happens at turn-off", () => visit(async ({ page }) => {
  await typeAll(page, { ...LOW, "injectors.resistance": "12 ohm" });
  await reads(page, "injectors", /^Each output carries its injectors/);
  const pictures = answer(page, "injectors").locator("figure.traces");
  assert.equal(await pictures.count(), 1, "one is enough at first");
  await numbers(page, "injectors");
  assert.equal(await pictures.count(), 2);
  const closing = pictures.nth(0);
  assert.equal(await closing.locator("polyline.trace").count(), 3);
  // no curve runs through a name: they stand below the drawing
  const key = await closing.locator(".key li").allInnerTexts();
  assert.ok(key.some((it) => /^opens 0\.\d A$/.test(it)), key.join());
  for (const when of ["Cranking, hot, 9.5 V", "At rest, 20 °C, 12.6 V", "Charging, cold, 14.8 V"]) assert.ok(key.includes(when), key.join());
  const opened = pictures.nth(1);
  assert.equal(await opened.locator("polyline.trace").count(), 2);
  assert.match(await opened.locator("figcaption").innerText(), /the clamp lets the pin rise to 47\.5 V/);
  const box = await closing.boundingBox();
  assert.ok(box.x >= 0 && box.x + box.width <= 360, `it is wider than the phone: ${JSON.stringify(box)}`);
}));

test("a driver that waits for its peak for ever is told apart from one that ends it by time", () => visit(async ({ page }) => {
  await typeAll(page, {
    ...LOW, "injectors.output_limit": "4 A", "injectors.output_kind": "current-controlled", "injectors.hold_current": "1 A",
    "injectors.opening_current": "0.8 A", "injectors.inductance": "2.4 mH",
  });
  await reads(page, "injectors", /^Opens them, but misses its peak/);
  await type(page, "injectors.peak_time", "2 ms");
  await reads(page, "injectors", /^Suits them: its time limit ends the peak$/);
  await type(page, "injectors.peak_time", "0.2 ms");
  await reads(page, "injectors", /^Its peak may end before they open/);
  assert.match((await toDo(page, "injectors")).join("\n"), /Let the peak last [\d.]+ (µs|ms) or more/);
}));

test("a clamp that does not bear the kick is a danger, though the current is within the limit", () => visit(async ({ page }) => {
  await typeAll(page, {
    "injectors.resistance": "12 ohm", "injectors.per_output": "1", "injectors.output_limit": "3 A", "injectors.count": "6",
    "injectors.inductance": "12 mH", "injectors.clamp": "45 V",
  });
  await reads(page, "injectors", /^Each output carries its injectors, [\d.]+% of its limit to spare$/);
  await type(page, "injectors.clamp_energy", "5 mJ");
  await reads(page, "injectors", /^The spike is too much for its clamp$/);
  assert.match(plain(await (await findings(page)).locator("li.danger").first().innerText()), /the clamp takes up to [\d.]+ mJ .*; its limit is 5 mJ/);
  await type(page, "injectors.clamp_energy", "100 mJ");
  await reads(page, "injectors", /^Each output carries its injectors/);
}));

test("a second set is answered as the first, its fields stay under the hand, and the feed carries both", () => visit(async ({ page }) => {
  await typeAll(page, { ...LOW, "injectors.resistance": "12 ohm", "injectors.output_limit": "3 A" });
  await reads(page, "injector_feed", /^Needs a fuse of 10 A/);
  await go(page, "second_injectors");
  assert.equal(await answer(page, "second_injectors").count(), 0);
  await type(page, "second_injectors.resistance", "12 ohm");
  assert.equal(await page.evaluate(() => document.activeElement.id), "at-second_injectors.resistance", "the answer took the keyboard");
  assert.equal(await stands(page, "second_injectors.resistance"), "12 ohm");
  await reads(page, "injector_feed", /^Not answered yet/);
  await typeAll(page, { "second_injectors.per_output": "1", "second_injectors.output_limit": "3 A", "second_injectors.count": "6" });
  const said = async (subject) => {
    await answered(page, subject);
    return verdict(page, subject).innerText();
  };
  assert.equal(await said("second_injectors"), await said("injectors"));
  await reads(page, "injector_feed", /^Needs a fuse of 20 A/);
  await press(page, "Add the relay that feeds them", "injector_feed");
  await typeAll(page, { "relays.0.fuse": "15 A", "relays.0.rating": "40 A" });
  await reads(page, "injector_feed", /^The fuse is too small/);
  await type(page, "relays.0.fuse", "20 A");
  await reads(page, "injector_feed", /^Fuse and relay are big enough$/);
}));
