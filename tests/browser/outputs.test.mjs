// What burns parts: loads that listen to milliamperes, faults that turn a current round, injectors of low resistance.
import { test } from "node:test";
import assert from "node:assert/strict";
import { add, answered, demo, findings, go, reads, rows, toDo, typeAll, undo, workshop } from "./fitter.mjs";

const visit = workshop();

/** First what is asked first. */
async function wire(page, output, { far_end, ...load }) {
  await add(page, "Add a load");
  const named = (part, fields) => Object.entries(fields).map(([name, text]) => [`${part}.0.${name}`, text]);
  await typeAll(page, Object.fromEntries([
    ...named("outputs", { name: "P3", ...output }),
    ...named("loads", { name: "it", far_end, output: "P3", ...load }),
  ]));
}

/** What the picture says of a key state. */
async function state(page, name) {
  const picture = (await answered(page, "loads.0")).locator("figure.circuit");
  await picture.getByRole("button", { name, exact: true }).tap();
  return picture.locator("figcaption").innerText();
}

test("an LED on a pulled-up open-drain output glows", () => visit(async ({ page }) => {
  await wire(page,
    { stage: "open-drain", pull_up: "10 kohm", pull_up_rail: "battery" },
    { kind: "led", resistance: "680 ohm", far_end: "ground" });
  await reads(page, "loads.0", /^Don.t connect it: live when off$/);
  assert.match(await state(page, "Running, output off"), /LIVE/);
}));

test("a pull-up holds a relay in after it was on", () => visit(async ({ page }) => {
  await wire(page,
    { stage: "high-side", pull_up: "1 kohm", pull_up_rail: "battery" },
    { resistance: "90 ohm", far_end: "ground" });
  await reads(page, "loads.0", /it may not drop out$/);
  const advice = await toDo(page, "loads.0");
  assert.ok(advice.some((it) => /^Use a low-side output instead/.test(it)), advice.join("\n"));
}));

test("a half-bridge keeps alive a dash whose fuse is pulled", () => visit(async ({ page }) => {
  await wire(page,
    { stage: "half-bridge", on_level: "ground" },
    { kind: "resistor", resistance: "47 ohm", far_end: "ignition" });
  await reads(page, "loads.0", /^Connect it$/);
  assert.match(await state(page, "Fuse of its feed pulled"), /backwards/);
  const found = (await findings(page)).locator("ol a", { hasText: "If the fuse of its feed is pulled" });
  assert.equal(await found.count(), 1);
}));

test("a controller without its ground works a grounded relay", () => visit(async ({ page }) => {
  await wire(page,
    { stage: "half-bridge", on_level: "battery" },
    { resistance: "90 ohm", far_end: "ground" });
  await reads(page, "loads.0", /^Connect it$/);
  assert.match(await state(page, "Controller's ground lost"), /may come on/);
}));

test("a closed switch is drawn closed, whether it carries current or not", () => visit(async ({ page }) => {
  await wire(page, { stage: "half-bridge", on_level: "ground" }, { kind: "solenoid", far_end: "battery" });
  const levers = (await answered(page, "loads.0")).locator("figure.circuit svg g").filter({ has: page.locator("line") });
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
    "battery.cold_cranking": "8 V",
  });
  await reads(page, "injectors", /^Too much for the output/);
  const advice = await toDo(page, "injectors");
  const resistor = advice.find((it) => /Ω, \d+ W/.test(it));
  assert.match(resistor ?? advice.join("\n"), /left to open it \(cranking, cold\)/);
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
  assert.match(pulsed, /mA through it and .*A through what is across it: on or off, depending on the duty/);
  await typeAll(page, { "loads.0.frequency": "100 Hz" });
  await reads(page, "loads.0", /^Connect it$/);
}));

