// Are the coils charged in time, and does their feed bear it? As a fitter types it, on a phone.
import { test } from "node:test";
import assert from "node:assert/strict";
import { answered, found, numbers, plain, problem, reads, rows, toDo, type, typeAll, verdict, workshop } from "./fitter.mjs";

const visit = workshop();

const EIGHT = { "engine.cylinders": "8", "engine.order": "1-8-4-3-6-5-7-2", "engine.kind": "four-stroke" };
const COIL = { "coils.resistance": "0.5 ohm", "coils.inductance": "3 mH", "coils.current": "7.5 A" };
const LEADS = { "relays.0.lead_length": "4.5 m", "relays.0.lead_size": "6 mm2" };

/** The figure of a label, as it is shown. */
const figure = async (page, subject, label) => {
  const row = (await numbers(page, subject)).locator(".figure, tr, dl > div", { hasText: label }).first();
  return plain(await row.innerText());
};

// Common practice, no source: a relay of 30 A for each bank of four coils, fed by heavy leads of about 4.5 m.
test("eight coils on two relays of 30 A and 4.5 m of lead", () => visit(async ({ page }) => {
  await answered(page, "coils");
  assert.equal(await verdict(page, "coils").innerText(), "Needs: the coil's resistance");
  await typeAll(page, { ...EIGHT, ...COIL });
  await reads(page, "coils", /^Dwell 1\.97 ms at 14\.8 V$/);
  await typeAll(page, { "channels.ignition_mode": "sequential", "engine.highest_speed": "7000 rpm" });
  // 720 degrees at 7000 a minute are 17.14 ms, less a spark of 2 ms
  await reads(page, "coils", /^Time enough: 2\.22 ms of 15\.1 ms$/);
  await typeAll(page, { "relays.0.alike": "2", "relays.0.rating": "30 A", "relays.0.fuse": "20 A", ...LEADS });
  await reads(page, "coils.feed", /^Fuse and relay are big enough$/);
  // the lead carries less than 8 A: under 0.1 V over 4.5 m of 6 mm²
  const drop = await figure(page, "coils.feed", "Voltage drop in the cable");
  assert.match(drop, /\d+(\.\d)? mV/);
  // that the fuse bears a coil that is held on is said, though nothing in this plan holds one
  assert.match(plain(await (await answered(page, "coils.feed")).locator(".why").innerText()), /20 A fuse may not blow at that/);
  // 1.48 V in 20 AWG, 0.518 mm2, are 0.37 V in 14 AWG, 2.08 mm2; a wire may have up to 16 % more
  await type(page, "relays.0.lead_size", "14 AWG");
  await reads(page, "coils.feed", /^The cable drops 42\d mV$/);
  await type(page, "relays.0.lead_size", "20 AWG");
  await reads(page, "coils.feed", /^Fuse too large for what is behind it$/);
  assert.match(await found(page), /the 20 A fuse may hold it/);
  const dwells = await rows(page, "coils", "Dwell to enter");
  assert.deepEqual(dwells.map((row) => row[0]).filter((it) => / V$/.test(it)), ["8 V", "9 V", "10 V", "11 V", "12 V", "13 V", "14 V", "14.8 V"]);
}));

test("one coil with a distributor runs out of dwell, and is told at which speed", () => visit(async ({ page }) => {
  await typeAll(page, {
    "engine.cylinders": "6", "engine.order": "1-5-3-6-2-4", "engine.kind": "four-stroke", "engine.highest_speed": "6500 rpm",
    "channels.ignition_mode": "distributor",
    "coils.resistance": "0.6 ohm", "coils.inductance": "4 mH", "coils.current": "6 A",
  });
  await reads(page, "coils", /^Dwell runs out at \d{4} rpm$/);
  const advice = (await toDo(page, "coils")).join("\n");
  assert.match(advice, /Give each cylinder its own coil/);
  await type(page, "engine.highest_speed", "4000 rpm");
  await reads(page, "coils", /^Time enough: /);
}));

test("a two-stroke twin and a rotary fire each coil once a turn", () => visit(async ({ page }) => {
  await typeAll(page, {
    "engine.cylinders": "2", "engine.order": "1-2", "engine.kind": "two-stroke", "engine.highest_speed": "10000 rpm",
    "channels.ignition_mode": "sequential", ...COIL,
  });
  // 360 degrees at 10000 a minute are 6 ms, less a spark of 2 ms
  await reads(page, "coils", /^Time enough: 2\.22 ms of 4 ms$/);
  await type(page, "engine.kind", "rotary");
  await reads(page, "coils", /^Time enough: 2\.22 ms of 4 ms$/);
  // leading and trailing of each rotor: four coils, two of them charged together
  assert.match(await (await answered(page, "coils.feed")).innerText(), /1 relay feeds 4 coils:/);
}));

test("what is wrong with a coil's field is said there, and the rest is answered", () => visit(async ({ page }) => {
  await typeAll(page, { ...COIL, "coils.inductance": "3 MH" });
  await reads(page, "coils", /^Dwell /);
  assert.match(await problem(page, "coils.inductance"), /M is a million, m a thousandth/);
}));
