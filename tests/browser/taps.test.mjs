// At the car with one hand: channels fired and tapped, the cure ticked off, a timing light read, one cycle looked at.
import { test } from "node:test";
import assert from "node:assert/strict";
import { answer, answered, field, followed, found, go, problem, reads, stands, toDo, type, typeAll, undo, workshop } from "./fitter.mjs";

const visit = workshop();

const SIX = { "engine.cylinders": "6", "engine.order": "1-5-3-6-2-4", "channels.ignition_mode": "sequential" };
const WIRED = "channels.coils_wired";

const bench = (page) => page.locator(".bench");
const asks = async (page) => Number(/channel (\d+)/.exec(await bench(page).locator(".ask").innerText())[1]);
async function tap(page, label) {
  await bench(page).getByRole("button", { name: label, exact: true }).click();
  await followed(page);
}

async function openBench(page) {
  await go(page, WIRED);
  await bench(page).locator(".ask").waitFor();
}

/** Does as the bench says, on a car that is wired like this (channel to cylinder); how many taps it took. */
async function follow(page, wired) {
  let taps = 0;
  while (await bench(page).locator(".ask").count()) {
    const channel = await asks(page);
    await tap(page, String(wired[channel]));
    taps += 1;
    await page.waitForFunction(
      ([list, at]) => document.querySelector(`[id="at-${list}.${at}"]`)?.value !== "", [WIRED, channel - 1],
    );
    await page.waitForTimeout(30);
    assert.ok(taps < 6, "more taps than cylinders less one");
  }
  return taps;
}

// By firing order channels 1 to 6 reach 1 5 3 6 2 4. The leads of 5, 3 and 6 went round: a ring of three, two exchanges.
test("a straight-six with three plugs rotated is found by taps, and cured", () => visit(async ({ page }) => {
  await typeAll(page, SIX);
  await openBench(page);
  assert.match(await bench(page).innerText(), /At most 5 tests, then all is certain\./);
  // what can hurt is said where it is done
  assert.match(await bench(page).locator(".caution").first().innerText(), /light fuel vapour/);
  // and by what it is seen which one answers
  assert.match(await bench(page).innerText(), /A spark tester on every lead/);
  assert.equal(await follow(page, { 1: 1, 2: 3, 3: 6, 4: 5, 5: 2, 6: 4 }), 5);
  await reads(page, WIRED, /^Wired wrong: 3 of 6$/);
  const repair = await toDo(page, WIRED);
  assert.ok(repair.some((it) => /Enter this order of channels in the controller: 1-4-2-3-5-6\./.test(it)), repair.join("\n"));
  assert.ok(repair.some((it) => /2 swaps/.test(it)), repair.join("\n"));
  // both cures as lists to tick off
  const lists = (await answered(page, WIRED)).locator(".checklist");
  assert.deepEqual(await lists.locator("summary").allInnerTexts(), ["Tick off: the order to enter", "Tick off: the leads to move"]);
  await lists.last().locator("summary").click();
  const boxes = lists.last().getByRole("checkbox");
  assert.equal(await boxes.count(), 3, "two exchanges, and the proof");
  for (const at of [0, 1, 2]) {
    await boxes.nth(at).click();
    await lists.last().locator("[aria-checked=true]").nth(at).waitFor();
  }
  assert.match((await toDo(page, WIRED))[0], /clear and test again/);
  // once it is carried out, all is fired again
  await go(page, WIRED);
  await bench(page).getByRole("button", { name: /Clear and test again/ }).click();
  await bench(page).locator(".ask").waitFor();
  await follow(page, { 1: 1, 2: 5, 3: 3, 4: 6, 5: 2, 6: 4 });
  await reads(page, WIRED, /^5 of 6 seen, nothing wrong so far$/);
  // the last is known by elimination, and still to be proved
  const last = bench(page).locator(".channels button", { hasText: "must be" });
  await last.click();
  await tap(page, /→ (\d)/.exec(await last.innerText())[1]);
  await reads(page, WIRED, /^Wired right: all 6$/);
}));

