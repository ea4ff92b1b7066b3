import {
  checkNotNegative,
  checkPositive,
  checkThat,
  wholeCount,
} from "../quantities/checkNumber.js";
import { formatFixed } from "../quantities/format.js";
import { say, type Text } from "../words/message.js";

export interface FormworkUse {
  readonly formAreaM2: number;
  readonly formsAtHandM2: number;
  readonly hoursToSetAndRam: number;
  readonly workingHoursADay: number;
  readonly strippingHours: number;
}

export interface FormworkDuration {
  /** Times that the forms are set. */
  readonly settings: number;
  /** Calendar days from the first setting to the last stripping. */
  readonly days: number;
  readonly daysPerSetting: number;
  readonly message: Text;
}

/**
 * Gives the days that a set of forms is in use: it is set, rammed full, waits, and moves on.
 *
 * Formula: settings = form area / area of the forms at hand, rounded up; days of a setting = working hours to
 * set and ram it / working hours of a day + stripping hours / 24; days = settings × days of a setting.
 *
 * The stripping time is the user's: 24 hours is common practice without a source, and texts for
 * unstabilised earth strip at once. Local rules, the engineer, the weather and the curing govern; damp
 * curing goes on after stripping, and full forms that stay in place help it.
 *
 * @throws RangeError for an area or working time not above 0, or a stripping time below 0. Source: own
 * arithmetic.
 *
 * @example
 * formworkDuration({ formAreaM2: 40, formsAtHandM2: 10, hoursToSetAndRam: 8, workingHoursADay: 8, strippingHours: 24 }).days // => 8
 */
export function formworkDuration(use: FormworkUse): FormworkDuration {
  const { formAreaM2, formsAtHandM2, hoursToSetAndRam, workingHoursADay, strippingHours } = use;
  checkPositive("formAreaM2", formAreaM2);
  checkPositive("formsAtHandM2", formsAtHandM2);
  checkPositive("hoursToSetAndRam", hoursToSetAndRam);
  checkPositive("workingHoursADay", workingHoursADay);
  checkNotNegative("strippingHours", strippingHours);
  checkThat(workingHoursADay <= 24, { workingHoursADay }, "at most 24");
  const settings = wholeCount(formAreaM2 / formsAtHandM2);
  const daysPerSetting = hoursToSetAndRam / workingHoursADay + strippingHours / 24;
  const days = settings * daysPerSetting;
  return {
    settings,
    daysPerSetting,
    days,
    message: say`${settings} uses of the formwork, ${formatFixed(daysPerSetting, 1)} days each, ${formatFixed(days, 1)} days in all, stripped after ${strippingHours} h as entered; local rules and curing govern.`,
  };
}
