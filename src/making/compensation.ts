/**
 * What a machine makes of a drawing, to be taken back in the file. All a side, in the plane of the layers, mm; positive
 * where there is more material than drawn. A made outside is (1 + s) D + 2 outside, a made hole (1 + s) D − 2 holes.
 */
export interface Compensation {
  /** s in percent: an error that grows with the length; negative where parts shrink */
  readonly scalePercent: number;
  /** Tips, hubs and rims reach out by this */
  readonly outsidePerSideMm: number;
  /** Tooth flanks, fillets and roots reach out by this */
  readonly teethPerSideMm: number;
  /** The wall of a hole reaches in by this */
  readonly holesPerSideMm: number;
  /** The first layers reach out by this beyond the rest */
  readonly firstLayerPerSideMm: number;
}

/** Standard uncertainties of a compensation's figures. */
export type CompensationUncertainty = Compensation;