test("a diode across a coil is drawn, and the wrong way round it is a dead short", () => visit(async ({ page }) => {
  await wire(page,
    { stage: "open-drain" },
    { resistance: "85 ohm", far_end: "ignition", suppression: "diode", stripe: "pin" });
  await reads(page, "loads.0", /^Don.t connect it: its diode shorts it$/);
  const drawing = (await answered(page, "loads.0")).locator("figure.circuit svg");
  // 12.6 V behind a switch of 0.1 ohm meet 0.7 V and 0.05 ohm: 11.9 / 0.15 = 79 A
  assert.match(await state(page, "Output on"), / 79\.\d A through what is across it: shorted by its diode/);
  const live = await drawing.locator("path.part.live").count();
  await typeAll(page, { "loads.0.stripe": "far-end" });
  await reads(page, "loads.0", /^Connect it$/);
  assert.ok(await drawing.locator("path.part.live").count() < live, "the right way round it carries nothing");
  assert.doesNotMatch(await state(page, "Output on"), /what is across it/);
}));

/** Draws a finger across a picture, from one part of its width to another. */
async function draw(page, figure, from, to) {
  const drawing = figure.locator("svg");
  await drawing.scrollIntoViewIfNeeded();
  const box = await drawing.boundingBox();
  const y = box.y + box.height / 2;
  await page.mouse.move(box.x + from * box.width, y);
  await page.mouse.down();
  await page.mouse.move(box.x + to * box.width, y, { steps: 4 });
  await page.mouse.up();
}

const [LEFT, RIGHT] = [0.2, 0.8];

/** The key state that the picture shows, by the button that is pressed. */
const pressed = async (figure) => (await figure.locator('button[aria-pressed="true"]').innerText())
  .replace(/^\W+/, "").trim();

test("a finger drawn across the picture steps through the key states", () => visit(async ({ page }) => {
  await wire(page, { stage: "open-drain" }, { resistance: "85 ohm", far_end: "ignition" });
  const figure = (await answered(page, "loads.0")).locator("figure.circuit");
  await state(page, "Key off");
  await draw(page, figure, RIGHT, LEFT);
  assert.equal(await pressed(figure), "Key on, starting");
  await draw(page, figure, RIGHT, LEFT);
  assert.equal(await pressed(figure), "Running, output off");
  await draw(page, figure, LEFT, RIGHT);
  assert.equal(await pressed(figure), "Key on, starting");
  await draw(page, figure, LEFT, LEFT + 0.03);
  assert.equal(await pressed(figure), "Key on, starting", "a touch is not a step");
}));

/** A motor between two half-bridges, in the order in which the page asks: both outputs before the kind of load. */
async function pair(page) {
  await add(page, "Add a load");
  await add(page, "Add an output");
  for (const [at, name] of ["H4", "H5"].entries()) {
    const output = { name, stage: "half-bridge", on_level: "battery" };
    await typeAll(page, Object.fromEntries(Object.entries(output).map(([key, text]) => [`outputs.${at}.${key}`, text])));
  }
  const load = {
    name: "throttle motor", far_end: "output", far_output: "H5", output: "H4", kind: "motor", resistance: "2 ohm", pull_in: "5 V",
  };
  await typeAll(page, Object.fromEntries(Object.entries(load).map(([key, text]) => [`loads.0.${key}`, text])));
}

/** What the picture of a pair shows must be what is said beside it. */
async function agrees(figure) {
  const said = await figure.locator("figcaption").innerText();
  const name = await pressed(figure);
  assert.ok(said.startsWith(`${name}: `), `“${said}” beside the picture of “${name}”`);
  assert.equal(await figure.getByRole("img").getAttribute("aria-label"), said.replace(": ", " "));
  assert.ok((await figure.locator("svg text").allTextContents()).includes("other output"), "where the far end goes");
  // the load is drawn as a block 40 high, and an arrow stands beside it where current flows
  const isLive = await figure.locator('svg rect.part.live[height="40"]').count() === 1;
  assert.equal(await figure.locator("svg path.arrow").count() === 1, isLive, name);
  assert.equal(isLive, !/ 0 A through it/.test(said), said);
  assert.match(said, isLive ? /: (on|comes on)/ : /: off/);
  return said;
}

