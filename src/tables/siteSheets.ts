import type { StudyResult } from "../study/studyResult.js";
import { siteBlockLabels } from "./siteBlockLabels.js";
import { siteBucketCard } from "./siteBucketCard.js";
import { siteCuringLog } from "./siteCuringLog.js";
import { siteMoistureCard } from "./siteMoistureCard.js";
import type { SiteOptions, SiteSheet } from "./siteSheet.js";

/**
 * The four sheets of a study that a crew prints: bucket card, making and curing log, block labels,
 * moisture check.
 *
 * @throws RangeError for options out of range. Source: with each sheet.
 */
export function siteSheets(result: StudyResult, options: SiteOptions = {}): readonly SiteSheet[] {
  return [siteBucketCard, siteCuringLog, siteBlockLabels, siteMoistureCard].map((make) =>
    make(result, options),
  );
}
