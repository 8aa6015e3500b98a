// Four ways through a blank plan on a phone, by what is on the screen alone: how many taps, values and swipes each takes.
import { test } from "node:test";
import assert from "node:assert/strict";
import { plain, workshop } from "./fitter.mjs";

const visit = workshop();

/** What a walk may take: choices and presses; and the three first walks together, of moves up or down by a screen. */
const MOST_TAPS = 12;
const MOST_SWIPES = 3;

/** One hand, which sees the screen alone: it taps and types where it sees something, and swipes where it doesn't. */
class Hand {
  taps = 0;
  values = 0;
  swipes = 0;
  steps = [];

  constructor(page) {
    this.page = page;
  }

  /** The screen between the verdict in sight and the bar. */
  room() {
    return this.page.evaluate(() => {
      const line = document.querySelector(".line")?.getBoundingClientRect().bottom ?? 0;
      return { top: Math.max(0, line), bottom: document.querySelector("nav.bar").getBoundingClientRect().top };
    });
  }

  /** From where to where a thing goes, with what must be read to use it: the label of a field, what the bench asks. */
  extent(place) {
    return place.evaluate((it) => {
      const read = it.closest(".bench") ? it.closest(".bench").querySelector(".ask") : it.labels?.[0];
      const boxes = [it, read].filter(Boolean).map((each) => each.getBoundingClientRect());
      return { from: Math.min(...boxes.map((each) => each.top)), to: Math.max(...boxes.map((each) => each.bottom)) };
    });
  }

  /** Swipes until a thing is seen in full, by a screen at most each time; says where it is then. */
  async reach(place, name) {
    await place.waitFor({ state: "attached" });
    await this.settle();
    if (await place.evaluate((it) => it.closest("nav.bar, .line") !== null)) return place.boundingBox();
    for (let tries = 0; tries < 9; tries += 1) {
      const box = await place.boundingBox();
      assert.ok(box, `${name} is folded away`);
      const [{ from, to }, { top, bottom }] = [await this.extent(place), await this.room()];
      if (from >= top - 0.5 && to <= bottom + 0.5) return box;
      const screen = bottom - top;
      // what is looked for comes to rest at the top, so that what follows it is seen as well
      const by = Math.max(-screen, Math.min(screen, from - top - 8));
      await this.page.evaluate((it) => scrollBy(0, it), by);
      this.swipes += 1;
      this.steps.push(`swipe ${Math.round(by)} px to ${name}`);
      await this.settle();
    }
    return assert.fail(`${name} is not reached`);
  }

  /** What follows from a touch is drawn within two frames. */
  settle() {
    return this.page.evaluate(() => new Promise((done) => { requestAnimationFrame(() => requestAnimationFrame(done)); }));
  }

  /** Touches the middle of a thing, where it is on the screen. */
  async touch(place, name) {
    const box = await this.reach(place, name);
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    const meets = await place.evaluate((it, at) => {
      const met = document.elementFromPoint(at.x, at.y);
      return it === met || it.contains(met) || met?.contains(it) ? "" : met?.outerHTML.slice(0, 120) ?? "nothing";
    }, { x, y });
    assert.equal(meets, "", `${name} lies behind something`);
    await this.page.touchscreen.tap(x, y);
    await this.settle();
  }

  async tap(place, name) {
    await this.touch(place, name);
    this.taps += 1;
    this.steps.push(`tap ${name}`);
  }

  /** Follows a link or a button to the card of this title. */
  async to(title, place, name = title) {
    await this.tap(place, name);
    await this.page.getByRole("heading", { level: 1, name: title, exact: true }).waitFor();
    await this.settle();
  }

  /** A field by its label; of several of one label, the first. */
  field(label) {
    return this.page.getByLabel(label, { exact: true }).first();
  }

  async type(label, text) {
    const place = this.field(label);
    await this.touch(place, label);
    await this.page.keyboard.type(text);
    assert.equal(await place.inputValue(), text);
    this.values += 1;
    this.steps.push(`type ${text} for ${label}`);
  }

  async choose(label, option) {
    const place = this.field(label);
    await this.reach(place, label);
    await place.selectOption(option);
    this.taps += 1;
    this.steps.push(`choose ${option} for ${label}`);
    await this.settle();
  }

  /** A link of the list, by its question. */
  question(words) {
    return this.page.locator(".list a", { hasText: words });
  }

  /** The link of the bar to the next card. */
  get next() {
    return this.page.locator("nav.bar a.after");
  }

  get list() {
    return this.page.locator("nav.bar").getByRole("link", { name: /^List/ });
  }

