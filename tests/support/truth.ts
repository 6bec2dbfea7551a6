import { readFileSync } from 'node:fs'
import { z } from 'zod'

const point2 = z.tuple([z.number(), z.number()])
const point3 = z.tuple([z.number(), z.number(), z.number()])
const matrix3 = z.tuple([point3, point3, point3])
const flags = z.array(z.union([z.boolean(), z.number()]).transform(Boolean))

const truthVoid = z.object({
  id: z.string(),
  type: z.string(),
  through: z.boolean(),
  depth_mm: z.number(),
  top_polygon_mm: z.array(point2),
  top_polygon_px: z.array(point2),
  top_occluded_count: z.number(),
  top_area_mm2: z.number(),
})

const marks = z.object({
  type: z.enum(['discs', 'crosses']),
  id: z.string(),
  size_mm: z.number(),
  centers_mm: z.array(point3),
  centers_px: z.array(point2),
  /** Keys are '1-2', '1-3' ...: one-based places in `centers_mm`. */
  pair_distances_mm: z.record(z.string(), z.number()),
})

const flatObject = z.object({
  type: z.enum(['board', 'rule']),
  id: z.string(),
  length_mm: z.number(),
  width_mm: z.number(),
  thickness_mm: z.number(),
  corners_top_face_mm: z.array(point3),
  corners_top_face_px: z.array(point2),
  corners_in_slab_plane_mm: z.array(point3),
  corners_in_slab_plane_px: z.array(point2),
})

export const truthSchema = z.object({
  name: z.string(),
  units: z.literal('mm'),
  photo: z.object({ width_px: z.number(), height_px: z.number() }),
  camera: z.object({
    fx: z.number(),
    fy: z.number(),
    cx: z.number(),
    cy: z.number(),
    k1: z.number(),
    k2: z.number(),
    R_plane_to_cam: matrix3,
    t_plane_to_cam_mm: point3,
  }),
  /** Plane (x mm, y mm, 1) to the pixel before the lens bows the picture. */
  homography_plane_mm_to_undistorted_px: matrix3,
  slab: z.object({
    thickness_mm: z.number(),
    top_outline_mm: z.array(point2),
    top_outline_px: z.array(point2),
    top_outline_undistorted_px: z.array(point2),
    top_outline_in_frame: flags,
    top_outline_occluded: flags,
    bottom_outline_mm: z.array(point2),
    edge_kind: z.array(z.string()),
    top_area_gross_mm2: z.number(),
    top_area_net_of_voids_mm2: z.number(),
    perimeter_mm: z.number(),
    bbox_mm: z.object({ length: z.number(), width: z.number() }),
    voids: z.array(truthVoid),
  }),
  references: z.array(z.discriminatedUnion('type', [marks, flatObject])),
})

export type PhotoTruth = z.infer<typeof truthSchema>
export type PhotoName = 'd1' | 'd2' | 'd3' | 'd4'

const photoUrl = (file: string): URL => new URL(`../photos/${file}`, import.meta.url)

/**
 * What a demo photo was rendered from.
 * @throws ZodError when the file is not of the shape that tests/photos/README.md describes
 */
export const readTruth = (name: PhotoName): PhotoTruth =>
  truthSchema.parse(JSON.parse(readFileSync(photoUrl(`${name}.json`), 'utf8')))

export const readPhotoBytes = (name: PhotoName): Uint8Array =>
  new Uint8Array(readFileSync(photoUrl(`${name}.jpg`)))

/**
 * Where a point of the slab's plane shows in the photo as taken: the homography, then the lens.
 * Pixel origin is the top-left corner of the top-left pixel.
 */
export const truthPlaneToPhotoPx = (
  truth: PhotoTruth,
  xMm: number,
  yMm: number,
): readonly [xPx: number, yPx: number] => {
  const { fx, fy, cx, cy, k1, k2 } = truth.camera
  const [rowU, rowV, rowW] = truth.homography_plane_mm_to_undistorted_px
  const apply = ([a, b, c]: readonly [number, number, number]): number => a * xMm + b * yMm + c
  const x = (apply(rowU) / apply(rowW) - cx) / fx
  const y = (apply(rowV) / apply(rowW) - cy) / fy
  const rSq = x * x + y * y
  const bow = 1 + k1 * rSq + k2 * rSq * rSq
  return [fx * x * bow + cx, fy * y * bow + cy]
}
