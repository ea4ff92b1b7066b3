import { currentLanguage } from "./language.js";
import { spanishSoilName } from "./spanish/spanishSoilName.js";

/**
 * Says a soil's class name in the language of the study. The classifications give it in English, as their
 * standards do, so that results compare; symbols such as SC or A-2-4 are the same in every language.
 *
 * @example
 * soilName("clayey sand with gravel") // => "clayey sand with gravel"
 */
export function soilName(english: string): string {
  return currentLanguage() === "es" ? spanishSoilName(english) : english;
}
