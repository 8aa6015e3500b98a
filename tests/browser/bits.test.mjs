// The program as it is shipped computes what the native one does, bit for bit: the very files of the page answer every
// example plan, and each part of each report has the hash that the native program found.
//
// `tests/support/plans.rs` tells what the parts are, and how their hashes are made.
import { test } from "node:test";
import assert from "node:assert/strict";
import { createHash } from "node:crypto";
import { readFileSync, readdirSync } from "node:fs";
import path from "node:path";
import { workshop } from "./fitter.mjs";
import { root } from "./support.mjs";

const visit = workshop();
const PLANS = path.join(root, "tests", "plans");
const HASHES = path.join(PLANS, "hashes");


/** JSON with each number kept as it is written, behind a character that no report holds: JavaScript writes 720 for 720.0. */
function read(json) {
  const tokens = /"(?:[^"\\]|\\.)*"|-?\d[\d.eE+-]*/g;
  return JSON.parse(json.replace(tokens, (token) => (token.startsWith("\"") ? token : `"\\u0001${token}"`)));
}

function written(value) {
  return JSON.stringify(value).replace(/"\\u0001([^"]*)"/g, "$1");
}

function hash(value) {
  return createHash("sha256").update(written(value)).digest("hex").slice(0, 16);
}

/** The hash of each part of a report. */
function digest(report) {
  const parts = { name: report.name, findings: report.findings };
  for (const section of report.sections) parts[section.id] = section;
  for (const [place, field] of Object.entries(report.fields)) {
    (parts[`fields-${place.split(".")[0]}`] ??= {})[place] = field;
  }
  return Object.fromEntries(Object.entries(parts).map(([part, value]) => [part, hash(value)]));
}

/** By plan: the hash of each part of its report, as the native program found them. */
function native() {
  const plans = {};
  for (const file of readdirSync(HASHES)) {
    const part = path.basename(file, ".sha256");
    for (const line of readFileSync(path.join(HASHES, file), "utf8").split("\n").filter(Boolean)) {
      const [plan, digits] = line.split(" ");
      (plans[plan] ??= {})[part] = digits;
    }
  }
  return plans;
}

test("numbers are hashed as they are written", () => {
  const json = "{\"a\":720.0,\"b\":[1e-7,\"2.0 \\\"\\\\\",null]}";
  assert.equal(written(read(json)), json);
});

test("the reports of all example plans are bit-equal to the native ones", () => visit(async ({ page }) => {
  const expected = native();
  const there = [PLANS, path.join(PLANS, "points")].flatMap((folder) => readdirSync(folder)
    .filter((file) => file.endsWith(".json")).map((file) => [path.basename(file, ".json"), path.join(folder, file)]));
  const files = Object.fromEntries(there);
  assert.deepEqual(Object.keys(files).sort(), Object.keys(expected).sort());
  for (const [plan, parts] of Object.entries(expected)) {
    const text = readFileSync(files[plan], "utf8");
    const json = await page.evaluate((it) => new Promise((tell) => { wasm_bindgen.report_of(it, tell); }), text);
    assert.ok(json, `${plan}: no report`);
    assert.deepEqual(digest(read(json)), parts, plan);
  }
}));
