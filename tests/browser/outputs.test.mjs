// What burns parts: loads that listen to milliamperes, faults that turn a current round, injectors of low resistance.
import { test } from "node:test";
import assert from "node:assert/strict";
import { answer, reads, rows, toDo, typeAll, workshop } from "./fitter.mjs";

const visit = workshop();

/** First what is asked first. */
async function wire(page, output, { far_end, ...load }) {
  await page.getByRole("button", { name: "Add a load" }).click();
  const named = (part, fields) => Object.entries(fields).map(([name, text]) => [`${part}.0.${name}`, text]);
  await typeAll(page, Object.fromEntries([
    ...named("outputs", { name: "P3", ...output }),
    ...named("loads", { name: "it", far_end, output: "P3", ...load }),
  ]));
}

/** What the picture says of a key state. */
async function state(page, name) {
  const picture = answer(page, "loads.0").locator("figure.circuit");
  await picture.getByRole("button", { name }).tap();
  return picture.locator("figcaption").innerText();
}

test("an LED on a pulled-up open-drain output glows", () => visit(async ({ page }) => {
  await wire(page,
    { stage: "open-drain", pull_up: "10 kohm", pull_up_rail: "battery" },
    { kind: "led", resistance: "680 ohm", far_end: "ground" });
  await reads(page, "loads.0", /^Don.t connect it: live at rest$/);
  assert.match(await state(page, "Running, output off"), /LIVE/);
}));

test("a pull-up holds a relay in after it was on", () => visit(async ({ page }) => {
  await wire(page,
    { stage: "high-side", pull_up: "1 kohm", pull_up_rail: "battery" },
    { kind: "relay-coil", resistance: "90 ohm", far_end: "ground" });
  await reads(page, "loads.0", /it may not let go$/);
  const advice = await toDo(page, "loads.0");
  assert.ok(advice.some((it) => /^Use an open-drain output instead/.test(it)), advice.join("\n"));
}));

test("a half-bridge keeps alive a dash whose fuse is pulled", () => visit(async ({ page }) => {
  await wire(page,
    { stage: "half-bridge", on_level: "ground" },
    { kind: "resistor", resistance: "47 ohm", far_end: "ignition" });
  await reads(page, "loads.0", /^Connect it$/);
  assert.match(await state(page, "Fuse of its feed pulled"), /backwards/);
  const found = page.locator("#at-found ol a", { hasText: "If the fuse of its feed is pulled" });
  assert.equal(await found.count(), 1);
}));

test("a controller without its ground works a grounded relay", () => visit(async ({ page }) => {
  await wire(page,
    { stage: "half-bridge", on_level: "battery" },
    { kind: "relay-coil", resistance: "90 ohm", far_end: "ground" });
  await reads(page, "loads.0", /^Connect it$/);
  assert.match(await state(page, "Controller's ground lost"), /may act/);
}));

test("a closed switch is drawn closed, whether it carries current or not", () => visit(async ({ page }) => {
  await wire(page, { stage: "half-bridge", on_level: "ground" }, { kind: "solenoid", far_end: "battery" });
  const levers = answer(page, "loads.0").locator("figure.circuit svg g").filter({ has: page.locator("line") });
  const tilts = async () => levers.evaluateAll((all) => all
    .map((it) => [...it.querySelectorAll("line")].filter((line) => line.getAttribute("x1") !== line.getAttribute("x2")
      && line.getAttribute("y1") !== line.getAttribute("y2")).length));
  await state(page, "Running, output off");
  const off = (await tilts()).reduce((sum, it) => sum + it, 0);
  await state(page, "Key on, starting");
  const starting = (await tilts()).reduce((sum, it) => sum + it, 0);
  assert.deepEqual([off, starting], [1, 2], "one switch open with the output off, both while it starts");
}));

test("eight 2.4-ohm injectors on plain outputs are too much, and resistors serve down to 8 V", () => visit(async ({ page }) => {
  await typeAll(page, {
    "injectors.resistance": "2.4 ohm",
    "injectors.per_output": "1",
    "injectors.output_limit": "2.5 A",
    "injectors.count": "8",
    "conditions.cranking": "8 V",
  });
  await reads(page, "injectors", /^Too much for the output/);
  const advice = await toDo(page, "injectors");
  const resistor = advice.find((it) => /Ω, \d+ W/.test(it));
  assert.match(resistor ?? advice.join("\n"), /left to open it \(cranking, hot\)/);
  const corners = await rows(page, "injectors", /./);
  assert.ok(corners.some((row) => row.join(" ").includes("cranking, hot")), JSON.stringify(corners));
}));

test("a valve that is pulsed faster than its output can, is told the output's own pace", () => visit(async ({ page }) => {
  await wire(page,
    { stage: "open-drain", pulse_limit: "100 Hz" },
    { kind: "solenoid", resistance: "24 ohm", far_end: "ignition", frequency: "300 Hz", suppression: "diode" });
  await reads(page, "loads.0", /^Don.t connect it: too fast for the output$/);
  const advice = await toDo(page, "loads.0");
  assert.ok(advice.some((it) => /^Pulse it at 100 Hz at most/.test(it)), advice.join("\n"));
  const pulsed = await state(page, "Output pulsed");
  assert.match(pulsed, /mA through it: acts or rests, as the duty is/);
  await typeAll(page, { "loads.0.frequency": "100 Hz" });
  await reads(page, "loads.0", /^Connect it$/);
}));

test("a diode across a coil is drawn, and the wrong way round it is a dead short", () => visit(async ({ page }) => {
  await wire(page,
    { stage: "open-drain" },
    { kind: "relay-coil", resistance: "85 ohm", far_end: "ignition", suppression: "diode", stripe: "pin" });
  await reads(page, "loads.0", /^Don.t connect it: its diode shorts it$/);
  const drawing = answer(page, "loads.0").locator("figure.circuit svg");
  await state(page, "Output on");
  const live = await drawing.locator("path.part.live").count();
  await typeAll(page, { "loads.0.stripe": "far-end" });
  await reads(page, "loads.0", /^Connect it$/);
  assert.ok(await drawing.locator("path.part.live").count() < live, "the right way round it carries nothing");
}));

test("a finger drawn across the picture steps through the key states", () => visit(async ({ page }) => {
  await wire(page, { stage: "open-drain" }, { kind: "relay-coil", resistance: "85 ohm", far_end: "ignition" });
  const figure = answer(page, "loads.0").locator("figure.circuit");
  await state(page, "Key off");
  await figure.locator("svg").scrollIntoViewIfNeeded();
  const box = await figure.locator("svg").boundingBox();
  const draw = async (from, to) => {
    const y = box.y + box.height / 2;
    await page.mouse.move(box.x + from, y);
    await page.mouse.down();
    await page.mouse.move(box.x + to, y, { steps: 4 });
    await page.mouse.up();
  };
  const pressed = () => figure.locator('button[aria-pressed="true"]').innerText();
  const [left, right] = [0.2 * box.width, 0.8 * box.width];
  await draw(right, left);
  assert.match(await pressed(), /Key on, starting/);
  await draw(right, left);
  assert.match(await pressed(), /Running, output off/);
  await draw(left, right);
  assert.match(await pressed(), /Key on, starting/);
  await draw(left, left + 10);
  assert.match(await pressed(), /Key on, starting/, "a touch is not a step");
}));
