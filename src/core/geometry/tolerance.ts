/** Step of the integer grid that the clipping kernel works on, mm. Fine enough that a 10 m edge turns by < 1e-8 rad. */
export const CLIP_GRID_MM = 1e-4

/** Two points nearer than this are one point when rings are cleaned, mm. Ten grid steps: beyond the kernel's rounding. */
export const JOIN_TOLERANCE_MM = 1e-3

/** Faces smaller than this are rounding slivers of the clipping kernel and are dropped, mm². A 10 m edge × one grid step. */
export const SLIVER_AREA_MM2 = 1

/**
 * Greatest gap between a round offset corner and the chords drawn for it, mm; for offsets below 10 mm it is finer, a
 * 500th of the offset. A chord lies inside its arc, so a grown face comes out too small by at most arc length × gap:
 * 1.3 mm² for the whole circle of a 10 mm offset. Finer corners cost time: offsets of rough live edges are mostly corners.
 */
export const ARC_TOLERANCE_MM = 0.02
export const ARC_TOLERANCE_PER_OFFSET = 1 / 500

/** A mitred corner reaching further than this many offsets from its vertex is cut square instead. Sharper than 60°. */
export const MITRE_LIMIT = 2

/** A ring with more vertices than this is simplified before clipping: the kernel's time grows faster than the count. */
export const CLIP_VERTEX_LIMIT = 5000

/** How far a ring above the vertex limit may move when it is simplified before clipping, mm. */
export const CLIP_SIMPLIFY_MM = 0.1
