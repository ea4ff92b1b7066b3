/** One block of a report as data (`ReportBlock`), which the report reads in place of its HTML. */
export const NODE_MIME = "application/vnd.loambook.node+json";
/** Plotly's figure JSON, drawn where a front end has a renderer for it. */
export const PLOTLY_MIME = "application/vnd.plotly.v1+json";
export const SVG_MIME = "image/svg+xml";
export const HTML_MIME = "text/html";
export const TEXT_MIME = "text/plain";

/** One thing to show, in several forms by MIME type, and what is to be known of each form. */
export interface MimeBundle {
  readonly data: Readonly<Record<string, unknown>>;
  readonly metadata: Readonly<Record<string, unknown>>;
}
