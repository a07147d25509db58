// The sheet of `linkmargin report`, used as a reader would use it, in Chromium.
//   LINKMARGIN=program CHROMIUM=browser node --test sheet_test.mjs
import assert from "node:assert/strict";
import { execFileSync, spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { after, before, test } from "node:test";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const folder = mkdtempSync(join(tmpdir(), "sheet-"));
const root = join(dirname(fileURLToPath(import.meta.url)), "..", "..");
const demo = join(root, "cases", "examples", "front-axle-us.yaml");
const digest = createHash("sha256").update(readFileSync(demo)).digest("hex");
const PICKED = "left post";
const HOSTILE = "</title></script><script>document.title='owned'</script><img src=x onerror=alert(1)>";

let browser;
let json;
let picked;

/// Exit statuses 0 and 1 are answers.
function linkmargin(...args) {
  const result = spawnSync(process.env.LINKMARGIN, args, { encoding: "utf8", maxBuffer: 1 << 26 });
  assert.ok(result.status === 0 || result.status === 1, result.stderr);
  return result.stdout;
}

before(async () => {
  linkmargin("report", demo, "-o", join(folder, "demo.html"), "--date", "2001-02-03");
  json = JSON.parse(linkmargin("check", demo, "--json", "-"));
  const text = readFileSync(join(root, "cases", "examples", "plain-frame.yaml"), "utf8");
  const hostile = join(folder, "hostile.yaml");
  writeFileSync(hostile, text.replace(/^title:.*$/m, `title: "${HOSTILE}"`));
  linkmargin("report", hostile, "-o", join(folder, "hostile.html"), "--pick", PICKED);
  picked = JSON.parse(linkmargin("pick", hostile, "--part", PICKED, "--json", "-"));
  browser = await chromium.launch({ executablePath: process.env.CHROMIUM, args: ["--no-sandbox"] });
});

after(async () => {
  await browser?.close();
  rmSync(folder, { recursive: true, force: true });
});

/// Opens a sheet; whatever it asks the network for or complains of fails the test.
async function opened(t, name = "demo.html", options = {}) {
  const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, ...options });
  const page = await context.newPage();
  const complaints = [];
  page.on("console", (m) => { if (m.type() === "error" || m.type() === "warning") complaints.push(m.text()); });
  page.on("pageerror", (e) => complaints.push(String(e)));
  page.on("request", (r) => { if (!r.url().startsWith("file:") || !r.url().endsWith(name)) complaints.push(`request: ${r.url()}`); });
  page.on("dialog", (d) => { complaints.push("dialog"); d.dismiss(); });
  await page.goto(`file://${join(folder, name)}`);
  t.after(async () => {
    await context.close();
    assert.deepEqual(complaints, []);
  });
  return page;
}

const drawn = (page) => page.locator("#drawing").innerHTML();
/// What is drawn once it differs from `before`.
async function redrawn(page, before) {
  for (let tries = 0; tries < 200; ++tries) {
    const now = await drawn(page);
    if (now !== before) return now;
    await page.waitForTimeout(50);
  }
  throw new Error("the drawing stayed as it was");
}

test("the drawing turns with the mouse and with the keyboard, and goes back", async (t) => {
  const page = await opened(t);
  const first = await drawn(page);
  const box = await page.locator("#drawing").boundingBox();
  await page.mouse.move(box.x + 200, box.y + 150);
  await page.mouse.down();
  await page.mouse.move(box.x + 320, box.y + 190, { steps: 4 });
  await page.mouse.up();
  const turned = await redrawn(page, first);
  await page.locator("#drawing").focus();
  await page.keyboard.press("ArrowLeft");
  const again = await redrawn(page, turned);
  await page.keyboard.press("+");
  const nearer = await redrawn(page, again);
  await page.keyboard.press("0");
  assert.equal(await redrawn(page, nearer), first);
});

