// Everyone can use it: by touch, by keyboard, by ear, in light and dark.
import { test } from "node:test";
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { DESK, PHONE } from "./support.mjs";
import { FOUR, demo, field, plans, type, typeAll, unfoldAll, workshop } from "./fitter.mjs";

const visit = workshop();
const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** All of axe-core's rules, good practice among them. */
const ALL_RULES = {};
/** The rule that colours and their size can break. */
const CONTRAST = { runOnly: ["color-contrast"] };

/** Breaches of these rules, each with the places it was found at. */
async function breaches(page, rules) {
  // the size of targets, which axe-core leaves out unless asked, is measured below, and by a stricter rule
  const options = { resultTypes: ["violations"], ...rules };
  const { violations } = await page.evaluate((wanted) => window.axe.run(document, wanted), options);
  return violations.map((it) => `${it.id} (${it.impact}): ${it.help}\n`
    + it.nodes.map((node) => `    ${node.target.join(" ")} : ${node.any.concat(node.all, node.none)[0]?.message ?? ""}`)
      .slice(0, 12).join("\n") + `\n    in ${it.nodes.length} places`);
}

const wholeDemo = async (page) => {
  await demo(page);
  await unfoldAll(page);
};

const VIEWS = {
  "the blank page": async () => {},
  "the demo with everything unfolded": wholeDemo,
  "the demo with errors shown": async (page) => {
    await demo(page);
    await typeAll(page, { "engine.order": "1-5-3-5-2-4", "injectors.resistance": "2.4 mH", "cranking.speed": "fast" });
    await unfoldAll(page);
  },
  "a notice": async (page) => {
    await page.evaluate(() => { Storage.prototype.setItem = () => { throw new Error("full"); }; });
    await type(page, "engine.cylinders", "4");
    await page.locator(".notice").waitFor();
  },
};

for (const [what, show] of Object.entries(VIEWS)) {
  test(`axe-core finds nothing: ${what}`, () => visit(async ({ page }) => {
    await show(page);
    await page.evaluate(axe);
    for (const [colorScheme, size, rules] of [
      ["light", PHONE, ALL_RULES], ["dark", PHONE, CONTRAST], ["light", DESK, CONTRAST], ["dark", DESK, ALL_RULES],
    ]) {
      await page.emulateMedia({ colorScheme });
      await page.setViewportSize(size.viewport);
      assert.equal((await breaches(page, rules)).join("\n"), "", `${colorScheme}, ${size.viewport.width} px wide`);
    }
  }, { ...PHONE, reducedMotion: "reduce" }));
}

test("no two places have one name, so that every label leads to its own field", () => visit(async ({ page }) => {
  for (const show of [async () => {}, wholeDemo]) {
    await show(page);
    const twice = await page.locator("[id]").evaluateAll((all) => all.map((it) => it.id)
      .filter((id, at, ids) => ids.indexOf(id) !== at));
    assert.deepEqual(twice, []);
    const astray = await page.locator("label[for]").evaluateAll((all) => all
      .filter((it) => !it.control).map((it) => `${it.innerText} → ${it.htmlFor}`));
    assert.deepEqual(astray, []);
  }
}));

/** What a finger would miss: whatever can be pressed and is less than 48 CSS pixels high or wide. */
const small = (page) => page.locator("a[href], button, input, select, summary, label.button, [role=button]")
  .evaluateAll((all) => all.filter((it) => it.checkVisibility({ visibilityProperty: true, opacityProperty: true }))
    .map((it) => ({ it, box: it.getBoundingClientRect() }))
    .filter(({ box }) => box.width > 1 && box.height > 1 && (box.height < 47.5 || box.width < 47.5))
    .map(({ it, box }) => `${it.tagName.toLowerCase()}.${it.className} “${(it.innerText || it.id).slice(0, 40)}” `
      + `${box.width.toFixed(0)}x${box.height.toFixed(0)}`));

/** What stands out of the page at the right: the page would scroll sideways. */
const wide = (page) => page.evaluate(() => {
  const width = document.documentElement.clientWidth;
  const page = document.scrollingElement.scrollWidth;
  return page <= width ? [] : [`the page: ${page}`, ...[...document.querySelectorAll("body *")]
    .filter((it) => it.getBoundingClientRect().right > width + 0.5)
    .map((it) => `${it.tagName}.${it.getAttribute("class")} ${it.getBoundingClientRect().right}`).slice(0, 20)];
});

for (const what of ["the blank page", "the demo with everything unfolded", "the demo with errors shown"]) {
  test(`every target is large enough for a thumb: ${what}`, () => visit(async ({ page }) => {
    await VIEWS[what](page);
    assert.deepEqual(await small(page), []);
  }));
  test(`nothing scrolls sideways: ${what}`, () => visit(async ({ page }) => {
    await VIEWS[what](page);
    assert.equal(await page.evaluate(() => innerWidth), 360);
    assert.deepEqual(await wide(page), []);
  }));
}

