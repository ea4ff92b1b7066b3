import { blockHtml } from "../../blocks/partHtml.js";
import type { Finding } from "../../findings/finding.js";
import { formatFixed, formatPlain, inUnits, type UnitSystem } from "../../quantities/format.js";
import { NO_APPROVAL } from "../../report/reportMeta.js";
import { MADE_WITH } from "../../study/madeWith.js";
import type { Study } from "../../study/study.js";
import { studyFromFiles } from "../../study/studyFromFiles.js";
import { joinTexts, say, type Text } from "../../words/message.js";
import { type Locale, render } from "../../words/render.js";
import {
  type Bench,
  type BenchAction,
  type BenchMix,
  changeBench,
  isSameMix,
  newBench,
} from "../bench.js";
import { benchOfLink, linkOf, mixOfLink, traceOf } from "../link.js";
import {
  type Light,
  type PageData,
  type PageSession,
  packFiles,
  packGroups,
  pageSession,
  type StoredPage,
  storedPage,
  unpackFiles,
  unpackGroups,
  VIEW_NAMES,
  type ViewName,
} from "../pageData.js";
import { type StudyFiles, studyOfSheets } from "../studyFiles.js";
import {
  type OpenStudy,
  openOnBench,
  type TunedBlend,
  type TunedMix,
  tuneBlend,
  tuneMix,
} from "../tune.js";
import type { Adopted, App, PageState, View } from "./app.js";
import { classView } from "./classView.js";
import { button, choices, el, fill, folded, holdsTyped, keepingTyped } from "./dom.js";
import { INVENTED_DATA, keepView } from "./keepView.js";
import { mixView } from "./mixView.js";
import { printOnOnePage } from "./onePage.js";
import { sheetsView } from "./sheetsView.js";
import { cautions, criterionLines, strengthSentence } from "./verdictCard.js";

/** After a slider has rested so long, the recipe follows. */
const REST_MS = 120;
/** After so long the change is told to a screen reader: not each step of a slider. */
const QUIET_MS = 700;

const VIEWS: Readonly<Record<ViewName, Text>> = {
  mix: say`Mix`,
  sheets: say`Sheets`,
  class: say`Class`,
  keep: say`Save`,
};

/** Starts the page with the study that it carries, with what the browser stored, or with an empty bench. */
async function start(): Promise<void> {
  const { files } = JSON.parse(document.getElementById("page-data")!.textContent!) as PageData;
  const left = readStored();
  const stored = left === "unreadable" ? undefined : left;
  const state: PageState = {
    locale: "en",
    units: "SI",
    light: "auto",
    view: "mix",
    files: new Map(),
    findings: [],
    groups: stored ? unpackGroups(stored.groups) : [],
    remember: stored !== undefined,
    paper: false,
    unsaved: false,
  };
  const page = pageOf(state);
  const carried = unpackFiles(stored?.files ?? files);
  await page.begin(carried, stored);
  if (left === "unreadable") {
    page.warn(
      say`What this browser stored of this page comes from another version of it and cannot be read. The page begins with the study it carries.`,
    );
  }
}