test("a finger turns it too", async (t) => {
  const page = await opened(t, "demo.html", { viewport: { width: 390, height: 800 }, hasTouch: true, isMobile: true });
  const first = await drawn(page);
  await page.evaluate(() => {
    const svg = document.getElementById("drawing");
    const at = (type, x) => svg.dispatchEvent(new PointerEvent(type, { pointerId: 1, pointerType: "touch", clientX: x, clientY: 200, bubbles: true }));
    svg.setPointerCapture = () => {};
    at("pointerdown", 100); at("pointermove", 160); at("pointerup", 160);
  });
  await redrawn(page, first);
});

test("a load case brings its forces, its deformed shape with the magnification, its buckling shapes", async (t) => {
  const page = await opened(t);
  const first = await drawn(page);
  await page.selectOption("#choose-case", { label: "hard stop" });
  const forces = await redrawn(page, first);
  assert.match(forces, /class="act"/);
  await page.selectOption("#choose-shape", "moved");
  const moved = await redrawn(page, forces);
  assert.match(moved, /class="ghost"/);
  assert.match(await page.locator("#said").innerText(), /magnified [\d.,]+ times/);
  await page.selectOption("#choose-shape", "0");
  await redrawn(page, moved);
  const factor = json.solved.filter((s) => s.load_case === "hard stop").flatMap((s) => s.critical.map((c) => c.factor));
  const shown = Number((await page.locator("#said").innerText()).match(/at ([\d.]+) times/)[1]);
  assert.ok(factor.some((f) => Math.abs(f - shown) < 0.006 * f), `${shown} of ${factor}`);
});

test("a click on a part shows what governs it", async (t) => {
  const page = await opened(t);
  const index = await page.evaluate(() => JSON.parse(document.getElementById("drawing-data").textContent).pieces.findIndex((p) => p.part === "brace"));
  // Somewhere on it that nothing hides.
  const spot = await page.evaluate((i) => {
    for (const face of document.querySelectorAll(`#drawing [data-piece="${i}"]`)) {
      const b = face.getBoundingClientRect();
      const x = b.x + b.width / 2, y = b.y + b.height / 2;
      if (document.elementFromPoint(x, y) === face) return [x, y];
    }
    return null;
  }, index);
  assert.ok(spot);
  await page.mouse.click(...spot);
  const brief = page.locator(".brief.chosen");
  assert.equal(await brief.count(), 1);
  assert.match(await brief.innerText(), /brace/);
  const worst = json.findings.find((f) => f.part === "brace");
  assert.equal(Number(await brief.locator("[data-utilization]").getAttribute("data-utilization")), worst.utilization);
});

test("a cell of the map shows its part in its load case", async (t) => {
  const page = await opened(t);
  const cell = page.locator('.heat button[aria-label^="brace, hard stop: "]');
  const first = await drawn(page);
  await cell.focus();
  await page.keyboard.press("Enter");
  await redrawn(page, first);
  assert.equal(await cell.getAttribute("aria-pressed"), "true");
  assert.equal(await page.locator('.heat button[aria-pressed="true"]').count(), 1);
  assert.match(await page.locator(".brief.chosen").innerText(), /brace/);
  assert.match(await page.locator("#said").innerText(), /^hard stop; /);
  // The map is one stop of the Tab key; arrow keys go from cell to cell.
  assert.equal(await page.locator('.heat button[tabindex="0"]').count(), 1);
  await page.keyboard.press("ArrowRight");
  assert.match(await page.evaluate(() => document.activeElement.getAttribute("aria-label")), /^brace, (?!hard stop: )/);
});

test("pieces of one part are told apart by their names", async (t) => {
  const page = await opened(t);
  const names = await page.evaluate(() => JSON.parse(document.getElementById("drawing-data").textContent).pieces.filter((p) => p.part === "arm, left").map((p) => p.name));
  assert.ok(names.length > 1);
  const first = await drawn(page);
  await page.selectOption("#choose-piece", { label: `arm, left, ${names[1]}` });
  await redrawn(page, first);
  assert.deepEqual((await page.locator("#drawing .piece-name").allTextContents()).sort(), [...names].sort());
  assert.equal(await page.locator("#drawing .piece-name.only").textContent(), names[1]);
  assert.match(await page.locator("#said").innerText(), new RegExp(`Chosen: ${names[1]}`));
});

