import type { SiteConfig } from "../study/siteConfig.js";
import type { ReportBlock } from "./reportBlock.js";

/** A page for the crew: what it is called, and what stands on it. */
export interface SiteSheet {
  /** Name of the files, without ending. */
  readonly name:
    | "bucket-card"
    | "order-list"
    | "making-and-curing-log"
    | "block-labels"
    | "moisture-check"
    | "field-tests"
    | "mix-card";
  readonly title: string;
  readonly blocks: readonly ReportBlock[];
}

/**
 * What the crew works with, where it is to be other than the study's `site` says. Each has a default, and
 * the sheet says where a default was used.
 */
export interface SiteOptions extends SiteConfig {}
