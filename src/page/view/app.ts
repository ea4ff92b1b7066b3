import type { ReportBlock } from "../../blocks/block.js";
import type { Finding } from "../../findings/finding.js";
import type { UnitSystem } from "../../quantities/format.js";
import type { Text } from "../../words/message.js";
import type { Locale } from "../../words/render.js";
import type { Bench, BenchAction } from "../bench.js";
import type { GroupSheets } from "../classGroups.js";
import type { Light, ViewName } from "../pageData.js";
import type { StudyFiles } from "../studyFiles.js";
import type { OpenStudy, TunedBlend, TunedMix } from "../tune.js";

/** What a person sees and has put on the page; it changes by the page's own functions only. */
export interface PageState {
  locale: Locale;
  units: UnitSystem;
  light: Light;
  view: ViewName;
  files: StudyFiles;
  /** What was found in the files that are on the page. */
  findings: readonly Finding[];
  /** Absent on an empty bench, and where a study has no two things to blend. */
  open?: OpenStudy;
  bench?: Bench;
  tuned?: TunedBlend;
  recipe?: TunedMix;
  kept?: { readonly tuned: TunedBlend; readonly recipe: TunedMix };
  groups: readonly GroupSheets[];
  /** What became of the sheets that were added last. */
  news?: News;
  /** Whether the page may store its state in the browser. */
  remember: boolean;
  /** Whether the charts are drawn for paper. */
  paper: boolean;
  /** Whether sheets are on the page that were saved nowhere. */
  unsaved: boolean;
}

/** What the parts of the page may read and ask for. */
export interface App {
  readonly state: Readonly<PageState>;
  /** Says a text in the reader's language. */
  readonly t: (text: Text) => string;
  /** Writes a block of a report as HTML in the reader's language and units; every text in it is escaped. */
  readonly html: (block: ReportBlock) => string;
  /** Changes the mix on the bench. */
  readonly act: (action: BenchAction) => void;
  /** Says something to those who cannot see it. */
  readonly announce: (text: Text) => void;
  /** Takes over other files, where they can be read and computed; gives back what was found. */
  readonly adopt: (files: StudyFiles) => Promise<Adopted>;
  readonly show: (view: ViewName) => void;
  readonly set: (change: Partial<Pick<PageState, "locale" | "units" | "light">>) => void;
  readonly setGroups: (groups: readonly GroupSheets[]) => void;
  readonly setRemember: (remember: boolean) => void;
  readonly saved: () => void;
  readonly tell: (news: News) => void;
}

/** What became of sheets that were added. */
export interface News {
  readonly messages: readonly Text[];
  readonly findings: readonly Finding[];
}

export interface Adopted {
  readonly taken: boolean;
  readonly findings: readonly Finding[];
}

/** A part of the page: made once, then brought up to the state. */
export interface View {
  readonly node: HTMLElement;
  readonly refresh: () => void;
}