test("the chart of sizes holds the numbers of pick", async (t) => {
  const page = await opened(t, "hostile.html");
  const points = await page.locator(".pick-chart [data-mass]").evaluateAll((all) => all.map((e) => [Number(e.dataset.mass), Number(e.dataset.utilization), e.getAttribute("class")]));
  assert.ok(points.length > 3);
  for (const tried of picked.tried) {
    const own = points.find(([mass, u]) => Math.abs(mass - tried.mass_per_length_kg_m) < 1e-9 * mass && Math.abs(u - tried.utilization) < 1e-9);
    assert.ok(own, JSON.stringify(tried).slice(0, 300));
    assert.equal(own[2], tried.verdict.startsWith("within") ? "passes" : "fails");
  }
});

test("the whole file is small enough to mail", () => {
  assert.ok(statSync(join(folder, "demo.html")).size < 1e6);
});

test("everything can be reached and chosen by keyboard", async (t) => {
  const page = await opened(t);
  await page.locator("#choose-case").focus();
  const first = await drawn(page);
  await page.keyboard.press("ArrowDown");
  await redrawn(page, first);
  const button = page.locator('#parts button[data-choose="lateral_link"]');
  await button.focus();
  await page.keyboard.press("Enter");
  assert.match(await page.locator(".brief.chosen").innerText(), /lateral link/);
  const reached = new Set();
  for (let i = 0; i < 40; ++i) {
    await page.keyboard.press("Tab");
    reached.add(await page.evaluate(() => document.activeElement.id));
  }
  for (const id of ["choose-piece", "diagram-case"]) assert.ok(reached.has(id), id);
});

test("diagrams follow the part and the load case", async (t) => {
  const page = await opened(t);
  await page.selectOption("#choose-piece", { label: "lateral link" });
  await page.selectOption("#diagram-case", { label: "hard stop" });
  const straight = await page.locator("#diagrams").innerText();
  await page.selectOption("#diagram-case", { label: "hard corner, turning left" });
  const corner = await page.locator("#diagrams").innerText();
  assert.notEqual(straight, corner);
  // N at the ends of the link is what the JSON says acts on them, in some stiffness set.
  const [low, high] = corner.match(/N (-?[\d,.]+) to (-?[\d,.]+) lbf/).slice(1).map((x) => Number(x.replaceAll(",", "")));
  const ends = json.solved.filter((s) => s.load_case === "hard corner, turning left")
    .map((s) => s.pieces.find((p) => p.part === "lateral_link").end_b.force_N[0] / 4.4482216152605);
  assert.ok(ends.some((n) => n > low - 0.01 * Math.abs(low) && n < high + 0.01 * Math.abs(high)), `${ends} not in ${low}..${high}`);
});

test("the numbers are those of the JSON", async (t) => {
  const page = await opened(t);
  const findings = await page.locator(".finding").evaluateAll((all) => all.map((e) => {
    const of = (name) => e.querySelector(`[data-${name}]`)?.getAttribute(`data-${name}`);
    return { utilization: of("utilization"), "safety-factor": of("safety-factor"), demand: of("demand"), capacity: of("capacity"), text: e.innerText };
  }));
  assert.equal(findings.length, json.findings.length);
  json.findings.forEach((f, i) => {
    const shown = findings[i];
    if (f.utilization !== "unset") assert.equal(Number(shown.utilization), f.utilization);
    if (f.safety_factor !== "unset") assert.equal(Number(shown["safety-factor"]), f.safety_factor);
    if (shown.demand !== undefined) assert.equal(Number(shown.demand), f.demand);
    if (shown.capacity !== undefined) assert.equal(Number(shown.capacity), f.capacity);
    for (const line of f.worked) assert.ok(shown.text.includes(line.text), line.text);
    if (f.source) assert.ok(shown.text.includes(f.source), f.source);
  });
  const verdict = await page.locator("#verdict-head").innerText();
  assert.equal(verdict, { "over the limit": "OVER", "not decided": "NOT DECIDED" }[json.verdict] ?? "WITHIN THE LIMITS CHECKED");
  // Of each part the largest in the map of load cases is that of its finding.
  const map = await page.locator(".heat tbody tr").evaluateAll((rows) => rows.map((r) => [r.querySelector("th").innerText,
    Math.max(...[...r.querySelectorAll("[data-utilization]")].map((c) => Number(c.dataset.utilization)))]));
  for (const [part, largest] of map) {
    const worst = json.findings.find((f) => f.part.replaceAll("_", " ") === part);
    assert.ok(Math.abs(largest - worst.utilization) < 0.05 * worst.utilization, `${part}: ${largest}, ${worst.utilization}`);
  }
});