// Both half-bridges rest at ground: nothing lies across the motor until one of them goes up (the circuit of an H-bridge).
test("a motor between two half-bridges rests where both rest alike, and each state says so", () => visit(async ({ page }) => {
  await pair(page);
  await reads(page, "loads.0", /^Connect it$/);
  const figure = (await answered(page, "loads.0")).locator("figure.circuit");
  const names = (await figure.getByRole("group", { name: "Key state" }).getByRole("button").allInnerTexts())
    .map((it) => it.replace(/^\W+/, "").trim());
  assert.ok(["Key off", "Running, output off", "Output on", "Other output on"].every((it) => names.includes(it)), names.join());
  assert.ok(!names.includes("Fuse of its feed pulled"), "it has no feed");
  const said = new Map();
  for (const name of names) {
    await state(page, name);
    said.set(name, await agrees(figure));
  }
  assert.match(said.get("Running, output off"), /: 0 V across it/);
  assert.match(said.get("Output on"), /: 1\d(\.\d)? V across it/);
  assert.match(said.get("Other output on"), /: 1\d(\.\d)? V across it, .*, backwards through it: comes on the other way round/);
  // by a finger: back to the first, then forth through all
  for (const _ of names) await draw(page, figure, LEFT, RIGHT);
  for (const name of names) {
    assert.equal(await pressed(figure), name);
    assert.equal(await agrees(figure), said.get(name));
    await draw(page, figure, RIGHT, LEFT);
  }
  assert.equal(await pressed(figure), names.at(-1), "behind the last there is nothing");
}));

test("a motor between two half-bridges that rest apart is live when off", () => visit(async ({ page }) => {
  await pair(page);
  await typeAll(page, { "outputs.1.on_level": "ground" });
  await reads(page, "loads.0", /^Don.t connect it: live when off$/);
  assert.match(await state(page, "Running, output off"), /: 1\d(\.\d)? V across it, .* LIVE/);
}));

// A diode lets pass what runs against the load's own current: right for one direction, a short in the other.
test("a diode across a motor that a pair turns both ways is a short in one of them", () => visit(async ({ page }) => {
  await pair(page);
  await typeAll(page, { "loads.0.suppression": "diode" });
  await reads(page, "loads.0", /^Don.t connect it: its diode shorts it$/);
  assert.doesNotMatch(await state(page, "Output on"), /what is across it/);
  assert.match(await state(page, "Other output on"), / A through what is across it: shorted by its diode/);
  const advice = await toDo(page, "loads.0");
  assert.ok(advice.some((it) => /^Take the diode off/.test(it)), advice.join("\n"));
}));

// By the lamp's own output nothing flows while it is off; through the motor the other output reaches it.
test("a lamp that shares its output with a motor is worked by the motor's other output", () => visit(async ({ page }) => {
  await pair(page);
  await typeAll(page, { "outputs.1.stage": "open-drain", "outputs.0.on_level": "ground" });
  await add(page, "Add a load");
  const lamp = { name: "shift lamp", output: "H5", far_end: "ignition", kind: "lamp" };
  await typeAll(page, Object.fromEntries(Object.entries(lamp).map(([key, text]) => [`loads.1.${key}`, text])));
  await reads(page, "loads.1", /^Don.t connect it: another output turns it on$/);
  const figure = (await answered(page, "loads.1")).locator("figure.circuit");
  await figure.getByRole("button", { name: "Other output on", exact: true }).click();
  assert.match(await figure.locator("figcaption").innerText(), /V across it, .*A through it: LIVE/);
}));

test("a remedy that was tried with the whole plan is done by one tap, and taken back", () => visit(async ({ page }) => {
  await demo(page);
  const dangers = async () => (await findings(page)).locator("li.danger .said").allInnerTexts();
  const before = await dangers();
  for (const address of ["all", "loads.0"]) {
    await go(page, address);
    const finding = page.locator(".found li", { has: page.locator("button", { hasText: "Do this in the plan" }) }).first();
    await finding.locator("summary").first().tap();
    await finding.getByRole("button", { name: "Do this in the plan" }).first().tap();
    await finding.waitFor({ state: "detached" });
    const after = await dangers();
    assert.equal(after.length, before.length - 1, "something as grave has come");
    assert.ok(after.every((it) => before.includes(it)), after.join("\n"));
    await undo(page);
    assert.deepEqual(await dangers(), before);
  }
}));
