/** Standard deviation of a traced point across its edge, px of the photo: common practice, no source. */
export const TRACE_SD_PX = 1.5
