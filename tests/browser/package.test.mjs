// The JavaScript package: used just as its README.md says, in Node.js and in a page, and its types by TypeScript's compiler.
import { after, before, test } from "node:test";
import assert from "node:assert/strict";
import { execFile } from "node:child_process";
import { existsSync } from "node:fs";
import { cp, mkdir, mkdtemp, readFile, rm, symlink, writeFile } from "node:fs/promises";
import { createServer } from "node:http";
import os from "node:os";
import path from "node:path";
import { promisify } from "node:util";
import { dist, launch, root, watched } from "./support.mjs";

const run = promisify(execFile);
const made = process.env.QUIETPIN_PACKAGE ?? path.join(dist, "package");
const tsc = path.join(root, "tests", "browser", "node_modules", "typescript", "bin", "tsc");

/** A folder with a plan in it, where Node.js finds the package, and a page too. */
let folder;
before(async () => {
  if (!existsSync(made)) throw new Error(`${made} is not there: run cargo xtask package first`);
  folder = await mkdtemp(path.join(os.tmpdir(), "quietpin-package-"));
  await mkdir(path.join(folder, "node_modules"));
  await symlink(made, path.join(folder, "node_modules", "quietpin"));
  await cp(made, path.join(folder, "quietpin"), { recursive: true });
  await cp(path.join(root, "crates", "core", "src", "demo.json"), path.join(folder, "plan.json"));
});
after(async () => { await rm(folder, { recursive: true, force: true }); });

/** The block of code in README.md that is marked so. */
async function block(language) {
  const text = await readFile(path.join(made, "README.md"), "utf8");
  const found = [...text.matchAll(/^```(\w+)\n([^]*?)^```$/mg)].filter(([, of]) => of === language);
  assert.equal(found.length, 1, `blocks of ${language}`);
  return found[0][2];
}

/** Writes a file into the folder. */
async function put(name, text) {
  await writeFile(path.join(folder, name), text);
  return name;
}

const node = async (...args) => (await run(process.execPath, args, { cwd: folder })).stdout;

/** What the package finds in the plan: severity and sentence. */
async function expected() {
  const { parse, report } = await import(path.join(made, "node.js"));
  return report(parse(await readFile(path.join(folder, "plan.json"), "utf8"))).findings
    .map(({ severity, message }) => [severity, message.text]);
}

test("the lines for Node.js run as they stand", async () => {
  const lines = await block("js");
  assert.equal(lines.trim().split("\n").length, 3);
  const printed = await node(await put("script.mjs", lines));
  const findings = await expected();
  assert.match(printed, /^danger Fuel valve is live while A1 is off: /, "what README.md shows of the demo");
  assert.equal(printed, findings.map((it) => `${it.join(" ")}\n`).join(""));
});

const TYPES = { ".js": "text/javascript", ".html": "text/html" };

/** Serves the folder as any server would that knows nothing of WebAssembly. */
async function served(use) {
  const server = createServer(async ({ url }, answer) => {
    const file = path.join(folder, path.normalize(new URL(url, "http://it").pathname));
    const bytes = await readFile(file).catch(() => null);
    answer.writeHead(bytes ? 200 : 404, { "Content-Type": TYPES[path.extname(file)] ?? "application/octet-stream" });
    answer.end(bytes ?? "");
  });
  await new Promise((done) => { server.listen(0, "127.0.0.1", done); });
  try {
    await use(`http://127.0.0.1:${server.address().port}/`);
  } finally {
    server.close();
    server.closeAllConnections();
  }
}

test("the lines for a page run as they stand", () => served(async (address) => {
  const lines = await block("html");
  assert.equal(lines.trim().split("\n").length, 5, "three, and the element around them");
  const name = await put("page.html", `<!doctype html><html lang="en"><title>It</title><link rel="icon" href="data:,"><body>${lines}`);
  const browser = await launch();
  try {
    const { context, trouble } = await watched(browser);
    const page = await context.newPage();
    await page.goto(address + name);
    const findings = (await expected()).map(([severity, text]) => `${severity}: ${text} `).join("");
    await page.waitForFunction((length) => document.body.innerText.length >= length, findings.trim().length);
    const said = await page.evaluate(() => [...document.body.childNodes].filter((it) => it.nodeType === Node.TEXT_NODE)
      .map((it) => it.data).join("").trim());
    assert.equal(said, findings.trim());
    assert.deepEqual(trouble, []);
  } finally {
    await browser.close();
  }
}));

test("what is no plan throws an error for a person and for a program", async () => {
  const { parse } = await import(path.join(made, "node.js"));
  assert.throws(() => parse("{}"), { name: "PlanError", kind: "not-a-plan", message: /version/ });
});

const USE = `
import { fields, parse, report, version, type Field, type Finding, type Plan, type PlanError, type Report } from "quietpin";
const plan: Plan = parse("{}");
plan.engine = { cylinders: "6", order: "1-5-3-6-2-4" };
const said: Report = report(plan);
const texts: string[] = said.findings.map((it: Finding) => it.message.text);
const labels: string[] = fields().map((it: Field) => it.label);
const kind = (error: PlanError): string => (error.kind === "too-large" ? String(error.bytes) : error.kind);
export const all: [string[], string[], string, typeof kind] = [texts, labels, version(), kind];
// @ts-expect-error: a number is not a text
parse(6);
// @ts-expect-error: there is no such part
plan.wings = {};
// @ts-expect-error: nothing of how the program is started
import { __wbg_set_wasm } from "quietpin";
`;

test("its types are what TypeScript's compiler takes them for", async () => {
  const name = await put("use.ts", USE);
  const options = ["--noEmit", "--strict", "--target", "es2022", "--module", "nodenext", "--lib", "es2022", "--skipDefaultLibCheck"];
  await node(tsc, ...options, name).catch((error) => assert.fail(error.stdout));
});

test("its types name what it exports, and nothing else", async () => {
  const types = await readFile(path.join(made, "quietpin.d.ts"), "utf8");
  const typed = [...types.matchAll(/^export function (\w+)/mg)].map(([, name]) => name).sort();
  const exported = Object.keys(await import(path.join(made, "node.js"))).sort();
  assert.deepEqual(exported, typed);
  const { version } = JSON.parse(await readFile(path.join(made, "package.json"), "utf8"));
  assert.equal((await import(path.join(made, "node.js"))).version(), version);
});

test("it brings its licence and the schema of a plan", async () => {
  const same = async (name, ...original) => {
    const [one, other] = await Promise.all([path.join(made, name), path.join(root, ...original)].map((it) => readFile(it, "utf8")));
    assert.equal(one, other);
  };
  await same("LICENSE", "LICENSE");
  await same("plan.schema.json", "web", "static", "plan.schema.json");
  const resolved = await node("--input-type=module", "--eval", 'console.log(import.meta.resolve("quietpin/plan.schema.json"))');
  assert.match(resolved, /plan\.schema\.json/);
});
