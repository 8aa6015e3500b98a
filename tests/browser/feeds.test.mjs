// Do fuses, wires and relays suit? As a fitter types it, on a phone.
import { test } from "node:test";
import assert from "node:assert/strict";
import { add, answered, found, go, plain, reads, stands, toDo, type, typeAll, workshop } from "./fitter.mjs";

const visit = workshop();

const PUMP = {
  "relays.0.name": "Pump relay", "relays.0.purpose": "pump", "relays.0.draws": "8 A", "relays.0.rating": "40 A",
};

/** One relay that feeds a pump, as far as it is known at first. */
async function pump(page) {
  await add(page, "Add a relay");
  await typeAll(page, PUMP);
  await reads(page, "feeds.relay.0", /^Needs: a fuse of 15 A, wire of 1\.5 mm²$/);
}

// 8 A / 75 % are 10.7 A: 15 A; by hand 1.35 x 15 A heat 1.5 mm² (21 A in free air) to less than its insulation bears
test("what a feed needs is said as soon as it is known what it draws", () => visit(async ({ page }) => {
  await pump(page);
  assert.match((await toDo(page, "feeds.relay.0")).join(" "), /fuse of 15 A, and wire of 1\.5 mm² or more/);
  await typeAll(page, { "relays.0.fuse": "15 A", "relays.0.lead_size": "2.5 mm2", "relays.0.lead_length": "3 m" });
  await reads(page, "feeds.relay.0", /^Fuse, wire and contact suit$/);
}));

test("a thin wire behind a big fuse is a danger, and one tap sets the fuse that protects it", () => visit(async ({ page }) => {
  await pump(page);
  await typeAll(page, { "relays.0.fuse": "30 A", "relays.0.lead_size": "1.5 mm2", "relays.0.lead_length": "2 m" });
  await reads(page, "feeds.relay.0", /^Its wire burns before its fuse blows$/);
  assert.match(await found(page), /Danger[^]*the 30 A fuse may hold it/);
  await go(page, "feeds.relay.0");
  const finding = page.locator(".found li", { has: page.locator("button", { hasText: "Do this in the plan" }) }).first();
  await finding.locator("summary").first().tap();
  await finding.getByRole("button", { name: "Do this in the plan" }).first().tap();
  await finding.waitFor({ state: "detached" });
  assert.match(await stands(page, "relays.0.fuse"), /^(20|15) A$/);
  await reads(page, "feeds.relay.0", /^Fuse, wire and contact suit$/);
}));

// 0.5 mm², 20 m and as much back are 1.6 ohm cold, 2 ohm hot: 12 V give 6 A, less than 135 % of 7.5 A
test("a short at the end of a long thin wire never blows its fuse", () => visit(async ({ page }) => {
  await pump(page);
  await typeAll(page, { "relays.0.draws": "1 A", "relays.0.fuse": "7.5 A", "relays.0.lead_size": "0.5 mm2", "relays.0.lead_length": "20 m" });
  await reads(page, "feeds.relay.0", /^A short at the other end doesn't blow its fuse$/);
  await type(page, "relays.0.lead_length", "2 m");
  await reads(page, "feeds.relay.0", /^Fuse, wire and contact suit$/);
}));

// 1.16 x 4 m / (58 x 35 mm²) is 2.29 mohm; 200 A, out and back, lose 0.91 V
test("a battery in the rear wants a thicker cable", () => visit(async ({ page }) => {
  await typeAll(page, { "battery.lead_length": "4 m", "battery.lead_size": "35 mm2", "battery.starter": "200 A" });
  await reads(page, "feeds.cable", /^The cable takes 91\d mV while cranking$/);
  assert.match(plain(await (await answered(page, "feeds.cable")).innerText()), /50 mm²/);
  await type(page, "battery.lead_size", "50 mm2");
  await reads(page, "feeds.cable", /^The starter gets /);
}));

// 14 A over a bolt of 20 mohm: 0.28 V on each sensor that shares it (common practice, no source)
test("a pump on the sensors' bolt moves what each sensor reads", () => visit(async ({ page }) => {
  await pump(page);
  await typeAll(page, { "relays.0.draws": "14 A", "grounds.sensors": "bolt", "grounds.bolt": "20 mohm", "relays.0.ground": "sensors" });
  await reads(page, "feeds.sensors", /^Each sensor reads wrong by up to 280 mV$/);
  await type(page, "relays.0.ground", "own");
  await reads(page, "feeds.sensors", /^(Nothing shares the sensors' ground|Needs: which relay's feed is grounded at that bolt)$/);
}));

test("a kill switch that leaves the alternator feeding is a danger", () => visit(async ({ page }) => {
  await typeAll(page, { "battery.alternator": "70 A", "battery.kill_switch": "battery" });
  await reads(page, "feeds.kill", /^The engine runs on with the kill switch thrown$/);
  assert.match(await found(page), /Danger/);
  await type(page, "battery.kill_switch", "both");
  await reads(page, "feeds.kill", /^The kill switch stops the engine$/);
}));

// by hand: what the coils take is shared by both relays, so that each needs half of it
test("coils of a V8 on two relays have a feed for each", () => visit(async ({ page }) => {
  const eight = { "engine.cylinders": "8", "engine.order": "1-8-4-3-6-5-7-2", "channels.ignition_mode": "sequential", "engine.highest_speed": "6500 rpm" };
  const coils = { "coils.resistance": "0.5 ohm", "coils.inductance": "3 mH", "coils.current": "7 A" };
  await typeAll(page, { ...eight, ...coils });
  for (const bank of [0, 1]) {
    await add(page, "Add a relay");
    await typeAll(page, {
      [`relays.${bank}.name`]: `Coils, bank ${bank + 1}`, [`relays.${bank}.purpose`]: "coils", [`relays.${bank}.rating`]: "40 A",
      [`relays.${bank}.fuse`]: "15 A", [`relays.${bank}.lead_size`]: "2.5 mm2", [`relays.${bank}.lead_length`]: "2 m",
    });
  }
  await reads(page, "feeds.relay.0", /^Fuse, wire and contact suit$/);
  await reads(page, "feeds.relay.1", /^Fuse, wire and contact suit$/);
  await type(page, "relays.1.lead_size", "0.5 mm2");
  await reads(page, "feeds.relay.1", /^(Its wire burns before its fuse blows|Its wire gets too hot as it runs)$/);
  await reads(page, "feeds.relay.0", /^Fuse, wire and contact suit$/);
}));
