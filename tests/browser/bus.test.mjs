// Is the bus terminated, short enough, not overloaded? As a fitter types it, on a phone.
import { test } from "node:test";
import assert from "node:assert/strict";
import { answered, found, go, numbers, problem, reads, toDo, type, typeAll, verdict, workshop } from "./fitter.mjs";

const visit = workshop();

// by hand: three of 120 ohm side by side are 40 ohm, two are 60, one beside 120 + 120 ohm is 80
test("40 ohm on the bus are explained, and so is a meter that shows no end", () => visit(async ({ page }) => {
  await answered(page, "bus");
  assert.match(await verdict(page, "bus").innerText(), /^Needs: the ohms between CAN-H and CAN-L/);
  await type(page, "bus.reading", "40");
  await reads(page, "bus.termination", /^40.Ω: too many terminators$/);
  assert.match((await toDo(page, "bus.termination")).join("\n"), /Unplug the devices one by one: where the reading rises, one is inside/);
  assert.match(await found(page), /40.Ω between CAN-H and CAN-L instead of 60.Ω: 3 terminators or more/);
  await go(page, "bus");
  await type(page, "bus.reading", "OL");
  await reads(page, "bus.termination", /^No end \(OL\): no terminator is connected$/);
  await type(page, "bus.reading", "80 ohm");
  await reads(page, "bus.termination", /^80.Ω: between 1 and 2 terminators$/);
  await numbers(page, "bus.termination");
  assert.match(await (await answered(page, "bus.termination")).innerText(), /Too much in one branch/);
  await type(page, "bus.reading", "60.2");
  await reads(page, "bus.termination", /^Two terminators: 60\.2.Ω$/);
  await type(page, "bus.reading", "60 V");
  assert.match(await problem(page, "bus.reading"), /\w/);
}));

// by hand: 0.8 of 2 us less 0.4 us, there and back at 5 ns/m, are 120 m
test("a wire that is too long is found, and what cures it", () => visit(async ({ page }) => {
  await typeAll(page, { "bus.bit_rate": "500", "bus.length": "140 m" });
  await reads(page, "bus.wire", /^Too long for 500.kbit\/s$/);
  assert.match(await found(page), /Set all devices to 250.kbit\/s/);
  await go(page, "bus.length");
  await type(page, "bus.length", "3.6 m");
  await reads(page, "bus.wire", /^Short enough for 500.kbit\/s$/);
}));

test("levels tell swapped lines", () => visit(async ({ page }) => {
  await typeAll(page, { "bus.high": "2.35 V", "bus.low": "2.65 V" });
  await reads(page, "bus.levels", /^CAN-H and CAN-L are swapped$/);
  await typeAll(page, { "bus.high": "2.65 V", "bus.low": "2.35 V" });
  await reads(page, "bus.levels", /^Levels right: dominant about 15% of the time$/);
}));

// by hand: 135 bits in 10 ms are 13.5 kbit/s, 2.7 % of 500 kbit/s
test("frames are listed, and load the bus", () => visit(async ({ page }) => {
  await type(page, "bus.bit_rate", "500 kbit/s");
  for (const at of [0, 1]) {
    await go(page, "frames");
    await page.getByRole("button", { name: "Add a frame" }).click();
    await typeAll(page, { [`frames.${at}.name`]: `frame ${at}`, [`frames.${at}.identifier`]: "5F0", [`frames.${at}.period`]: "10 ms" });
  }
  await reads(page, "bus.load", /^One identifier is used twice$/);
  await type(page, "frames.1.identifier", "5F1");
  await reads(page, "bus.load", /^Load up to 5\.4%$/);
}));
