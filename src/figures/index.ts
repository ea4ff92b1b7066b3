/** Results as figures. @module */
export { blendChart, robustnessChart, sharesChart } from "./blend/blendChart.js";
export { frontierChart, ternaryChart } from "./blend/tradeoffCharts.js";
export { compactionChart } from "./compactionChart.js";
export { type Figure, figureInReport, withoutTitle } from "./figure.js";
export type { ChartBand } from "./grading/band.js";
export { guidanceBand, modelBand, uncertaintyBand } from "./grading/band.js";
export { type ChartCurve, type GradingChartOptions, gradingChart } from "./grading/gradingChart.js";
export { gradingResidualsChart, modelChart } from "./grading/modelChart.js";
export { guidanceRangesChart, guidanceRangesCharts } from "./guidanceRanges.js";
export { type PlasticitySample, plasticityChart } from "./plasticityChart.js";
export { lotsChart, operatingCharacteristicChart } from "./strength/controlCharts.js";
export { strengthByAgeChart } from "./strength/strengthByAge.js";
export { residualsChart, strengthChart } from "./strength/strengthChart.js";
export { type LineStyle, PALETTE, SERIES_STYLES, seriesStyle } from "./style.js";
export { type DrawableFigure, renderSvg } from "./svg/renderSvg.js";
export { type TextureSample, textureTriangle } from "./textureTriangle.js";