function pageOf(state: PageState) {
  const root = document.getElementById("page")!;
  const live = document.getElementById("live")!;
  let views: Readonly<Record<ViewName, View>>;
  let tools: View;
  let resting: ReturnType<typeof setTimeout> | undefined;
  let quiet: ReturnType<typeof setTimeout> | undefined;
  const t = (text: Text) => render(inUnits(text, state.units), state.locale);

  const app: App = {
    state,
    t,
    html: (block) => blockHtml(inUnits(block, state.units), "page", state.locale),
    act,
    announce: (text) => {
      live.textContent = t(text);
    },
    adopt,
    show,
    set(change) {
      Object.assign(state, change);
      // What was told last was told in other words.
      live.textContent = "";
      // Whoever reads in other units buys and measures in them: the study is computed anew.
      if (change.units) reopen();
      // The mix that it is compared with is named in the reader's language.
      else tune();
      draw();
      note();
    },
    setGroups(groups) {
      state.groups = groups;
      state.unsaved = true;
      views[state.view].refresh();
      remember();
    },
    setRemember(on) {
      state.remember = on;
      remember();
    },
    saved() {
      state.unsaved = false;
    },
    tell(news) {
      state.news = news;
      draw();
      app.announce(joinTexts(news.messages, " "));
    },
  };

  return { begin, warn };

  async function begin(files: StudyFiles, stored: StoredPage | undefined): Promise<void> {
    // A browser keeps the state of a page over a reload, and no longer.
    const session = pageSession(history.state);
    const left = session ?? stored;
    if (left) {
      const { locale, units, light, view } = left;
      Object.assign(state, { locale, units, light, view });
    } else if (files.size === 0 && navigator.language.startsWith("es")) state.locale = "es";
    if (files.size > 0) await carry(files, left !== undefined);
    if (state.bench) {
      const link = session ? linkInAddress() : stored?.link;
      state.bench = benchOfLink(state.bench.start, link, left?.trace);
    }
    openLink();
    tune();
    draw();
    document.documentElement.dataset.ready = "true";
    addEventListener("keydown", undoKeys);
    addEventListener("hashchange", () => {
      openLink();
      tune();
      draw();
    });
    printOnOnePage(
      () => state.view === "mix" && state.bench !== undefined,
      (paper) => {
        state.paper = paper;
        views.mix.refresh();
      },
    );
    // A browser tells by an event without an error that it draws once more after a change of size.
    addEventListener("error", ({ error }) => {
      if (error) fault(error);
    });
    addEventListener("unhandledrejection", ({ reason }) => fault(reason));
    addEventListener("beforeunload", (event) => {
      if ((state.unsaved && !state.remember) || holdsTyped(root)) event.preventDefault();
    });
  }

  /** Lays the mix of a link on the bench, as a step of its own. */
  function openLink(): void {
    const { bench } = state;
    const link = linkInAddress();
    const mix = link && bench ? mixOfLink(link, bench.start.sharesPct.length) : undefined;
    if (mix && bench) state.bench = changeBench(bench, { kind: "mix", mix });
  }

  /** Takes up the files that the page came with, in the study's own language and units where nobody chose others. */
  async function carry(carried: StudyFiles, chosen: boolean): Promise<void> {
    const files = await studyOfSheets(carried);
    const { study, findings, locale } = await studyFromFiles(files);
    Object.assign(state, { files, findings });
    if (!chosen) Object.assign(state, { locale, units: study?.config.units ?? "SI" });
    if (study) open(study, findings);
    else state.view = "sheets";
  }

  /** Lays a study on the bench in the reader's units. */
  function open(study: Study, reading: readonly Finding[]): readonly Finding[] {
    const inUnits = { ...study, config: { ...study.config, units: state.units } };
    const opened = openOnBench(inUnits, reading);
    state.findings = opened.findings;
    if (!opened.open) return opened.findings;
    const before = state.open;
    state.open = opened.open;
    state.bench = benchOf(opened.open, before);
    return opened.findings;
  }

  /** A bench for a study: what was tuned stays where the materials are the same. */
  function benchOf(next: OpenStudy, before: OpenStudy | undefined): Bench | undefined {
    if (next.obstacles.length > 0) return undefined;
    const ids = (study: OpenStudy) => study.result.materials.map(({ id }) => id).join();
    const { start } = next;
    const { bench } = state;
    if (!before || !bench || ids(before) !== ids(next)) return newBench(start);
    if (isSameMix(bench.now, bench.start)) return { ...bench, now: start, start };
    // What could not be chosen before may be known now.
    const { cementPct, moisturePct } = start;
    return { ...bench, now: { cementPct, moisturePct, ...bench.now }, start };
  }

  function reopen(): void {
    if (state.open) open(state.open.study, state.open.reading);
    tune();
  }

  async function adopt(files: StudyFiles): Promise<Adopted> {
    const { study, findings } = await studyFromFiles(files);
    if (!study) return { taken: false, findings };
    const before = { open: state.open, bench: state.bench, findings: state.findings };
    const found = open(study, findings);
    if (state.open === before.open) {
      Object.assign(state, before);
      return { taken: false, findings: found };
    }
    state.files = files;
    state.unsaved = true;
    tune();
    draw();
    note();
    return { taken: true, findings: found };
  }

  function tune(): void {
    const { open: study, bench } = state;
    const whole = (mix: BenchMix | undefined) => {
      if (!study || !mix) return undefined;
      const tuned = tuneBlend(study, mix);
      return { tuned, recipe: recipeOf(study, tuned) };
    };
    state.kept = whole(bench?.kept);
    Object.assign(state, { tuned: undefined, recipe: undefined, ...whole(bench?.now) });
  }

  function recipeOf(study: OpenStudy, tuned: TunedBlend): TunedMix {
    return tuneMix(study, tuned, {
      name: t(say`the study’s mix`),
      basis: t(say`the mix that this study gives`),
    });
  }

  function act(action: BenchAction): void {
    const { open: study, bench } = state;
    if (!study || !bench) return;
    const from = performance.now();
    const next = changeBench(bench, action);
    state.bench = next;
    if (next.now !== bench.now) {
      state.tuned = tuneBlend(study, next.now);
      clearTimeout(resting);
      resting = setTimeout(rest, REST_MS);
      clearTimeout(quiet);
      quiet = setTimeout(tell, QUIET_MS);
    }
    if (next.kept !== bench.kept) {
      tune();
      note();
    }
    views[state.view].refresh();
    tools.refresh();
    document.documentElement.dataset.workMs = (performance.now() - from).toFixed(1);
  }

  function rest(): void {
    const { open: study, tuned, bench } = state;
    if (!study || !tuned || !bench) return;
    state.recipe = recipeOf(study, tuned);
    views[state.view].refresh();
    note();
  }

  /** Keeps the mix in the address and the way to it with the tab, so that a reload loses nothing. */
  function note(): void {
    const { bench } = state;
    history.replaceState(sessionOf(), "", bench ? `#mix=${linkOf(bench.now)}` : undefined);
    remember();
  }

  function sessionOf(): PageSession {
    const { locale, units, light, view, bench } = state;
    return { locale, units, light, view, ...(bench ? { trace: traceOf(bench) } : {}) };
  }

  /** What has changed, for those who cannot see it. */
  function tell(): void {
    const { tuned, recipe } = state;
    if (!tuned) return;
    const shares = tuned.result.materials.map(
      ({ name }, index) => say`${name} ${formatFixed(tuned.mix.sharesPct[index], 1)} %`,
    );
    const { cementPct } = tuned.mix;
    const outside = tuned.result.guidance
      .flatMap((study) => criterionLines(study, tuned.estimates))
      .filter(({ state: verdict }) => verdict === "outside").length;
    app.announce(
      joinTexts(
        [
          say`${joinTexts(shares)}.`,
          cementPct === undefined ? undefined : say`Cement ${formatPlain(cementPct)} %.`,
          say`Outside the guidance: ${outside}{0, plural, one { line} other { lines}}.`,
          strengthSentence(tuned) ?? tuned.strength.reasons[0],
          recipe?.mix ? undefined : say`There is no recipe for this mix.`,
        ],
        " ",
      ),
    );
  }

  /** A fault of ours is shown, not swallowed: the mix may not be what the sheets say. */
  function fault(problem: unknown): void {
    warn(
      say`This page has met an internal error, and what it shows may be wrong: save the study folder and compute it with the command line.`,
      ` (${String(problem)})`,
    );
  }

  function warn(text: Text, more = ""): void {
    document.getElementById("fault")?.remove();
    root.prepend(el("p", { class: "banner", id: "fault", role: "alert" }, `${t(text)}${more}`));
  }

  function undoKeys(event: KeyboardEvent): void {
    const { target, key, ctrlKey, metaKey, shiftKey } = event;
    if (!(ctrlKey || metaKey) || (target instanceof HTMLInputElement && target.type === "text")) {
      return;
    }
    const letter = key.toLowerCase();
    if (letter !== "z" && letter !== "y") return;
    event.preventDefault();
    act({ kind: letter === "y" || shiftKey ? "redo" : "undo" });
  }

  function show(view: ViewName): void {
    state.view = view;
    draw();
    note();
    document.getElementById(`tab-${view}`)?.focus();
  }

  /** Makes the whole page anew: for another language, other units, another study. */
  function draw(): void {
    keepingTyped(root, drawAll);
  }

  function drawAll(): void {
    const { locale, open: study, view } = state;
    document.documentElement.lang = locale;
    document.documentElement.dataset.light = state.light;
    const { title = t(say`Mix bench`), place, invented } = study?.study.config ?? {};
    document.title = title;
    views = {
      mix: mixView(app),
      sheets: sheetsView(app),
      class: classView(app),
      keep: keepView(app),
    };
    tools = toolBar(app);
    const main = el("main", { id: "main", tabindex: "-1" });
    if (view === "mix" && state.bench) main.append(tools.node);
    for (const name of VIEW_NAMES) {
      const node = el("div", { id: `view-${name}` }, views[name].node);
      node.hidden = name !== view;
      main.append(node);
    }
    const about = el(
      "div",
      {},
      el("h1", { dir: "auto" }, title),
      el("p", { class: "print-only" }, t(NO_APPROVAL)),
      place && el("p", { class: "place", dir: "auto" }, place),
    );
    fill(
      root,
      el("a", { class: "skip", href: "#main" }, t(say`Skip to the bench`)),
      el(
        "header",
        {},
        invented && el("p", { class: "banner", role: "note" }, t(INVENTED_DATA)),
        el("div", { class: "head" }, about, switches(app)),
      ),
      el("nav", { class: "tabs", "aria-label": t(say`Parts of the page`) }, ...tabs(app)),
      main,
      el(
        "footer",
        {},
        el("p", {}, el("strong", {}, t(NO_APPROVAL))),
        folded(app, say`Cautions`, { class: "cautions-box" }, cautions(app)),
        el("p", {}, t(say`Made with ${MADE_WITH}. This page makes no network requests.`)),
      ),
    );
    views[view].refresh();
    tools.refresh();
  }

  /** Stores the page in the browser where that was asked for, and clears the store where it was taken back. */
  function remember(): void {
    try {
      if (!state.remember) {
        localStorage.removeItem(storeName());
        return;
      }
      const { files, bench, groups } = state;
      const page: StoredPage = {
        ...sessionOf(),
        files: packFiles(files),
        ...(bench ? { link: linkOf(bench.now) } : {}),
        groups: packGroups(groups),
      };
      localStorage.setItem(storeName(), JSON.stringify(page));
      state.unsaved = false;
    } catch {
      state.remember = false;
      app.announce(
        say`This browser does not let the page store anything; save the study folder instead.`,
      );
    }
  }
}

