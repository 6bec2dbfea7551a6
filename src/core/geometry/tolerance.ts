/** Step of the integer grid that the clipping kernel works on, mm. Fine enough that a 10 m edge turns by < 1e-8 rad. */
export const CLIP_GRID_MM = 1e-4

/** Two points nearer than this are one point when rings are cleaned, mm. Ten grid steps: beyond the kernel's rounding. */
export const JOIN_TOLERANCE_MM = 1e-3

/** Faces smaller than this are rounding slivers of the clipping kernel and are dropped, mm². A 10 m edge × one grid step. */
export const SLIVER_AREA_MM2 = 1
