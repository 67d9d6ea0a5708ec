// The page of a lesson: the slider moves curves, sentences and what is heard together, and every curve is that of the table.
import { readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { DESK, PHONE, words } from "./look.mjs";

// the numbers of curves.csv by step
const table = (file) => {
  const text = readFileSync(join(dirname(file), "curves.csv"), "utf8");
  const [head, ...lines] = text.trim().split("\n").map((line) => line.split(","));
  const steps = new Map();
  for (const [step, ...cells] of lines) {
    if (!steps.has(step)) steps.set(step, []);
    steps.get(step).push(cells.map(Number));
  }
  return { traces: head.slice(2), steps };
};
// the points of a path, back in days and values; near is what a tenth of a unit of the drawing may hide
const drawn = (page) => page.evaluate(() => {
  const data = JSON.parse(document.getElementById("data").textContent), found = {};
  document.querySelectorAll(".plot").forEach((plot, place) => {
    const { low, high } = data.panels[place], long = data.last - data.first;
    for (const path of plot.querySelectorAll("[data-curve]")) {
      const points = path.getAttribute("d").slice(1).split("L").map((two) => two.split(" ").map(Number));
      found[path.dataset.curve] = {
        near: { day: (0.06 * long) / 1000, value: (0.06 * (high - low)) / 400 },
        points: points.map(([x, y]) => [data.first + (x * long) / 1000, high - (y * (high - low)) / 400]),
      };
    }
  });
  return { found, label: document.getElementById("step-words").textContent };
});
const equalsTable = async (look, page, { traces, steps }) => {
  const { found, label } = await drawn(page);
  const rows = steps.get(label) ?? [];
  look.must(rows.length > 0, "no rows of " + label + " in curves.csv");
  look.must(Object.keys(found).length === traces.length, label + ": not every curve of curves.csv is drawn");
  for (const [trace, { near, points }] of Object.entries(found)) {
    look.must(points.length === rows.length, label + ": " + points.length + " points drawn, " + rows.length + " in curves.csv");
    const off = points.find(([day, value], i) => !rows[i] ||
      Math.abs(day - rows[i][0]) > near.day + 5e-5 || Math.abs(value - rows[i][1 + Number(trace)]) > near.value);
    look.must(!off, label + ": " + traces[trace] + " is not that of curves.csv near day " + off?.[0]);
  }
};
const marksApart = async (look, page, where) => {
  const hit = await page.evaluate(() => [...document.querySelectorAll(".canvas")].some((canvas) => {
    const boxes = [...canvas.querySelectorAll(".mark")].map((mark) => mark.getBoundingClientRect());
    return boxes.some((a, i) => boxes.slice(i + 1).some((b) =>
      a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom));
  }));
  look.must(!hit, where + ": marks lie over each other");
};
// words under the axis of time neither meet nor leave the page
const daysApart = async (look, page, where) => {
  const hit = await page.evaluate(() => [...document.querySelectorAll(".canvas")].some((canvas) => {
    const shown = [...canvas.querySelectorAll(".x")].filter((word) => getComputedStyle(word).display !== "none");
    const boxes = shown.map((word) => word.getBoundingClientRect());
    return boxes.length < 2 || boxes.some((a) => a.left < 0 || a.right > document.documentElement.clientWidth) ||
      boxes.some((a, i) => boxes.slice(i + 1).some((b) =>
        a.left < b.right + 2 && b.left < a.right + 2 && a.top < b.bottom && b.top < a.bottom));
  }));
  look.must(!hit, where + ": words under the axis of time meet, or are cut");
};

const stepsByKeyboard = async (look, page, own) => {
  const count = Number(await page.getAttribute("#step", "max"));
  look.must(own.steps.size === count + 1, "curves.csv has another number of steps");
  await page.focus("#step");
  await page.keyboard.press("Home");
  let [label, told] = ["", ""];
  for (let step = 0; step <= count; step++) {
    const [now, result] = [await words(page, "#step-words"), await words(page, "#told")];
    look.must(now !== label && result !== told, "the arrow key does not move step " + step);
    look.must((await page.getAttribute("#step", "aria-valuetext")) === now, now + ": the slider does not say its step");
    const heard = await page.locator(".plot desc").allTextContents();
    look.must(heard.every((one) => one.includes(now) && /\d/.test(one)), now + ": a curve is not told in words");
    [label, told] = [now, result];
    await equalsTable(look, page, own);
    await marksApart(look, page, now);
    await page.keyboard.press("ArrowRight");
  }
};
const valuesAreRead = async (look, page) => {
  const before = await words(page, "#reading");
  await page.focus("#day");
  await page.keyboard.press("ArrowRight");
  look.must((await words(page, "#reading")) !== before, "the day is not moved by keyboard");
  const day = await words(page, "#day-words");
  const canvas = page.locator(".canvas").first();
  await canvas.scrollIntoViewIfNeeded();
  await canvas.hover({ position: { x: 40, y: 60 } });
  look.must((await words(page, "#day-words")) !== day, "pointing reads nothing");
  await page.mouse.move(5, 5);
  look.must((await words(page, "#day-words")) === day, "the day of interest is lost after pointing");
};
const onPaper = async (look, page) => {
  await look.isWholeOnPaper(page);
  look.must(!(await page.locator("#controls").isVisible()), "sliders are printed");
  look.must(await page.locator("#print-step").isVisible(), "paper does not say which step it shows");
};
const byTouch = async (look, page) => {
  const label = await words(page, "#step-words");
  await page.locator("#step").scrollIntoViewIfNeeded();
  const box = await page.locator("#step").boundingBox();
  const at = Number(await page.inputValue("#step")), most = Number(await page.getAttribute("#step", "max"));
  await page.touchscreen.tap(box.x + (at < most / 2 ? 0.97 : 0.03) * box.width, box.y + box.height / 2);
  look.must((await words(page, "#step-words")) !== label, "touch does not move the slider");
};

export const lesson = async (look) => {
  const own = table(look.file);
  await look.visit({ ...DESK, reducedMotion: "reduce" }, async (page) => {
    await look.shot(page, "light");
    await look.isAccessible(page, "light");
    await look.fits(page, "light");
    await look.isTold(page, "light");
    await look.isWalkedByKeys(page);
    await daysApart(look, page, "light");
    const moves = await page.evaluate(() => getComputedStyle(document.querySelector(".mark")).transitionDuration);
    look.must(moves === "0s", "marks move though motion is to be reduced");
    await stepsByKeyboard(look, page, own);
    await valuesAreRead(look, page);
    await onPaper(look, page);
  });
  await look.visit({ ...DESK, colorScheme: "dark" }, async (page) => {
    await look.shot(page, "dark");
    await look.isAccessible(page, "dark");
  });
  await look.visit(PHONE, async (page) => {
    await look.fits(page, "phone");
    await look.shot(page, "phone");
    await byTouch(look, page);
    await marksApart(look, page, "phone");
    await daysApart(look, page, "phone");
    await look.fits(page, "phone, moved");
    await look.shot(page, "phone-view", false);
    await look.isAccessible(page, "phone");
  });
  await look.visit({ ...PHONE, colorScheme: "dark", javaScriptEnabled: false }, async (page) => {
    await look.shot(page, "phone-dark-no-script");
    look.must((await page.locator("[data-curve]").first().getAttribute("d"))?.length > 50, "without script no curve");
    look.must(!(await page.locator("#controls").isVisible()), "without script there are dead sliders");
  });
};
