/** A small hand-made sample of a mix, judged by hand and eye before any block is crushed. */
export interface WorkshopTrial {
  readonly id: string;
  /** What went in, in the user's words. */
  readonly mix: string;
  /** In the user's words: smooth, open, sandy, bony… */
  readonly texture?: string;
  /** Sharp, crumbling, broken… */
  readonly edges?: string;
  readonly thicknessMm?: number;
  /** Since it was made; colour means something only when it has dried fully. */
  readonly dryingHours?: number;
  /** The mass stood still between two weighings. */
  readonly dryToConstantMass?: boolean;
  /** Munsell notation by eye, such as `7.5YR 6/4`. Kept as written: it is not turned into a number. */
  readonly munsell?: string;
  /** CIE L*a*b*, D50, from a photograph with a grey card or from an instrument. */
  readonly lab?: { readonly l: number; readonly a: number; readonly b: number };
  readonly remark?: string;
  readonly row: number;
}
