// Whatever is typed: a message at its field, the text kept as it is, and every other question still answered.
import { test } from "node:test";
import assert from "node:assert/strict";
import { bench, demo, field, findings, go, notices, problem, shown, stands, type, unfold, workshop } from "./fitter.mjs";
import { started, until } from "./support.mjs";

const visit = workshop();
/** What is typed here is mended again: one page serves all. That it outlives a reload is tested with what is kept. */
const inDemo = bench(demo);

const ENGINE = ["engine", "channels.ignition_mode", "strip", "coils", "coils.feed"];
const CASES = [
  ["engine.order", "1-5-3-5-2-4", /\b5\b/, ENGINE],
  ["engine.order", "1-5-3-6-2", /order/i, ENGINE],
  ["engine.order", "one five three", /order/i, ENGINE],
  ["engine.cylinders", "0", /below what is possible/, ENGINE],
  ["engine.cylinders", "-1", /not a whole number/, ENGINE],
  ["engine.cylinders", "NaN", /not a whole number/, ENGINE],
  ["engine.cylinders", "1e300", /not a whole number/, ENGINE],
  ["engine.cylinders", "17", /above what is possible\. Type 1 to 16/, ENGINE],
  ["engine.cylinders", "six", /not a whole number/, ENGINE],
  ["injectors.resistance", "0 ohm", /below what is possible/, ["injectors", "injector_feed"]],
  ["injectors.resistance", "-1 ohm", /below what is possible/, ["injectors", "injector_feed"]],
  ["injectors.resistance", "NaN", /no number/, ["injectors", "injector_feed"]],
  ["injectors.resistance", "1e300", /(above what is possible|too large)/, ["injectors", "injector_feed"]],
  ["injectors.resistance", "1e999", /too large/, ["injectors", "injector_feed"]],
  ["injectors.resistance", "2.4 mH", /mH.*is an inductance|inductance/, ["injectors", "injector_feed"]],
  ["injectors.resistance", "letters", /no number/, ["injectors", "injector_feed"]],
  ["switched_feeds.off_resistance", "1,500 ohm", /1\.5 ohm or as 1500 ohm/, []],
  ["injectors.clamp", "47 A", /is a current/, ["injectors"]],
  ["injectors.clamp_energy", "5 MJ", /M is a million, m a thousandth/, ["injectors"]],
  ["injectors.output_heat", "0 W", /below what is possible/, ["injectors"]],
  ["injectors.contact_resistance", "-1 mohm", /below what is possible/, ["injectors", "injector_feed"]],
  ["relays.0.fuse", "many", /no number/, ["coils.feed", "feeds.relay.0"]],
  ["relays.0.rating", "30 V", /is a voltage/, ["coils.feed", "feeds.relay.0"]],
  ["second_injectors.resistance", "0 ohm", /below what is possible/, ["second_injectors", "injectors", "injector_feed"]],
  ["fuel.second_flow", "550 psi", /is a pressure/, ["fuel"]],
  ["fuel.flow", "0", /below what is possible/, ["fuel"]],
  ["fuel.flow", "550 psi", /is a pressure/, ["fuel"]],
  ["fuel.power", "300 MW", /M is a million, m a thousandth/, ["fuel"]],
  ["fuel.boost", "-1 bar", /below what is possible/, ["fuel"]],
  ["fuel.duty_limit", "110 %", /above what is possible/, ["fuel"]],
  ["engine.highest_speed", "fast", /no number/, [...ENGINE, "fuel"]],
  ["cranking.speed", "0", /below what is possible/, ["cranking", "crank_sensor"]],
  ["battery.cold_cranking", "8 ohm", /resistance/, []],
  ["channels.second_count", "many", /not a whole number/, ["channels.second_mode"]],
  ["controller.locked_advance", "10 V", /is a voltage/, ["light"]],
  ["light.seen.0", "letters", /no number/, ["light"]],
  ["light.seen.5", "400 deg", /above what is possible/, ["light"]],
  ["controller.offset", "1e999", /too large/, ["light"]],
  ["light.tolerance", "0 deg", /below what is possible/, ["light"]],
  ["strip.speed", "0", /below what is possible/, ["strip"]],
  ["controller.dwell", "3 mH", /is an inductance/, ["strip"]],
  ["strip.advance", "100 deg", /above what is possible/, ["strip"]],
  ["strip.injection", "-8 ms", /below what is possible/, ["strip"]],
  ["strip.injection_end", "721 deg", /above what is possible/, ["strip"]],
  ["coils.inductance", "3 MH", /M is a million, m a thousandth/, ["coils", "coils.feed", "strip"]],
  ["loads.0.resistance", "0 ohm", /below what is possible/, ["loads.0", "pins"]],
  ["relays.0.resistance", "0 ohm", /below what is possible/, ["relays.0.coil", "pins"]],
];

/** What every answer rests on. */
const ALL_REST_ON = ["battery", "temperatures", "switched_feeds"];

/** The verdict of every answer. */
async function verdicts(page) {
  await go(page, "all");
  return page.locator("article.answer").evaluateAll((all) => Object.fromEntries(
    all.map((it) => [it.id.replace("answer-", ""), it.querySelector(".verdict p").innerText]),
  ));
}

/** Shows the card of a field, whatever is on the screen. */
async function card(page, path) {
  await go(page, path);
  return shown(page, path);
}

/** So many pixels of a phone are left between the verdict in sight and the bar. */
const ROOM = 640 - 72 - 58;

