// Every example plan against the published JSON Schema, by a general validator: valid, or refused just where the report
// refuses it.
import { test } from "node:test";
import assert from "node:assert/strict";
import { readFile, readdir } from "node:fs/promises";
import path from "node:path";
import Ajv from "ajv/dist/2020.js";
import { dist, root } from "./support.mjs";

const json = async (...names) => JSON.parse(await readFile(path.join(root, ...names), "utf8"));

/** Paths as the report writes them: `loads.0.kind`. */
const dotted = (pointer) => pointer.slice(1).replaceAll("/", ".");

const placeOf = (error) => {
  const more = error.params.additionalProperty;
  return [dotted(error.instancePath), more].filter(Boolean).join(".");
};

test("every example plan is valid, but for those that are refused where the report tells", async () => {
  const schema = await json("web", "static", "plan.schema.json");
  assert.deepEqual(JSON.parse(await readFile(path.join(dist, "plan.schema.json"), "utf8")), schema, "published");
  const valid = new Ajv({ allErrors: true, allowUnionTypes: true }).compile(schema);
  const refused = await json("tests", "plans-refused.json");
  const plans = (await readdir(path.join(root, "tests", "plans"))).filter((it) => it.endsWith(".json"));
  assert.ok(plans.length > 140, `${plans.length} plans`);
  for (const file of plans) {
    const name = file.replace(".json", "");
    valid(await json("tests", "plans", file));
    const places = new Set((valid.errors ?? []).map(placeOf));
    for (const place of refused[name] ?? []) {
      const is = [...places].some((it) => place === it || place.startsWith(`${it}.`));
      assert.ok(is, `${name}: ${place} is not refused`);
    }
    for (const place of places) {
      const is = (refused[name] ?? []).some((it) => it === place || it.startsWith(`${place}.`));
      assert.ok(is, `${name}: ${place} is refused, and the report says nothing of it`);
    }
  }
});

test("a plan of an earlier version is not one of this", async () => {
  const valid = new Ajv({ allErrors: true, allowUnionTypes: true }).compile(await json("web", "static", "plan.schema.json"));
  assert.ok(!valid(await json("tests", "plans-version1", "firing-demo-begun.json")));
});