test("what is tapped can be chosen, taken back and contradicted, and is kept", () => visit(async ({ page }) => {
  await typeAll(page, SIX);
  await openBench(page);
  const first = await asks(page);
  await tap(page, "1");
  assert.equal(await stands(page, `${WIRED}.${first - 1}`), "1");
  const second = await asks(page);
  assert.notEqual(second, first, "it goes on with another channel");
  await tap(page, "1");
  await page.locator(".bench .says", { hasText: "can't both reach the same cylinder" }).waitFor();
  assert.ok([first, second].includes(await asks(page)), "one of the two is fired again");
  // what answers when it is fired again stands in the place of what can't be
  await tap(page, "5");
  await bench(page).locator(".says", { hasText: /usual|round/ }).waitFor();
  // both taps were on one channel, and are taken back together
  await undo(page);
  assert.equal(await field(page, `${WIRED}.${second - 1}`).inputValue(), "");
  // a dead coil is an answer as well
  await tap(page, "Nothing fires");
  await page.locator(".bench .says", { hasText: `Channel ${second}: nothing fires.` }).waitFor();
  assert.match(await found(page), /nothing fires/);
  await page.reload();
  assert.equal(await stands(page, `${WIRED}.${first - 1}`), "1");
}));

test("the buttons of the bench stay where they are from tap to tap, and fit a thumb", () => visit(async ({ page }) => {
  await typeAll(page, SIX);
  await openBench(page);
  // on the page, not on the screen: to press a button that the bar hides, one scrolls
  const place = async () => {
    const box = await bench(page).getByRole("button", { name: "3", exact: true }).boundingBox();
    return { ...box, y: box.y + await page.evaluate(() => scrollY) };
  };
  await tap(page, "1");
  await page.waitForTimeout(100);
  const before = await place();
  assert.ok(before.width >= 48 && before.height >= 48, `${before.width} x ${before.height}`);
  await tap(page, "5");
  await page.waitForTimeout(100);
  const after = await place();
  assert.equal(Math.abs(Math.round(after.y - before.y)), 0, "it moved under the thumb");
}));

// The mark on the crank comes round every turn: 7 of 10 degrees on a wheel of 60 are half a position, the other edge.
test("a cam a turn out, and the other edge, are told by a timing light", () => visit(async ({ page }) => {
  await typeAll(page, SIX);
  await typeAll(page, { "controller.locked_advance": "10", "light.seen.0": "10", "light.seen.4": "11" });
  await reads(page, "light", /^The mark is right; now prove the stroke$/);
  await type(page, "light.stroke", "exhaust");
  await reads(page, "light", /^A whole turn out: the cam reference$/);
  assert.match((await toDo(page, "light"))[0], /move the cam reference by 360°/);
  await type(page, "light.stroke", "compression");
  await reads(page, "light", /^Timing right on all 2 read$/);
  await typeAll(page, { "cranking.speed": "200", "relays.0.relay_on_at": "100", "wheels.crank_teeth": "60", "light.seen.0": "7", "light.seen.4": "7" });
  await reads(page, "light", /^Probably the other edge of the tooth$/);
  await type(page, "light.seen.4", "x");
  assert.match(await problem(page, "light.seen.4"), /x/);
  assert.equal(await stands(page, "light.seen.4"), "x");
}));

// 3 ms at 7000 a minute are 126 degrees; the sparks of a six stand 120 apart, so two coils are charged at once.
test("one cycle at a speed shows overlaps, and wrong wires in place", () => visit(async ({ page }) => {
  await typeAll(page, SIX);
  await typeAll(page, { "channels.injection_mode": "each-once", "strip.speed": "7000 rpm" });
  await reads(page, "strip", /^Up to 2 coils are charged at once$/);
  const picture = (await answered(page, "strip")).locator("svg[role=img]").first();
  assert.equal(await picture.locator(".misplaced").count(), 0);
  assert.ok(await picture.locator("rect.dwell").count() >= 6);
  assert.ok(await picture.locator("rect.injection").count() >= 6);
  await typeAll(page, { [`${WIRED}.1`]: "3", [`${WIRED}.2`]: "5" });
  await answered(page, "strip");
  await picture.locator(".misplaced").first().waitFor();
  assert.equal(await picture.locator(".misplaced").count(), 2);
  await reads(page, "strip", /^2 sparks come in the wrong place$/);
  const width = await page.evaluate(() => document.documentElement.scrollWidth);
  assert.ok(width <= 360, `${width} px wide`);
}));

test("a second set of injectors has channels and limits of its own", () => visit(async ({ page }) => {
  await typeAll(page, SIX);
  await typeAll(page, { "channels.second_mode": "companions", "channels.second_count": "2" });
  await reads(page, "channels.second_count", /^Needs 3 channels, you have 2$/);
  await type(page, "channels.second_count", "3");
  await reads(page, "channels.second_mode", /^Not yet proved: 3 channels, two injectors on each$/);
  await typeAll(page, { "channels.second_wired.0": "1 6", "channels.second_wired.1": "5 2", "channels.second_wired.2": "3 4" });
  await reads(page, "channels.second_wired", /^Wired right: all 6$/);
}));
