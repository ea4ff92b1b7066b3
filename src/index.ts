/** What a notebook may use, room by room. @module */

export * from "./batch/index.js";
export * from "./blend/index.js";
export * from "./blocks/index.js";
export * from "./entries/index.js";
export * from "./figures/index.js";
export * from "./findings/index.js";
export * from "./grading/index.js";
export * from "./guidance/index.js";
export * from "./lab/index.js";
export * from "./notebook/index.js";
export * from "./numerics/index.js";
export * from "./quantities/index.js";
export * from "./report/index.js";
export * from "./soil/index.js";
export * from "./strength/index.js";
export * from "./study/index.js";
export * from "./tables/index.js";
export * from "./words/index.js";
export * from "./workshop/index.js";
