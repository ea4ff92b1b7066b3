import { mkdtempSync, readFileSync, rmSync, statSync } from "node:fs";
import { mkdir, readFile, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import type { Page } from "playwright-core";
import { expect, it, onTestFinished } from "vitest";
import { figurePng } from "../../src/figures/svg/figurePng.js";
import { unzip } from "../../src/lab/sheet/zip.js";
import type { StudyResult } from "../../src/study/studyResult.js";
import SPANISH from "../../src/words/es.json" with { type: "json" };
import { chromiumOrSkip } from "../report/chromium.js";
import { runCli } from "../support/runCli.js";
import { copyStudy, EXAMPLES } from "../support/studyCopy.js";
import { type OpenPage, openPage, pageFile } from "./browser.js";

const share = (page: Page, index: number) => page.locator(`#share-${index}`).inputValue();
const shares = async (page: Page) =>
  Promise.all([0, 1, 2, 3].map(async (index) => Number(await share(page, index))));

/** A saved folder, unpacked until the test ends. */
async function unpacked(zip: string) {
  const { files } = await unzip(new Uint8Array(await readFile(zip)), () => true);
  const folder = mkdtempSync(join(tmpdir(), "loambook-saved-"));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  for (const [path, bytes] of files!) {
    await mkdir(dirname(join(folder, path)), { recursive: true });
    await writeFile(join(folder, path), bytes);
  }
  return { folder, text: (path: string) => new TextDecoder().decode(files!.get(path)) };
}

/** What a page shows in a moment, also on a machine that has much else to do. */
const soon = <T>(read: () => Promise<T> | T) => expect.poll(read, { timeout: 20_000 });

let opened: OpenPage | undefined;

/** One page of the reading room, with the mix that it opens with, for tests that only change the mix. */
async function readingRoom(): Promise<OpenPage> {
  opened ??= await openPage("reading-room");
  await opened.page.click("#tab-mix");
  if (await opened.page.isEnabled("#reset")) await opened.page.click("#reset");
  expect(await shares(opened.page)).toEqual([54.9, 13.2, 0, 31.9]);
  await opened.page.waitForSelector("#bucket-body .pail");
  return opened;
}

it("is one file under 4 MB that opens without a request and without a complaint", async (context) => {
  chromiumOrSkip(context);
  const file = await pageFile("reading-room");
  expect(statSync(file).size).toBeLessThan(4 * 1024 * 1024);
  const { page, requests, complaints, address } = await openPage("reading-room");
  for (const tab of ["sheets", "class", "keep", "mix"]) await page.click(`#tab-${tab}`);
  expect(await page.getByRole("note").first().textContent()).toContain("invented");
  expect(await page.locator("footer").textContent()).toContain("Nothing here is an approval");
  expect(requests).toEqual([address]);
  expect(complaints).toEqual([]);
  const policy = await page.locator("meta[http-equiv]").getAttribute("content");
  expect(policy).toContain("default-src 'none'");
  expect(policy).not.toContain("unsafe");
});

it("is tuned with the keyboard alone: slider, lock, solver, undo, redo, reset", async (context) => {
  chromiumOrSkip(context);
  const { page, complaints } = await readingRoom();
  const before = await shares(page);
  expect(before).toEqual([54.9, 13.2, 0, 31.9]);
  await page.focus("#share-3");
  await page.keyboard.press("Tab");
  // Behind the number of the gravel comes its lock.
  await page.keyboard.press("Space");
  await page.focus("#share-0-slider");
  for (let step = 0; step < 4; step++) await page.keyboard.press("ArrowLeft");
  const moved = await shares(page);
  expect(moved[3]).toBe(31.9);
  expect(moved[0]).toBeLessThan(54);
  expect(moved.reduce((sum, value) => sum + value, 0)).toBeCloseTo(100, 1);
  await soon(() => page.locator("#live").textContent()).toContain("Site soil, two pits mixed 5");
  // The clay, which also stands as what passes 0.002 mm.
  expect(await page.locator("#live").textContent()).toContain("Outside the guidance: 1 line.");
  await page.keyboard.press("Control+z");
  expect(await shares(page)).toEqual(before);
  await page.keyboard.press("Control+y");
  expect(await shares(page)).toEqual(moved);
  await page.focus("[data-wish=target]");
  await page.keyboard.press("Enter");
  const solved = await shares(page);
  expect(solved[0]).toBeCloseTo(54.9, 1);
  await page.focus("#reset");
  await page.keyboard.press("Enter");
  expect(await shares(page)).toEqual(before);
  expect(complaints).toEqual([]);
});

it("is tuned by dragging and by touch; the recipe goes where the blend was not tested", async (context) => {
  chromiumOrSkip(context);
  const { page } = await readingRoom();
  expect(await page.locator("#bucket-body .pail").count()).toBeGreaterThan(5);
  const slider = page.locator("#share-0-slider");
  await slider.scrollIntoViewIfNeeded();
  const box = (await slider.boundingBox())!;
  const at = (part: number) => [box.x + box.width * part, box.y + box.height / 2] as const;
  await page.mouse.move(...at(0.549));
  await page.mouse.down();
  await page.mouse.move(...at(0.45), { steps: 8 });
  await page.mouse.up();
  await page.waitForSelector("#bucket-body .reason");
  expect(await page.locator("#bucket-body").textContent()).toContain("was not tested");
  expect(await page.locator("#bucket-body .pail").count()).toBe(0);
  expect(await page.locator("#strength-words").count()).toBe(0);
  // The whole drag is one step.
  await page.click("#undo");
  expect(await share(page, 0)).toBe("54.9");
  await page.waitForSelector("#bucket-body .pail");

  const phone = await openPage("reading-room", {
    viewport: { width: 390, height: 844 },
    hasTouch: true,
    isMobile: true,
  });
  const cement = phone.page.locator("#cement-slider");
  await cement.scrollIntoViewIfNeeded();
  const place = (await cement.boundingBox())!;
  await phone.page.touchscreen.tap(place.x + place.width * 0.8, place.y + place.height / 2);
  expect(Number(await phone.page.inputValue("#cement"))).toBeGreaterThan(8);
  expect(await phone.page.locator("#strength-words").textContent()).toContain("reached");
  expect(phone.complaints).toEqual([]);
});

it("says that a requirement is not reached, and gives no recipe then", async (context) => {
  chromiumOrSkip(context);
  const { page } = await readingRoom();
  await page.fill("#cement", "4.5");
  await page.keyboard.press("Enter");
  expect(await page.locator("#strength-words").textContent()).toContain("not reached");
  await page.waitForSelector("#bucket-body .reason");
  expect(await page.locator("#bucket-body").textContent()).toContain("So there is no recipe.");
  await page.fill("#cement", "2");
  await page.keyboard.press("Enter");
  expect(await page.locator(".verdict .reason").textContent()).toContain(
    "No blocks were made with 2 % cement",
  );
});

it("leaves alone what is being typed while the recipe follows", async (context) => {
  chromiumOrSkip(context);
  const { page } = await openPage("reading-room");
  await page.click(".target-box summary");
  const limit = page.locator(".target-box tbody input").nth(1);
  for (const [box, typed] of [
    [page.locator("#cement"), "6.7"],
    [limit, "29"],
  ] as const) {
    await page.fill("#share-0", typed === "29" ? "55.2" : "55.5");
    await page.keyboard.press("Enter");
    await box.fill(typed);
    // The recipe follows after 120 ms, and with it everything is shown anew.
    await page.waitForTimeout(500);
    expect(await box.inputValue()).toBe(typed);
    await page.keyboard.press("Enter");
    await page.click("#undo");
    expect(await box.inputValue()).not.toBe(typed);
    await page.click("#redo");
    expect(await box.inputValue()).toBe(typed);
  }
  // What is no number does not stay.
  await page.fill("#cement", "");
  await page.keyboard.press("Enter");
  expect(await page.inputValue("#cement")).toBe("6.7");
  // Nor what the blend cannot have.
  const exponent = await page.inputValue("#exponent");
  await page.fill("#exponent", "2");
  await page.keyboard.press("Enter");
  expect(await page.inputValue("#exponent")).toBe(exponent);
  await limit.fill("290");
  await page.keyboard.press("Enter");
  expect(await limit.inputValue()).toBe("29");
});

it("saves a study folder that the command line computes to the same digits", async (context) => {
  chromiumOrSkip(context);
  const { page } = await openPage("reading-room");
  await page.fill("#share-0", "55.5");
  await page.keyboard.press("Enter");
  await page.fill("#cement", "6.7");
  await page.keyboard.press("Enter");
  await page.fill("#exponent", "0.27");
  await page.keyboard.press("Enter");
  await page.waitForTimeout(400);
  await page.click("#tab-keep");
  const pictures: Buffer[] = [];
  page.on("download", async (download) => {
    if (download.suggestedFilename().endsWith(".png")) {
      pictures.push(await readFile(await download.path()));
    }
  });
  await page.click("#save-png");
  await soon(() => pictures.length).toBe(2);
  // Width and height stand in the head of a PNG file.
  for (const png of pictures) expect(png.readUInt32BE(16)).toBe(1800);
  const [csv] = await Promise.all([page.waitForEvent("download"), page.click("#save-csv")]);
  const numbers = await readFile(await csv.path(), "utf8");
  const [zip] = await Promise.all([page.waitForEvent("download"), page.click("#save-zip")]);
  const { folder, text } = await unpacked(await zip.path());
  const run = await runCli(["compute", folder, "--json"]);
  expect(run.stderr).toBe("");
  const result = JSON.parse(run.stdout) as StudyResult;
  expect(result.testing?.state).toBe("tested");
  expect(result.mix?.recipe.cementPct).toBe(6.7);
  expect(result.config.target).toEqual({ kind: "power", exponent: 0.27, topSizeMm: 20 });
  // What the page computed of these files is the same, byte by byte.
  expect(run.stdout).toBe(text("result.json"));
  expect(numbers).toContain("The mix on the bench");
  expect(numbers).toContain("6.70");
});

it("shows what was seen on trial blocks with photographs that fit, and saves them with the folder", async (context) => {
  chromiumOrSkip(context);
  const { folder, write } = copyStudy("two-blends");
  // Grains as a camera sees them: nothing that shrinks well, from three blocks.
  const grains = Array.from({ length: 9000 }, (_, index) => {
    const [x, y, grey] = [(index * 7919) % 1600, (index * 104_729) % 1200, (index * 31) % 256];
    return `<rect x="${x}" y="${y}" width="9" height="7" fill="rgb(${grey},${(grey * 3) % 256},60)"/>`;
  });
  const picture = figurePng(
    `<svg xmlns="http://www.w3.org/2000/svg" width="1600" height="1200">${grains.join("")}</svg>`,
    1,
  );
  for (const block of ["L1", "L2", "L3"]) write(`${block}.png`, picture);
  write(
    "sheets/more-sand-looks.csv",
    "# Invented data\nblock,texture,photograph\nL1,open,L1.png\nL2,fine,L2.png\nL3,<b>bold</b>,L3.png\n",
  );
  expect(statSync(await pageFile(folder)).size).toBeLessThan(4 * 1024 * 1024);
  const { page, complaints, requests } = await openPage(folder);
  const looks = page.locator(".looks");
  expect(await looks.textContent()).toContain("nothing of it is judged here");
  expect(await looks.textContent()).toContain("<b>bold</b>");
  const widths = () =>
    looks
      .locator("img")
      .evaluateAll((all) => all.map((each) => (each as HTMLImageElement).naturalWidth));
  await soon(widths).toEqual([420, 420, 420]);
  expect(await looks.locator("img").first().getAttribute("alt")).toBe("Blend with more sand, L1");
  await page.click("#tab-keep");
  const [zip] = await Promise.all([page.waitForEvent("download"), page.click("#save-zip")]);
  const saved = await unpacked(await zip.path());
  expect((await runCli(["compute", saved.folder, "--json"])).stdout).toBe(
    saved.text("result.json"),
  );
  expect(requests.filter((address) => !address.startsWith("blob:")).length).toBe(1);
  expect(complaints).toEqual([]);
});

it("keeps the mix over a reload and in a link, and sheets only where it was asked to", async (context) => {
  chromiumOrSkip(context);
  const { page, address } = await openPage("reading-room");
  await page.fill("#share-0", "60");
  await page.keyboard.press("Enter");
  await soon(() => page.url()).toContain("#mix=");
  const before = await shares(page);
  const { hash } = new URL(page.url());
  // The way to it, the mix kept aside and what the reader chose outlive a reload too, stored nowhere.
  await page.click("#keep");
  await page.fill("#cement", "7");
  await page.keyboard.press("Enter");
  await page.selectOption("#units", "US");
  await page.selectOption("#light", "dark");
  await page.reload();
  await page.waitForSelector("html[data-ready]");
  expect(await shares(page)).toEqual(before);
  expect(await page.locator("html").getAttribute("data-light")).toBe("dark");
  expect(await page.inputValue("#units")).toBe("US");
  expect(await page.inputValue("#cement")).toBe("7");
  expect(await page.locator("#bucket-body").textContent()).toContain("Beside the kept mix");
  await page.click("#undo");
  expect(await page.inputValue("#cement")).not.toBe("7");
  await page.click("#undo");
  expect(await share(page, 0)).toBe("54.9");
  await page.click("#redo");
  expect(await shares(page)).toEqual(before);
  const other = await openPage("reading-room", {}, hash);
  expect(await shares(other.page)).toEqual(before);
  expect(await other.page.locator("#swap").isHidden()).toBe(true);
  // A link that is spoilt changes nothing; one that is put into the address of an open page is taken as a step.
  const next = await openPage("reading-room", {}, "#mix=%5B%5B60,60%5D");
  expect(await share(next.page, 0)).toBe("54.9");
  await next.page.evaluate((link) => {
    location.hash = link;
  }, hash);
  await soon(() => shares(next.page)).toEqual(before);
  await next.page.click("#undo");
  expect(await share(next.page, 0)).toBe("54.9");
  expect(await page.evaluate("localStorage.length")).toBe(0);
  await page.click("#tab-keep");
  await page.check("#remember");
  expect(await page.evaluate("localStorage.length")).toBe(1);
  // Another tab, without the mix in its address, begins where this one was left.
  const tab = await page.context().newPage();
  await tab.goto(address);
  await tab.waitForSelector("html[data-ready]");
  await tab.click("#tab-mix");
  expect(await shares(tab)).toEqual(before);
  expect(await tab.inputValue("#units")).toBe("US");
  expect(await tab.locator("#bucket-body").textContent()).toContain("Beside the kept mix");
  const stored = () => tab.evaluate("localStorage.getItem(localStorage.key(0))");
  const last = await stored();
  await tab.click("#undo");
  expect(await share(tab, 0)).toBe("54.9");
  // The step is stored a moment later, over whatever stands there.
  await soon(stored).not.toBe(last);
  // What another version stored is told, and the page begins with its study.
  await tab.evaluate('localStorage.setItem(localStorage.key(0), \'{"view":"gone"}\')');
  await tab.reload();
  await tab.waitForSelector("text=comes from another version of it and cannot be read");
  await page.uncheck("#remember");
  expect(await page.evaluate("localStorage.length")).toBe(0);
  expect(next.complaints).toEqual([]);
});

it("takes good sheets onto an empty bench and refuses bad ones with what is wrong", async (context) => {
  chromiumOrSkip(context);
  const { page, complaints } = await openPage(undefined);
  await page.click("#tab-sheets");
  const sheet = (name: string) => join(EXAMPLES, "reading-room", "sheets", name);
  await page.setInputFiles("#sheets-input", [
    sheet("site-soil-sieve.csv"),
    sheet("river-sand-sieve.csv"),
  ]);
  await page.waitForSelector("text=taken as sieve analysis of River sand");
  await page.click("#tab-mix");
  expect(await share(page, 0)).toBe("50");
  await page.click("[data-wish=target]");
  expect(Number(await share(page, 0))).toBeGreaterThan(50);

  await page.click("#tab-sheets");
  const drop = async (name: string, text: string) => {
    const data = await page.evaluateHandle(
      ([file, content]) => {
        const transfer = new DataTransfer();
        transfer.items.add(new File([content], file));
        return transfer;
      },
      [name, text] as const,
    );
    await page.dispatchEvent(".drop >> nth=0", "drop", { dataTransfer: data });
  };
  await drop(
    "pit-sieve.csv",
    "dry mass (g),500\n\nsieve (mm),retained (g)\n4,0\n2,twelve\npan,400\n",
  );
  await page.waitForSelector("#sheet-findings .error");
  expect(await page.locator("#sheet-findings").textContent()).toContain("twelve");
  expect(await page.locator("#sheet-findings").textContent()).toContain("not added");
  await drop("<img src=x onerror=alert(1)>.csv", "a,b\n<script>alert(1)</script>,2\n");
  await page.waitForSelector("text=not added");
  expect(await page.locator("#sheet-findings img, #sheet-findings script").count()).toBe(0);
  // A folder that is dropped, or a file that is gone, cannot be read.
  await page.evaluate("Blob.prototype.arrayBuffer = () => Promise.reject(new Error('gone'))");
  await drop("folder", "");
  await page.waitForSelector("text=The browser cannot read this");
  expect(await page.locator("#sheet-findings").textContent()).toContain("folder: not added");
  expect(await page.locator("#fault").count()).toBe(0);
  await page.click("#tab-mix");
  expect(await page.locator(".material").count()).toBe(2);
  expect(complaints).toEqual([]);
});

it("comes from sheets and entries to a tested mix with its buckets", async (context) => {
  chromiumOrSkip(context);
  const { page, complaints } = await openPage(undefined);
  const enter = async (form: string, values: readonly string[]) => {
    const box = page.locator(`#${form}`);
    if ((await box.getAttribute("open")) === null) await box.locator("summary").click();
    for (const [index, value] of values.entries()) {
      const field = page.locator(`#${form}-${index}`);
      if ((await field.evaluate((each) => each.tagName)) === "SELECT") {
        await field.selectOption(value);
      } else await field.fill(value);
    }
    await box.locator("button.main").click();
  };
  await page.click("#tab-sheets");
  const names = ["site-soil-sieve", "site-soil-hydrometer", "river-sand-sieve", "gravel-sieve"];
  await page.setInputFiles(
    "#sheets-input",
    [...names, "compaction", "blocks"].map((name) =>
      join(EXAMPLES, "reading-room", "sheets", `${name}.csv`),
    ),
  );
  await page.waitForSelector("#sheet-findings >> text=taken as crushed blocks");
  await enter("entry-requirement", ["1.5", "28 d", "tolerance", "95 %", "soaked", "invented"]);
  await soon(() => page.locator("#entry-requirement [role=status]").textContent()).toContain(
    "no unit",
  );
  await enter("entry-requirement", ["1.5 MPa"]);
  await soon(() => page.locator("#sheets-findings, #study-findings").textContent()).not.toContain(
    "several ages",
  );
  await page.click("#tab-mix");
  for (const [index, value] of ["55", "13"].entries()) {
    await page.fill(`#share-${index}`, value);
    await page.keyboard.press("Enter");
    await page.locator("button.lock").nth(index).click();
  }
  expect(await share(page, 2)).toBe("32");
  await page.click("#tab-sheets");
  await page.click("#tested-shares");
  await enter("entry-tested", ["soaked", "wrapped", "cube"]);
  await enter("entry-cement", ["Cement", "1200 kg/m3", "25 kg", "", "120 kg", "10 L"]);
  await enter("entry-wall", ["East wall", "6 m", "2.5 m", "400 mm", "100 mm", "5 %"]);
  for (const id of ["site-soil", "river-sand", "gravel"]) {
    await page.locator(`#more-${id} summary`).click();
    for (const [key, value] of [
      ["moisture", "5 %"],
      ["loose-bulk-density", "1400 kg/m3"],
    ]) {
      await page.fill(`#${id}-${key}`, value);
      await page.keyboard.press("Enter");
      await soon(() => page.locator("#entries-text").inputValue()).toContain(`${key}: ${value}`);
    }
  }
  await page.click("#tab-mix");
  expect(await page.locator("#strength-words").textContent()).toContain("reached");
  expect(await page.locator("#bucket-body .pail").count()).toBeGreaterThan(3);
  expect(await page.getByRole("note").first().textContent()).toContain("invented");
  expect(complaints).toEqual([]);
});

it("shows a hostile study's text as text, on every view", async (context) => {
  chromiumOrSkip(context);
  const { folder, edit } = copyStudy("reading-room");
  const hostile = `<img src=x onerror=alert(1)></script><script>alert(2)</script>`;
  edit("study.yaml", "title: Reading-room wall of a village library", `title: "${hostile}"`);
  edit("study.yaml", "name: Site soil, two pits mixed", `name: "${hostile}"`);
  edit("study.yaml", "name: Trial blend of the reading room", `name: "${hostile}"`);
  edit("study.yaml", "name: Portland cement, invented brand", `name: "${hostile}"`);
  edit("sheets/blocks.csv", "corner broke off when the mould was opened", `"${hostile}"`);
  const { page, complaints, requests } = await openPage(folder);
  let asked = 0;
  page.on("dialog", (dialog) => {
    asked += 1;
    return dialog.dismiss();
  });
  await page.fill("#share-0", "70");
  await page.keyboard.press("Enter");
  for (const tab of ["sheets", "class", "keep", "mix"]) await page.click(`#tab-${tab}`);
  expect(await page.locator("h1").textContent()).toBe(hostile);
  expect(await page.locator("#page img, #page script").count()).toBe(0);
  expect([asked, complaints, requests.length]).toEqual([0, [], 1]);
});

it("shows a fault of its own, and does not swallow it", async (context) => {
  chromiumOrSkip(context);
  const { page } = await openPage("reading-room");
  await page.evaluate("setTimeout(() => { throw new Error('of the test'); })");
  await page.waitForSelector("#fault >> text=of the test");
});

it("takes a workbook, and a jar that is typed", async (context) => {
  chromiumOrSkip(context);
  const { page, complaints } = await openPage(undefined);
  await page.click("#tab-sheets");
  await page.setInputFiles("#sheets-input", [
    join(EXAMPLES, "bus-shelter", "sheets", "site-soil-sieve.csv"),
    join(EXAMPLES, "bus-shelter", "sheets", "blocks.xlsx"),
  ]);
  await page.waitForSelector("text=taken as crushed blocks");
  await page.click("#sheets-jar summary");
  for (const [row, top] of ["52", "71", "88"].entries()) {
    await page.fill(`#sheets-jar-${row}-2`, top);
  }
  await page.click("#sheets-jar-add");
  await page.waitForSelector("text=taken as jar test of");
  expect(await page.locator("#study-findings").textContent()).toContain("first guide");
  expect(complaints).toEqual([]);
});

it("sets the groups of a class side by side", async (context) => {
  chromiumOrSkip(context);
  const { page, complaints } = await openPage(undefined);
  await page.click("#tab-class");
  for (const [group, tops] of [
    ["East", ["52", "71", "88"]],
    ["West", ["60", "75", "90"]],
  ] as const) {
    await page.fill("#group-name", group);
    if ((await page.locator("#class-jar").getAttribute("open")) === null) {
      await page.click("#class-jar summary");
    }
    for (const [index, top] of tops.entries()) {
      await page.fill(`#class-jar-${index}-2`, top);
    }
    await page.click("#class-jar-add");
  }
  const rows = page.locator("#class-results tbody tr");
  await page.waitForSelector("#class-results tbody tr");
  await soon(async () => (await rows.first().textContent())?.includes("66.7")).toBe(true);
  // Sand and gravel: 52 of 88 and 60 of 90 of the height.
  expect(await rows.first().textContent()).toBe("sand and gravel59.166.762.95.459.166.7");
  // A sheet of the class with its groups in columns; its readings are invented, and page and file say so.
  await page.setInputFiles("#class-input", join(EXAMPLES, "class-day", "class.csv"));
  // With 52 of 88, 55 of 91, 48 of 86 and 53 of 84 mm of the four groups in the sheet.
  await soon(() => rows.first().textContent()).toBe(
    "sand and gravel59.166.759.160.455.863.160.73.855.866.7",
  );
  expect(await page.locator("#class-results [role=note]").textContent()).toContain("invented");
  const [zip] = await Promise.all([page.waitForEvent("download"), page.click("#save-class")]);
  const { files } = await unzip(new Uint8Array(await readFile(await zip.path())), () => true);
  expect([...files!.keys()]).toEqual([
    "class.csv",
    "east/jar.csv",
    "west/jar.csv",
    "west/class.csv",
  ]);
  expect(new TextDecoder().decode(files!.get("class.csv"))).toMatch(/^[^\n]*invented/);
  expect(complaints).toEqual([]);
});

it("keeps what was typed through another language, and names rows as the findings do", async (context) => {
  chromiumOrSkip(context);
  const { page, complaints } = await openPage(undefined);
  await page.click("#tab-sheets");
  await page.click("#sheets-sieve summary");
  await page.fill("#sheets-sieve-line-0", "1000");
  const retained = ["0", "50", "100", "150", "200", "150", "200", "149"];
  for (const [row, grams] of retained.entries()) await page.fill(`#sheets-sieve-${row}-1`, grams);
  // The table grows by a row when the last one is begun.
  await page.fill("#sheets-sieve-8-0", "0.02");
  expect(await page.locator("#sheets-sieve tbody tr").count()).toBe(10);
  await page.fill("#sheets-sieve-3-1", "many");
  await page.selectOption("#locale", "es");
  expect(await page.inputValue("#sheets-sieve-3-1")).toBe("many");
  expect(await page.inputValue("#sheets-sieve-8-0")).toBe("0.02");
  await page.selectOption("#locale", "en");
  await page.focus("#sheets-sieve-add");
  await page.keyboard.press("Enter");
  await page.waitForSelector("#sheet-findings .error");
  const row = await page.locator("#sheets-sieve tbody tr").nth(3).locator("th").textContent();
  expect(await page.locator("#sheet-findings").textContent()).toContain(`row ${row}, retained (g)`);
  await page.fill("#sheets-sieve-3-1", "150");
  await page.focus("#sheets-sieve-add");
  await page.keyboard.press("Enter");
  await page.waitForSelector("text=taken as sieve analysis of Site soil");
  expect(await page.evaluate("document.activeElement.id")).toBe("sheets-sieve-add");
  // More than was sieved: nothing is said to be taken, and the bench stays.
  await page.fill("#sheets-sieve-3-1", "450");
  await page.click("#sheets-sieve-add");
  await soon(() => page.locator("#sheet-findings").textContent()).toContain("stays as it was");
  expect(await page.locator("#sheet-findings").textContent()).not.toContain("taken as");
  await page.click("#tab-mix");
  expect(await page.locator("#moisture-slider").getAttribute("aria-valuetext")).toBe("not chosen");
  expect(await page.locator(".target-box").textContent()).toContain("states no target");
  expect(complaints).toEqual([]);
});

it("shows what a jar alone tells, and which sheet comes next", async (context) => {
  chromiumOrSkip(context);
  const { page, complaints } = await openPage("garden-wall/1-jar");
  const shown = await page.locator("#view-mix").textContent();
  expect(shown).toContain("A sieve analysis of Hill soil");
  // The intervals of “loambook compute”.
  for (const share of ["47 to 68", "20 to 36", "8 to 26"]) expect(shown).toContain(share);
  expect(shown).not.toContain("There is nothing to blend");
  expect(complaints).toEqual([]);
});

it("speaks Spanish and US units at a switch", async (context) => {
  chromiumOrSkip(context);
  const { page, complaints } = await readingRoom();
  // What was told of a mix is not left standing in the former language.
  await page.fill("#share-0", "55.5");
  await page.keyboard.press("Enter");
  await soon(() => page.locator("#live").textContent()).toContain("Outside the guidance");
  await page.selectOption("#locale", "es");
  expect(await page.locator("html").getAttribute("lang")).toBe("es");
  const english = Object.keys(SPANISH).filter((key) => key.length > 14 && !key.includes("{"));
  for (const tab of ["sheets", "class", "keep", "mix"]) {
    await page.click(`#tab-${tab}`);
    const shown = String(await page.evaluate("document.body.innerText")).toLowerCase();
    expect(
      english.filter((key) => shown.includes(key.toLowerCase())),
      tab,
    ).toEqual([]);
  }
  await page.selectOption("#units", "US");
  expect(await page.locator("#strength-words").textContent()).toContain("psi");
  expect(await page.locator("#bucket-body").textContent()).toContain("lb");
  await page.selectOption("#units", "SI");
  expect(await page.locator("#strength-words").textContent()).toContain("MPa");
  await page.selectOption("#locale", "en");
  expect(complaints).toEqual([]);
});

it("has no grave fault under axe-core at 360, 768 and 1920 px, light and dark", {
  timeout: 400_000,
}, async (context) => {
  chromiumOrSkip(context);
  const axe = readFileSync(
    new URL("../../node_modules/axe-core/axe.min.js", import.meta.url),
    "utf8",
  );
  const { page } = await openPage("reading-room", {
    viewport: { width: 360, height: 800 },
    bypassCSP: true,
  });
  await page.evaluate(axe);
  for (const width of [360, 768, 1920]) {
    await page.setViewportSize({ width, height: 800 });
    for (const tab of ["mix", "sheets", "class", "keep"]) {
      await page.click(`#tab-${tab}`);
      for (const colorScheme of ["light", "dark"] as const) {
        await page.emulateMedia({ colorScheme });
        // Of all rules only these see colours.
        const rules = ["color-contrast", "link-in-text-block"];
        const options = JSON.stringify({
          resultTypes: ["violations"],
          ...(colorScheme === "dark" ? { runOnly: rules } : {}),
        });
        const found = (await page.evaluate(
          `axe.run(document, ${options}).then(({ violations }) => violations.map(({ id, nodes }) => id + ": " + nodes.map(({ html }) => html).join(" | ").slice(0, 400)))`,
        )) as string[];
        expect(found, `${tab} at ${width} px, ${colorScheme}`).toEqual([]);
        expect(
          await page.evaluate(
            "document.documentElement.scrollWidth - document.documentElement.clientWidth",
          ),
          `${tab} at ${width} px is no wider than the screen`,
        ).toBe(0);
        const small = await page.evaluate(
          `[...document.querySelectorAll("main button, main select, main input:not([type=file]), summary")].filter((each) => each.offsetParent && !each.closest("[hidden]")).map((each) => [each.id || each.textContent, each.getBoundingClientRect()]).filter(([, { width, height }]) => width > 0 && (height < 43.5 || width < 43.5)).map(([name, { width, height }]) => name + " " + width + " x " + height)`,
        );
        expect(small, `targets of ${tab} at ${width} px`).toEqual([]);
      }
    }
  }
});

it("prints the mix on one page of A4 and of Letter: as it is, beside a kept one, and a blend that was not tested", async (context) => {
  chromiumOrSkip(context);
  const { getDocument } = await import("pdfjs-dist/legacy/build/pdf.mjs");
  for (const [example, compared, width] of [
    ["reading-room", false, 1280],
    ["reading-room", true, 390],
    ["bus-shelter", true, 1280],
    ["untested-blend", true, 1280],
  ] as const) {
    const { page } = await openPage(example, { viewport: { width, height: 844 } });
    await page.selectOption("#locale", compared ? "es" : "en");
    if (compared) {
      await page.click("#keep");
      await page.fill("#cement", "7");
      await page.keyboard.press("Enter");
      await page.waitForSelector("#bucket-body .kept");
    }
    const screen = await page.locator(".plot svg").getAttribute("viewBox");
    for (const format of ["A4", "Letter"]) {
      const pdf = await page.pdf({ format });
      const paper = await getDocument({ data: new Uint8Array(pdf) }).promise;
      expect(paper.numPages, `${example} on ${format}`).toBe(1);
      const { items } = await (await paper.getPage(1)).getTextContent();
      const text = items.map((item) => ("str" in item ? item.str : "")).join(" ");
      expect(text).toContain(
        compared ? "Nada de esto es una aprobación" : "Nothing here is an approval",
      );
      expect(text).toContain(compared ? "inventados" : "invented");
      if (compared) expect(text).toContain("Junto a la mezcla guardada");
      if (example === "untested-blend") expect(text).toContain("Solo para probetas");
      // No letter is smaller than the page promises, but for notes and axes.
      const sizes = items.flatMap((item) =>
        "height" in item && item.str.trim() ? item.height : [],
      );
      expect(Math.min(...sizes), `${example} on ${format}`).toBeGreaterThan(4.5);
    }
    // On the screen the charts are as they were.
    expect(await page.locator(".plot svg").getAttribute("viewBox")).toBe(screen);
    expect(await page.locator("html").getAttribute("style")).toBe("");
    await page.context().close();
  }
});
