import initGeosJs from 'geos-wasm'
import type { Region } from '../../src/core/geometry'

/** Areas of grown or shrunk faces by GEOS (geos-wasm 3.1.1): an independent program in doubles, used in tests only. */
export async function geosOffsetArea(): Promise<(regions: readonly Region[], deltaMm: number) => number> {
  const geos = await initGeosJs()
  /** Chords per quarter circle: 256 keep within 5e-6 of the radius of the arc. */
  const chordsPerQuarter = 256
  return (regions, deltaMm) => {
    const text = wellKnownText(regions)
    const bytes = text.length + 1
    const textAt = geos.Module._malloc(bytes)
    geos.Module.stringToUTF8(text, textAt, bytes)
    const areaAt = geos.Module._malloc(8)
    const shape = geos.GEOSGeomFromWKT(textAt)
    const grown = geos.GEOSBuffer(shape, deltaMm, chordsPerQuarter)
    geos.GEOSArea(grown, areaAt)
    const areaMm2 = geos.Module.getValue(areaAt, 'double')
    geos.GEOSGeom_destroy(shape)
    geos.GEOSGeom_destroy(grown)
    geos.Module._free(textAt)
    geos.Module._free(areaAt)
    return areaMm2
  }
}

export function wellKnownText(regions: readonly Region[]): string {
  const polygons = regions.map(({ outer, holes }) => {
    const rings = [outer, ...holes].map((ring) => {
      const closed = [...ring, ...ring.slice(0, 1)]
      return `(${closed.map(([x, y]) => `${x} ${y}`).join(', ')})`
    })
    return `(${rings.join(', ')})`
  })
  return `MULTIPOLYGON (${polygons.join(', ')})`
}
