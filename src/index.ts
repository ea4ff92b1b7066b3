export { parseSieve } from "./quantities/parseSieve.js";