/** Choices that their box cuts off, and that stand nowhere in full. */
const cut = (page) => page.evaluate(() => {
  const pen = document.createElement("canvas").getContext("2d");
  return [...document.querySelectorAll(".entry select")].filter((it) => it.value !== "").flatMap((it) => {
    const style = getComputedStyle(it);
    pen.font = `${style.fontWeight} ${style.fontSize} ${style.fontFamily}`;
    // a select keeps some 20 px for its arrow
    const room = it.clientWidth - parseFloat(style.paddingLeft) - parseFloat(style.paddingRight) - 20;
    const said = it.selectedOptions[0].text;
    const beside = [...it.closest(".field").querySelectorAll(".notes p")].filter((note) => note.offsetHeight > 0);
    return pen.measureText(said).width <= room || beside.some((note) => note.innerText === said) ? [] : [`${it.id}: ${said}`];
  });
});

test("what is chosen can be read in full on a phone", () => visit(async ({ page }) => {
  await demo(page);
  await typeAll(page, { "channels.ignition_mode": "paired-single", "outputs.0.stage": "open-drain", "loads.0.kind": "logic-input" });
  assert.deepEqual(await cut(page), []);
  assert.ok(await page.locator(".notes .cut").first().isVisible(), "one of them is too long for its box");
}));

const focused = (page) => page.evaluate(() => document.activeElement.id);

test("a finding leads to its field, by touch", () => visit(async ({ page }) => {
  await demo(page);
  const link = page.locator("#at-found ol a", { hasText: "fuel valve is live" });
  await link.tap();
  assert.equal(await focused(page), "at-loads.0.far_end");
  const box = await field(page, "loads.0.far_end").boundingBox();
  const bar = await page.locator("nav.bar").boundingBox();
  assert.ok(box.y >= 0 && box.y + box.height <= bar.y, "the field is hidden behind the bar");
}));

test("the bar leads to each question", () => visit(async ({ page }) => {
  await demo(page);
  const cut = await page.locator("nav.bar a").evaluateAll(
    (all) => all.filter((it) => it.scrollWidth > it.clientWidth).map((it) => it.innerText),
  );
  assert.deepEqual(cut, [], "names that stick out of their places");
  for (const [name, id] of [["Firing", "firing"], ["Fuel", "injectors"], ["Outputs", "outputs"], ["Trigger", "trigger"], ["Relay", "cranking"], ["Coils", "coils"]]) {
    await page.getByRole("navigation", { name: "Questions" }).getByRole("link", { name }).tap();
    assert.equal(await focused(page), `at-${id}`);
    const heading = await page.locator(`#title-${id}`).boundingBox();
    assert.ok(heading.y >= 0 && heading.y < 320, `${name}: its heading stands at ${heading.y}`);
  }
}));

async function tabTo(page, wanted, most = 150) {
  for (let presses = 0; presses < most; presses += 1) {
    await page.keyboard.press("Tab");
    if (await page.evaluate(wanted)) return;
  }
  assert.fail(`not reached by ${most} presses of Tab: ${wanted}`);
}

test("by the keyboard alone: a plan is typed, a finding followed, a detail opened", () => visit(async ({ page }) => {
  for (const [path, text] of Object.entries(FOUR).slice(0, 2)) {
    await tabTo(page, `document.activeElement.id === "at-${path}"`);
    await page.keyboard.type(text);
  }
  await tabTo(page, 'document.activeElement.id === "at-channels.ignition_mode" && document.activeElement.tagName === "SELECT"');
  await page.keyboard.type("Coil per cylinder, fired once");
  assert.equal(await field(page, "channels.ignition_mode").inputValue(), "sequential");
  await page.evaluate(() => { document.activeElement.blur(); scrollTo(0, 0); });
  await plans(page);
  await page.getByRole("button", { name: "New, from the demo" }).press("Enter");
  await page.locator("#at-found ol").waitFor();
  await tabTo(page, 'document.activeElement.matches("#at-found ol a")');
  const goal = await page.evaluate(() => document.activeElement.getAttribute("href").slice(1));
  await page.keyboard.press("Enter");
  assert.equal(await focused(page), goal);
  await tabTo(page, 'document.activeElement.matches("summary")');
  const isOpen = () => page.evaluate(() => document.activeElement.parentElement.open);
  const before = await isOpen();
  await page.keyboard.press("Enter");
  assert.equal(await isOpen(), !before);
}, DESK));

test("where the keyboard stands is seen, and never behind the bar", () => visit(async ({ page }) => {
  await demo(page);
  const bad = [];
  for (let presses = 0; presses < 60; presses += 1) {
    await page.keyboard.press("Tab");
    const seen = await page.evaluate(() => {
      const it = document.activeElement;
      if (it === document.body) return null;
      const style = getComputedStyle(it);
      const box = it.getBoundingClientRect();
      const bar = document.querySelector("nav.bar").getBoundingClientRect();
      const outlined = style.outlineStyle !== "none" && parseFloat(style.outlineWidth) >= 2;
      const behind = !it.closest("nav.bar") && getComputedStyle(document.querySelector("nav.bar")).position !== "static"
        && box.top >= bar.top && box.bottom <= bar.bottom + 1;
      return outlined && !behind ? null : `${it.tagName} ${it.id} ${it.innerText?.slice(0, 30)} outlined ${outlined} behind ${behind}`;
    });
    if (seen) bad.push(seen);
  }
  assert.deepEqual(bad, []);
}, DESK));
