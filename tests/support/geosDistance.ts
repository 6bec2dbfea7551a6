import initGeosJs from 'geos-wasm'
import type { Region } from '../../src/core/geometry'
import { wellKnownText } from './geosArea'

/** Least distance between two faces by GEOS (geos-wasm 3.1.1): an independent program in doubles, used in tests only. */
export async function geosDistance(): Promise<(a: readonly Region[], b: readonly Region[]) => number> {
  const geos = await initGeosJs()
  const shapeOf = (regions: readonly Region[]): number => {
    const text = wellKnownText(regions)
    const bytes = text.length + 1
    const at = geos.Module._malloc(bytes)
    geos.Module.stringToUTF8(text, at, bytes)
    const shape = geos.GEOSGeomFromWKT(at)
    geos.Module._free(at)
    return shape
  }
  return (a, b) => {
    const [shapeA, shapeB] = [shapeOf(a), shapeOf(b)]
    const at = geos.Module._malloc(8)
    geos.GEOSDistance(shapeA, shapeB, at)
    const distanceMm = geos.Module.getValue(at, 'double')
    geos.GEOSGeom_destroy(shapeA)
    geos.GEOSGeom_destroy(shapeB)
    geos.Module._free(at)
    return distanceMm
  }
}
