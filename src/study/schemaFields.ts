import { z } from "zod";
import { phrase } from "../words/say.js";
import { quantityField } from "./quantityField.js";

/** A text that says something. */
export const text = z.string().trim().min(1, phrase`This text is empty.`);
/** The name of a sheet inside the study folder that has our own layout. */
export const sheet = text;
/** A length, in metres. */
export const metres = (example: string) =>
  quantityField("length", example, { positive: true }, 0.001);
/** A way on the road, in kilometres. */
export const kilometres = (example: string) =>
  quantityField("distance", example, { min: 0, max: 20_000 });
/** A mass, in kilograms. */
export const kilograms = (example: string) =>
  quantityField("mass", example, { positive: true }, 0.001);
/** A share, in percent. */
export const percent = (example: string, max = 100) =>
  quantityField("ratio", example, { min: 0, max });
/** A density of soil, aggregate or cement, in kg/m³. */
export const density = (example: string) =>
  quantityField("density", example, { min: 500, max: 5000 });