async function isTold(page, path, text, message, isSlip = true) {
  const said = await problem(page, path);
  const [place, told] = [await shown(page, path), page.locator(`[id="problem-${path}"]`)];
  // what is read, but found wrong, is no slip of the hand
  assert.equal(/^Error: /.test(said), isSlip, said);
  assert.match(said, message);
  assert.equal(await place.getAttribute("aria-invalid"), "true");
  assert.ok((await place.getAttribute("aria-describedby")).split(" ").includes(`problem-${path}`));
  assert.equal(await place.inputValue(), text, "the text is not as it was typed");
  // the whole message and its field fit on the phone together
  assert.ok(await told.isVisible() && await place.isVisible());
  const [box, below] = [await place.boundingBox(), await told.boundingBox()];
  assert.ok(below.y >= box.y + box.height - 1, "it stands above its field");
  assert.ok(below.y + below.height - box.y <= ROOM, `${below.y + below.height - box.y} px high`);
  const link = (await findings(page)).locator(`a[href="#${path}"]`);
  assert.ok(await link.count() >= 1, "it is not among what stands out");
}

for (const [path, text, message, own] of CASES) {
  test(`${path}: “${text}”`, () => inDemo(async (page) => {
    const before = await verdicts(page);
    await card(page, path);
    const right = await stands(page, path);
    await type(page, path, text);
    await isTold(page, path, text, message);
    const after = await verdicts(page);
    // another question is answered as before, unless it rests on this field
    const others = Object.keys(before).filter((it) => !own.some((mine) => it === mine));
    const section = path.split(".")[0] === "engine" ? "channels" : path.split(".")[0];
    const untouched = others.filter((it) => !it.startsWith(section) && !ALL_REST_ON.includes(section));
    for (const it of untouched) assert.ok(it in after, `no answer to ${it} any more`);
    for (const it of untouched.filter((it) => section !== "channels" || it.startsWith("loads"))) {
      assert.equal(after[it], before[it], `the verdict on ${it}`);
    }
    await card(page, path);
    await type(page, path, right);
    await field(page, path).evaluate((it) => it.blur());
    assert.equal(await field(page, path).getAttribute("aria-invalid"), "false");
    assert.equal(await page.locator(`[id="problem-${path}"]`).count(), 0);
    assert.deepEqual(await verdicts(page), before, "mending it does not bring all answers back");
  }));
}

test("an emptied field is no mistake: what is needed is said, and the rest answered", () => visit(async ({ page }) => {
  await demo(page);
  const before = await verdicts(page);
  await card(page, "injectors.resistance");
  await type(page, "injectors.resistance", "");
  await field(page, "injectors.resistance").evaluate((it) => it.blur());
  assert.equal(await field(page, "injectors.resistance").getAttribute("aria-invalid"), "false");
  const after = await verdicts(page);
  assert.match(after.injectors, /^Needs: /);
  assert.match(after.injector_feed, /Not answered yet/);
  const others = Object.keys(before).filter((it) => !it.startsWith("injector"));
  for (const it of others) assert.equal(after[it], before[it]);
}));

test("a threshold above the cranking speed is told at its field", () => visit(async ({ page }) => {
  await demo(page);
  await type(page, "relays.0.relay_on_at", "400 rpm");
  assert.ok(await (await findings(page)).locator('a[href="#relays.0.relay_on_at"]').count() >= 1);
  assert.match((await verdicts(page)).cranking, /never|not|too high/i);
  await card(page, "relays.0.relay_on_at");
  await isTold(page, "relays.0.relay_on_at", "400 rpm", /400 rpm/, false);
}));

test("a folded field that is mended letter by letter stays in view", () => visit(async ({ page }) => {
  await demo(page);
  const path = "switched_feeds.off_resistance";
  await type(page, path, "x");
  await page.locator(`[id="problem-${path}"]`).waitFor();
  await page.keyboard.press("Backspace");
  await page.waitForTimeout(50);
  assert.ok(await field(page, path).isVisible(), "its details folded up under the hand");
  await page.keyboard.type("500 ohm");
  assert.equal(await stands(page, path), "500 ohm");
}));

test("a long text pasted into a field is kept, and the page goes on", () => visit(async ({ page }) => {
  await demo(page);
  await unfold(await shown(page, "injectors.resistance"));
  await field(page, "injectors.resistance").fill("9".repeat(900_000));
  assert.ok((await problem(page, "injectors.resistance")).length < 400, "the message repeats it all");
  // on the list as well
  assert.ok((await (await findings(page)).innerText()).length < 10_000, "the list repeats it all");
  await page.reload();
  await started(page);
  assert.equal((await stands(page, "injectors.resistance")).length, 900_000, "what is taken can be read again");
  await type(page, "relays.0.relay_on_at", "120 rpm");
  assert.equal(await stands(page, "relays.0.relay_on_at"), "120 rpm");
}));

test("a text that is more than a plan holds is not taken, and told", () => visit(async ({ page }) => {
  await demo(page);
  const before = await stands(page, "injectors.resistance");
  await unfold(field(page, "injectors.resistance"));
  await field(page, "injectors.resistance").fill("9".repeat(1_000_000));
  assert.match(await notices(page).innerText(), /Resistance of one injector.*more than a plan holds.*was not kept/);
  await until(page, "the field shows what stands in the plan",
    () => document.getElementById("at-injectors.resistance").value.length < 100);
  assert.equal(await stands(page, "injectors.resistance"), before);
  await page.reload();
  assert.equal(await stands(page, "injectors.resistance"), before);
}));
