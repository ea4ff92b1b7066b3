import { formatFixed } from "../quantities/format.js";
import { say, type Text } from "../words/message.js";
import { checkAbove, checkNotBelow } from "./checkAmount.js";

export interface FormDays {
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
 * formDays({ formAreaM2: 40, formsAtHandM2: 10, hoursToSetAndRam: 8, workingHoursADay: 8, strippingHours: 24 }).days // => 8
 */
export function formDays(of: {
  readonly formAreaM2: number;
  readonly formsAtHandM2: number;
  readonly hoursToSetAndRam: number;
  readonly workingHoursADay: number;
  readonly strippingHours: number;
}): FormDays {
  checkAbove("formAreaM2", of.formAreaM2);
  checkAbove("formsAtHandM2", of.formsAtHandM2);
  checkAbove("hoursToSetAndRam", of.hoursToSetAndRam);
  checkAbove("workingHoursADay", of.workingHoursADay);
  checkNotBelow("strippingHours", of.strippingHours);
  if (of.workingHoursADay > 24) {
    throw new RangeError(
      `invalid \`workingHoursADay\`: ${of.workingHoursADay}; expected at most 24`,
    );
  }
  const settings = Math.ceil(of.formAreaM2 / of.formsAtHandM2 - 1e-9);
  const daysPerSetting = of.hoursToSetAndRam / of.workingHoursADay + of.strippingHours / 24;
  return {
    settings,
    daysPerSetting,
    days: settings * daysPerSetting,
    message: say`${settings} settings of ${formatFixed(daysPerSetting, 1)} days each, ${formatFixed(settings * daysPerSetting, 1)} days in all, stripped after ${of.strippingHours} h as entered; local rules and curing govern.`,
  };
}
