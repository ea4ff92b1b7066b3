import type { EarthElement } from "../batch/earthElement.js";

/** What is to be rammed, with the name that the study gives it. */
export type ElementConfig = EarthElement & { readonly name: string };