/** The mix in the address, as a link has it; undefined where there is none. */
function linkInAddress(): string | undefined {
  return new URLSearchParams(location.hash.slice(1)).get("mix") ?? undefined;
}

function storeName(): string {
  return `loambook ${location.pathname}`;
}

/** What the browser stored for this page; undefined where nothing was, or the browser lets nobody ask. */
function readStored(): StoredPage | "unreadable" | undefined {
  let text: string | null;
  try {
    text = localStorage.getItem(storeName());
  } catch {
    return undefined;
  }
  if (text === null) return undefined;
  try {
    return storedPage(JSON.parse(text)) ?? "unreadable";
  } catch {
    return "unreadable";
  }
}

function tabs(app: App): HTMLElement[] {
  const { state } = app;
  return VIEW_NAMES.map((view) => {
    const current = view === state.view ? "page" : undefined;
    const props = { id: `tab-${view}`, "aria-current": current };
    return button(app, VIEWS[view], () => app.show(view), props);
  });
}

function toolBar(app: App): View {
  const step = (label: Text, action: BenchAction, id: string) =>
    button(app, label, () => app.act(action), { id });
  const undo = step(say`Undo`, { kind: "undo" }, "undo");
  const redo = step(say`Redo`, { kind: "redo" }, "redo");
  const reset = step(say`Back to the study’s mix`, { kind: "reset" }, "reset");
  const keep = step(say`Keep this mix to compare`, { kind: "keep" }, "keep");
  const swap = step(say`Swap with the kept mix`, { kind: "swap-kept" }, "swap");
  const drop = step(say`Discard the kept mix`, { kind: "drop-kept" }, "drop");
  const props = { class: "tools", role: "group", "aria-label": app.t(say`Steps`) };
  return {
    node: el("div", props, undo, redo, reset, keep, swap, drop),
    refresh() {
      const { bench } = app.state;
      undo.disabled = !bench || bench.past.length === 0;
      redo.disabled = !bench || bench.future.length === 0;
      reset.disabled = !bench || isSameMix(bench.now, bench.start);
      swap.hidden = !bench?.kept;
      drop.hidden = !bench?.kept;
    },
  };
}