  /** The verdict, as it stands on the screen without a swipe, with nothing over it. */
  async verdict() {
    await this.settle();
    const line = this.page.locator(".line");
    const box = await line.boundingBox();
    const { width, height } = this.page.viewportSize();
    assert.ok(box && box.x >= 0 && box.y >= 0 && box.x + box.width <= width && box.y + box.height <= height, JSON.stringify(box));
    const covered = await line.evaluate((it) => {
      const { left, top, right, bottom } = it.getBoundingClientRect();
      return [[left + 4, top + 4], [right - 4, top + 4], [left + 4, bottom - 6], [right - 4, bottom - 6], [(left + right) / 2, (top + bottom) / 2]]
        .filter(([x, y]) => !it.contains(document.elementFromPoint(x, y))).length;
    });
    assert.equal(covered, 0, "something lies over the verdict");
    return plain(await line.locator("b").innerText());
  }
}

let [walked, swipes] = [0, 0];

/** Walks on a blank plan, prints what it took, and holds it to that. */
const walk = (name, go, counted = true) => test(name, () => visit(async ({ page }) => {
  const hand = new Hand(page);
  await go(hand);
  console.log(`${name}: ${hand.values} values, ${hand.taps} taps, ${hand.swipes} swipes\n    ${hand.steps.join("; ")}`);
  assert.ok(hand.taps <= MOST_TAPS, `${hand.taps} taps`);
  if (counted) [walked, swipes] = [walked + 1, swipes + hand.swipes];
}));

const CHANNELS = /Which channel fires which cylinder/;

// Channels 2, 3 and 4 go round: what the bench must find. By the firing order they reach 1 5 3 6 2 4.
walk("a straight-six is mapped by taps at the car", async (hand) => {
  await hand.to("Engine", hand.question(CHANNELS));
  await hand.type("Cylinders", "6");
  await hand.type("Firing order", "1-5-3-6-2-4");
  await hand.choose("How the coils are fired", "sequential");
  await hand.to("Ignition", hand.next);
  await hand.to("Ignition, at the car", hand.next);
  const wired = ["1", "3", "6", "5", "2", "4"];
  const ask = hand.page.locator(".bench .ask");
  for (let tests = 0; await ask.count(); tests += 1) {
    assert.ok(tests < 6, "more tests than cylinders");
    const was = await ask.innerText();
    const cylinder = wired[Number(/channel (\d+)/.exec(was)[1]) - 1];
    await hand.tap(hand.page.locator(".bench").getByRole("button", { name: cylinder, exact: true }), `${cylinder} answers`);
    await hand.page.waitForFunction((it) => document.querySelector(".bench .ask")?.innerText !== it, was);
  }
  assert.match(await hand.verdict(), /Wired wrong: 3 of 6$/);
});

walk("injectors of 2.4 ohm on outputs of 3 A", async (hand) => {
  await hand.to("Injectors", hand.question(/carry the injectors/));
  await hand.type("Resistance of one injector at 20 °C", "2.4");
  await hand.type("Injectors on one output", "1");
  await hand.type("Current limit of one output", "3");
  assert.match(await hand.verdict(), /^Too much for the output, hot or cold$/);
});

walk("a grounded solenoid valve on a half-bridge", async (hand) => {
  await hand.to("Loads", hand.question(/May I connect this load/));
  await hand.to("Load 1 on output 1", hand.page.getByRole("button", { name: "Add a load" }), "Add a load");
  await hand.choose("Its other end goes to", "ground");
  await hand.choose("Kind of load", "solenoid");
  await hand.type("Name of the output", "P7");
  await hand.choose("Output type", "half-bridge");
  await hand.choose("What counts as on", "ground");
  assert.match(await hand.verdict(), /Don't connect it: live when off$/);
});

walk("a relay that is to pull in at 300 rpm", async (hand) => {
  await hand.to("Engine", hand.question(CHANNELS));
  await hand.type("Cylinders", "6");
  await hand.type("Firing order", "1-5-3-6-2-4");
  await hand.tap(hand.list, "List");
  await hand.to("Cranking and the coil relay", hand.question(/When does the relay pull in/));
  await hand.type("Cranking speed", "200");
  await hand.type("Threshold: relay on at", "300");
  assert.match(await hand.verdict(), /never pull/);
}, false);

test("the first three of these walks together take few swipes", () => {
  assert.equal(walked, 3, "one of them was not walked to its end");
  assert.ok(swipes <= MOST_SWIPES, `${swipes} swipes`);
});