for (const [scheme, width] of [["light", 1280], ["dark", 1280], ["light", 390], ["dark", 390]]) {
  test(`nothing for axe to find, ${scheme}, ${width} px wide`, async (t) => {
    const page = await opened(t, "demo.html", { viewport: { width, height: 900 }, colorScheme: scheme });
    await page.evaluate(axe);
    const result = await page.evaluate(() => globalThis.axe.run(document, { resultTypes: ["violations"] }));
    assert.deepEqual(result.violations.map((v) => `${v.id}: ${v.nodes[0].html.slice(0, 200)} ${v.nodes[0].failureSummary}`), []);
    const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    assert.equal(over, 0, "wider than the screen");
  });
}

test("nothing for axe to find beside a chart of sizes", async (t) => {
  const page = await opened(t, "hostile.html");
  await page.evaluate(axe);
  const result = await page.evaluate(() => globalThis.axe.run(document.getElementById("pick"), { resultTypes: ["violations"] }));
  assert.deepEqual(result.violations.map((v) => `${v.id}: ${v.nodes[0].html.slice(0, 200)}`), []);
});

test("a hostile title stays text", async (t) => {
  const page = await opened(t, "hostile.html");
  assert.equal(await page.locator("h1").innerText(), HOSTILE);
  assert.ok((await page.title()).includes(HOSTILE));
  assert.equal(await page.locator("img").count(), 0);
});

test("without its script the drawing and every finding are there", async (t) => {
  const page = await opened(t, "demo.html", { javaScriptEnabled: false });
  assert.ok(await page.locator("#drawing path").count() > 50);
  for (const brief of await page.locator(".brief").all()) assert.ok(await brief.isVisible());
});

test("in print no row of a table is cut, and the pages carry title and number", async (t) => {
  const page = await opened(t);
  const rows = await page.evaluate(() => {
    const all = [...document.querySelectorAll("tr")];
    all.forEach((row, i) => {
      const cell = row.cells[0];
      cell.style.position = "relative";
      const mark = (text, style) => {
        const e = document.createElement("span");
        e.textContent = text;
        e.style.cssText = `position:absolute;left:0;font-size:2px;line-height:2px;${style}`;
        cell.append(e);
      };
      mark(`top${i}x`, "top:0");
      mark(`end${i}x`, "bottom:0");
    });
    return all.length;
  });
  const pdf = join(folder, "demo.pdf");
  await page.pdf({ path: pdf, format: "Letter", preferCSSPageSize: false });
  const pages = execFileSync("pdftotext", [pdf, "-"], { encoding: "utf8", maxBuffer: 1 << 26 }).split("\f").filter((p) => p.trim());
  assert.ok(pages.length > 3);
  const pageOf = (mark) => pages.findIndex((p) => p.includes(mark));
  let seen = 0;
  for (let i = 0; i < rows; ++i) {
    const top = pageOf(`top${i}x`);
    if (top < 0) continue;
    ++seen;
    assert.ok(pages[top].includes(`end${i}x`), `row ${i} is cut on page ${top + 1}`);
  }
  assert.ok(seen > 0.95 * rows, `${seen} of ${rows}`);
  pages.forEach((p, i) => assert.ok(p.includes(`page ${i + 1} of ${pages.length}`), `page ${i + 1}`));
  for (const [i, p] of pages.entries()) {
    for (const words of ["front axle on radius arms", "2001-02-03 - input ", digest.slice(0, 16)]) {
      assert.ok(p.includes(words), `${words} on page ${i + 1}`);
    }
  }
});
