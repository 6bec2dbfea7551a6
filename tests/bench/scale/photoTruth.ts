import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import jpeg from 'jpeg-js'
import { z } from 'zod'
import { inspectImageFile, type PixelWindow } from '../../../src/core/photo'

const point2 = z.tuple([z.number(), z.number()])
const point3 = z.tuple([z.number(), z.number(), z.number()])
const matrix3 = z.tuple([point3, point3, point3])
const flags = z.array(z.union([z.boolean(), z.number()]).transform(Boolean))

const markReference = z.object({
  type: z.string(),
  centers_mm: z.array(point3),
  centers_px: z.array(point2),
  pair_distances_mm: z.record(z.string(), z.number()),
  in_frame: flags.optional(),
  occluded: flags.optional(),
})
const flatReference = z.object({
  type: z.string(),
  length_mm: z.number(),
  width_mm: z.number(),
  thickness_mm: z.number(),
  corners_top_face_mm: z.array(point3),
  corners_top_face_px: z.array(point2),
  in_frame: flags.optional(),
  occluded: flags.optional(),
})
const otherReference = z.object({ type: z.string() })

const truthSchema = z.object({
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
  slab: z.object({
    top_outline_mm: z.array(point2),
    top_outline_px: z.array(point2),
    top_outline_in_frame: flags,
    top_outline_occluded: flags,
  }),
  references: z.array(z.union([markReference, flatReference, otherReference])),
})

export type Truth = z.infer<typeof truthSchema>
export type MarkReference = z.infer<typeof markReference>
export type FlatReference = z.infer<typeof flatReference>

/** A photo with the truth that it was rendered from. */
export interface BenchPhoto {
  readonly name: string
  readonly truth: Truth
  readonly image: PixelWindow
  readonly focalLength35mm: number | null
}

/** The photos in a folder and the folders in it that have a truth file beside them: paths within the folder. */
export const photosWithTruth = (folder: string): readonly string[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => /\.jpe?g$/i.test(file))
    .filter((file) => existsSync(join(folder, file.replace(/\.jpe?g$/i, '.json'))))
    .sort()

/**
 * @throws ZodError when the truth is not of the shape that tests/photos/README.md describes, Error for a bad picture
 */
export function readBenchPhoto(folder: string, file: string): BenchPhoto {
  const bytes = new Uint8Array(readFileSync(join(folder, file)))
  const facts = inspectImageFile(bytes)
  if (!facts.ok) throw new Error(`${file}: ${facts.problem.code}`)
  if (facts.value.orientation !== 1) throw new Error(`${file}: the format knows upright photos only`)
  const { width, height, data } = jpeg.decode(bytes, {
    useTArray: true,
    maxMemoryUsageInMB: 4096,
    maxResolutionInMP: 100,
  })
  const truth = truthSchema.parse(
    JSON.parse(readFileSync(join(folder, file.replace(/\.jpe?g$/i, '.json')), 'utf8')),
  )
  return {
    name: file.replace(/\.jpe?g$/i, ''),
    truth,
    image: { data: new Uint8ClampedArray(data), widthPx: width, heightPx: height, leftPx: 0, topPx: 0 },
    focalLength35mm: facts.value.focalLength35mm,
  }
}

/** Where a point of the slab's frame (z up) shows in the photo as taken. */
export function truthPx({ camera }: Truth, x: number, y: number, z: number): readonly [number, number] {
  const [r1, r2, r3] = camera.R_plane_to_cam
  const [t1, t2, t3] = camera.t_plane_to_cam_mm
  const along = (r: readonly [number, number, number], t: number): number =>
    r[0] * x + r[1] * y + r[2] * z + t
  const depth = along(r3, t3)
  const [xn, yn] = [along(r1, t1) / depth, along(r2, t2) / depth]
  const rr = xn * xn + yn * yn
  const bowed = 1 + rr * (camera.k1 + rr * camera.k2)
  return [camera.fx * xn * bowed + camera.cx, camera.fy * yn * bowed + camera.cy]
}
