import type { SiteConfig } from "../study/siteConfig.js";
import type { StudyResult } from "../study/studyResult.js";
import type { SiteOptions } from "./siteSheet.js";

/** What the study says of the site, with what was asked for here before it. */
export function siteOptionsOf(
  { config }: Pick<StudyResult, "config">,
  options: SiteOptions,
): SiteConfig {
  const given = Object.entries(options).filter(([, value]) => value !== undefined);
  // A mixer asked for here stands before a study that fills lifts.
  const { batchFills, ...rest } = config.site;
  const study = options.mixerVolumeL === undefined ? config.site : rest;
  return { ...study, ...Object.fromEntries(given) };
}