const LOCALES: readonly (readonly [Locale, string])[] = [
  ["en", "English"],
  ["es", "Español"],
];

function switches(app: App): HTMLElement {
  const { t, state } = app;
  const choice = (
    id: "locale" | "units" | "light",
    label: Text,
    options: readonly (readonly [string, string])[],
    change: (value: string) => void,
  ) => {
    const select = choices({ id }, options, state[id]);
    select.addEventListener("change", () => {
      change(select.value);
      document.getElementById(id)?.focus();
    });
    return el("label", { for: id }, t(label), select);
  };
  const locales = LOCALES.some(([value]) => value === state.locale)
    ? LOCALES
    : [[state.locale, state.locale] as const, ...LOCALES];
  const units = ["SI", "US"].map((name) => [name, name] as const);
  const lights = [
    ["auto", t(say`as the device`)],
    ["light", t(say`light`)],
    ["dark", t(say`dark`)],
  ] as const;
  return el(
    "div",
    { class: "switches" },
    choice("locale", say`Language`, locales, (locale) => app.set({ locale: locale as Locale })),
    choice("units", say`Units`, units, (name) => app.set({ units: name as UnitSystem })),
    choice("light", say`Appearance`, lights, (light) => app.set({ light: light as Light })),
  );
}

void start();
