/** One slice of the stack, from bench to air: a finite volume of unit area. */
export interface HeatCell {
  readonly thicknessM: number
  readonly conductivityWPerMK: number
  /** Density × heat capacity, J/(m³ K). */
  readonly volumetricHeatJPerM3K: number
  readonly temperatureK: number
  /** Degree of cure, 0 to 1. */
  readonly degree: number
  /** Warming by the whole reaction without losses, K; 0 for what does not react. */
  readonly fullRiseK: number
  /** Loss to the sides of the gap, W/(m³ K). */
  readonly sideLossWPerM3K: number
  /** 0 for the first layer of resin and so on; −1 for what is beneath. */
  readonly layer: number
}

/** A slab of one material that does not react, divided into equal cells. */
export interface InertSlab {
  readonly thicknessM: number
  readonly conductivityWPerMK: number
  readonly volumetricHeatJPerM3K: number
  readonly temperatureK: number
  readonly cells: number
}

/** @returns the cells of an inert slab, from the bottom upward. */
export function inertCells(slab: InertSlab): readonly HeatCell[] {
  const cell: HeatCell = {
    thicknessM: slab.thicknessM / slab.cells,
    conductivityWPerMK: slab.conductivityWPerMK,
    volumetricHeatJPerM3K: slab.volumetricHeatJPerM3K,
    temperatureK: slab.temperatureK,
    degree: 0,
    fullRiseK: 0,
    sideLossWPerM3K: 0,
    layer: -1,
  }
  return Array.from({ length: slab.cells }, () => cell)
}
