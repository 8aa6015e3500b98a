// Everyone can use it: by touch, by keyboard, by ear, in light and dark.
import { test } from "node:test";
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { DESK, PHONE } from "./support.mjs";
import { FOUR, cards, demo, field, go, plans, shown, stands, type, typeAll, unfoldAll, workshop } from "./fitter.mjs";

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

const MISTAKES = { "engine.order": "1-5-3-5-2-4", "injectors.resistance": "2.4 mH", "cranking.speed": "fast" };

/** The demo at one of its addresses. */
const demoAt = (address, then = async () => {}) => async (page) => {
  await demo(page);
  await go(page, address);
  await then(page);
};

const VIEWS = {
  "the blank list": async () => {},
  "the first card of a blank plan": (page) => go(page, "engine"),
  "the list of the demo": demoAt("list", unfoldAll),
  "a card with everything unfolded": demoAt("loads.0", unfoldAll),
  "the bench": demoAt("channels.coils_wired"),
  "the sheet for the car": demoAt("sheet"),
  "all of the demo with everything unfolded": demoAt("all", unfoldAll),
  "the demo with errors shown": demoAt("list", async (page) => {
    await typeAll(page, MISTAKES);
    await go(page, "all");
    await unfoldAll(page);
    for (const path of Object.keys(MISTAKES)) await page.locator(`[id="problem-${path}"]`).waitFor();
  }),
  "a card with an error shown": demoAt("cranking", async (page) => {
    await type(page, "cranking.speed", "fast");
    await page.locator('[id="problem-cranking.speed"]').waitFor();
  }),
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

for (const [what, show] of Object.entries(VIEWS)) {
  test(`no two places have one name, so that every label leads to its own field: ${what}`, () => visit(async ({ page }) => {
    await show(page);
    const twice = await page.locator("[id]").evaluateAll((all) => all.map((it) => it.id)
      .filter((id, at, ids) => ids.indexOf(id) !== at));
    assert.deepEqual(twice, []);
    const astray = await page.locator("label[for]").evaluateAll((all) => all
      .filter((it) => !it.control).map((it) => `${it.innerText} → ${it.htmlFor}`));
    assert.deepEqual(astray, []);
  }));
}

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

for (const [what, show] of Object.entries(VIEWS)) {
  test(`every target is large enough for a thumb, and nothing scrolls sideways: ${what}`, () => visit(async ({ page }) => {
    await show(page);
    assert.equal(await page.evaluate(() => innerWidth), 360);
    assert.deepEqual(await wide(page), []);
    assert.deepEqual([...new Set(await small(page))], []);
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
  await go(page, "all");
  await unfoldAll(page);
  assert.deepEqual(await cut(page), []);
}));

const focused = (page) => page.evaluate(() => document.activeElement.id);

/** The part of the phone between the verdict in sight and the bar. */
const room = (page) => page.evaluate(() => {
  const line = document.querySelector(".line")?.getBoundingClientRect().bottom ?? 0;
  return { top: Math.max(0, line), bottom: document.querySelector("nav.bar").getBoundingClientRect().top };
});

test("a finding leads to its field, by touch", () => visit(async ({ page }) => {
  await demo(page);
  const link = page.locator("#at-found ol a", { hasText: "fuel valve is live" });
  await link.tap();
  await shown(page, "loads.0.far_end");
  await page.waitForFunction(() => document.activeElement.id === "at-loads.0.far_end");
  const box = await field(page, "loads.0.far_end").boundingBox();
  const { top, bottom } = await room(page);
  assert.ok(box.y >= top && box.y + box.height <= bottom, `the field at ${box.y} is hidden: ${top} to ${bottom}`);
}));

test("the list leads to each question, and each of its cards back to the list", () => visit(async ({ page }) => {
  await demo(page);
  const rows = page.locator(".list a");
  const leads = await rows.evaluateAll((all) => all.map((it) => it.getAttribute("href")));
  assert.deepEqual(leads, [
    // with an answer that is wrong or in doubt, to the worst of them
    "#channels.coils_wired", "#injectors", "#outputs", "#pins", "#crank_sensor", "#sensors", "#cranking", "#coils", "#feeds.relay.0", "#standing", "#bus", "#wires",
    "#conditions",
  ]);
  for (const [at, lead] of leads.entries()) {
    await rows.nth(at).tap();
    await page.locator("section.card").waitFor();
    assert.equal(await page.evaluate(() => location.hash), lead);
    await page.waitForFunction(() => document.activeElement.id === "title");
    const heading = await page.locator("#title").boundingBox();
    const { top } = await room(page);
    assert.ok(heading.y >= top && heading.y < 320, `${lead}: its heading stands at ${heading.y}, below ${top}`);
    await page.getByRole("navigation", { name: "Questions" }).getByRole("link", { name: /^List/ }).tap();
    await page.locator(".list").waitFor();
  }
}));

test("the bar leads from card to card, forth to the last and back to the first", () => visit(async ({ page }) => {
  await demo(page);
  const all = await cards(page);
  assert.ok(all.length > 20, `${all.length} cards`);
  assert.equal(new Set(all).size, all.length, all.join());
  const back = [];
  for (;;) {
    back.unshift(await page.evaluate(() => location.hash.slice(1)));
    const cut = await page.locator("nav.bar a").evaluateAll(
      (links) => links.filter((it) => it.scrollWidth > it.clientWidth).map((it) => it.innerText),
    );
    assert.deepEqual(cut, [], "names that stick out of their places");
    const before = page.locator("nav.bar a.before");
    if (await before.count() === 0) break;
    const lead = await before.getAttribute("href");
    await before.tap();
    await page.waitForFunction((it) => location.hash === it && document.activeElement.id === "title", lead);
  }
  assert.deepEqual(back, all);
}));

async function tabTo(page, wanted, most = 150) {
  for (let presses = 0; presses < most; presses += 1) {
    await page.keyboard.press("Tab");
    if (await page.evaluate(wanted)) return;
  }
  assert.fail(`not reached by ${most} presses of Tab: ${wanted}`);
}

/** Goes on with Tab to what is called so, and presses it. */
async function pressBy(page, key, name, most) {
  await tabTo(page, `(document.activeElement.innerText ?? "").replace(/\\s+/g, " ").trim().match(${name})`, most);
  await page.keyboard.press(key);
}

test("by the keyboard alone: the mapping is typed, tested and found wrong", () => visit(async ({ page }) => {
  await tabTo(page, 'document.activeElement.matches(".start a")');
  await page.keyboard.press("Enter");
  for (const [path, text] of Object.entries(FOUR).slice(0, 2)) {
    await tabTo(page, `document.activeElement.id === "at-${path}"`);
    await page.keyboard.type(text);
  }
  await tabTo(page, 'document.activeElement.id === "also-at-channels.ignition_mode" && document.activeElement.tagName === "SELECT"');
  await page.keyboard.type("Coil per cylinder, fired once");
  assert.equal(await page.evaluate(() => document.activeElement.value), "sequential");
  // on by the bar: the ignition as planned, then the test at the car
  for (const title of ["Ignition", "Ignition, at the car"]) {
    await tabTo(page, 'document.activeElement.matches("nav.bar a.after")');
    await page.keyboard.press("Enter");
    await page.getByRole("heading", { name: title, exact: true, level: 1 }).waitFor();
    assert.equal(await focused(page), "title");
  }
  // channels 2 and 3 exchanged
  const wired = ["1", "4", "3", "2"];
  for (let tests = 0; await page.locator(".bench .ask").count(); tests += 1) {
    assert.ok(tests < 4, "more tests than cylinders");
    const asks = await page.locator(".bench .ask").innerText();
    const cylinder = wired[Number(/channel (\d+)/.exec(asks)[1]) - 1];
    await page.evaluate(() => document.getElementById("title").focus());
    await pressBy(page, tests % 2 ? "Enter" : "Space", `/^${cylinder}$/`);
    await page.waitForFunction((was) => document.querySelector(".bench .ask")?.innerText !== was, asks);
  }
  await page.locator(".verdict p", { hasText: /Wired wrong: \d of 4/ }).waitFor();
}));

test("by the keyboard alone: the demo is opened, a finding followed, a detail opened", () => visit(async ({ page }) => {
  await tabTo(page, 'document.activeElement.matches("nav.bar a[href=\\"#plans\\"]")');
  await page.keyboard.press("Enter");
  await page.waitForFunction(() => document.activeElement.id === "at-plans");
  await page.locator("details.plans[open]").waitFor();
  await pressBy(page, "Enter", "/^New, from the demo$/");
  await page.locator("#at-found ol").waitFor();
  await page.evaluate(() => { document.activeElement.blur(); scrollTo(0, 0); });
  await tabTo(page, 'document.activeElement.matches("#at-found ol a")');
  const goal = await page.evaluate(() => document.activeElement.getAttribute("href").slice(1));
  await page.keyboard.press("Enter");
  await page.locator("section.card").waitFor();
  const place = await field(page, goal).count() ? `at-${goal}` : "title";
  await page.waitForFunction((id) => document.activeElement.id === id, place);
  await tabTo(page, 'document.activeElement.matches("summary")');
  const isOpen = () => page.evaluate(() => document.activeElement.parentElement.open);
  const before = await isOpen();
  await page.keyboard.press("Enter");
  assert.equal(await isOpen(), !before);
}, DESK));

test("the first thing that the keyboard comes to skips what stands above the question", () => visit(async ({ page }) => {
  await demo(page);
  for (const address of ["list", "loads.0", "sheet"]) {
    await go(page, address);
    await page.evaluate(() => {
      document.activeElement.blur();
      // as on a page that was just loaded
      getSelection().removeAllRanges();
      document.body.setAttribute("tabindex", "-1");
      document.body.focus();
      document.body.removeAttribute("tabindex");
    });
    await page.keyboard.press("Tab");
    const skip = page.getByRole("button", { name: "Skip to the question" });
    assert.ok(await skip.evaluate((it) => document.activeElement === it), `${address}: the skip button is not the first`);
    const box = await skip.boundingBox();
    assert.ok(box.x >= 0 && box.y >= 0 && box.height >= 47.5, `${address}: it can't be seen: ${JSON.stringify(box)}`);
    await page.keyboard.press("Enter");
    assert.equal(await focused(page), "title");
    await page.keyboard.press("Tab");
    const inside = await page.evaluate(() => document.activeElement.closest("main, header") !== null);
    assert.ok(inside, `${address}: it does not lead to the question`);
  }
}));

for (const [size, options] of Object.entries({ PHONE, DESK })) {
  test(`where the keyboard stands is seen, and never behind the bar or the verdict: ${size}`, () => visit(async ({ page }) => {
    await demo(page);
    const bad = [];
    for (const address of ["list", "loads.0", "channels.coils_wired", "sheet"]) {
      await go(page, address);
      for (let presses = 0; presses < 60; presses += 1) {
        await page.keyboard.press(presses < 40 ? "Tab" : "Shift+Tab");
        const seen = await page.evaluate(() => {
          const it = document.activeElement;
          if (it === document.body) return null;
          const style = getComputedStyle(it);
          const box = it.getBoundingClientRect();
          const outlined = style.outlineStyle !== "none" && parseFloat(style.outlineWidth) >= 2;
          const behind = [...document.querySelectorAll("nav.bar, .line")].some((over) => {
            const other = over.getBoundingClientRect();
            const middle = document.elementFromPoint(box.x + box.width / 2, box.y + box.height / 2);
            return !over.contains(it) && over.contains(middle) && box.top >= other.top - 1 && box.bottom <= other.bottom + 1;
          });
          const inView = box.bottom > 0 && box.top < innerHeight;
          return outlined && !behind && inView ? null
            : `${it.tagName} ${it.id} ${it.innerText?.slice(0, 30)} outlined ${outlined} behind ${behind} in view ${inView}`;
        });
        if (seen) bad.push(`${address}: ${seen}`);
      }
    }
    assert.deepEqual(bad, []);
  }, options));
}
