export type { Cited, Sawn, Species, WoodSource } from './species'
export { acrossShrinkageFraction } from './species'
export { speciesNamed, WOOD_SPECIES } from './speciesTable'
export {
  equilibriumMoistureFraction,
  FIBRE_SATURATION_FRACTION,
  humidityForMoisture,
} from './equilibriumMoisture'
export { movementBandMm, movementMm, slotLengthMm } from './movement'
export { conductivityWPerMK, densityKgPerM3, gravityAt } from './woodDensity'
export type { FaceWork, Flattening, HeightReading, Plane } from './flattening'
export { flattening, LEAST_READINGS, rippedReadings } from './flattening'
export type { BoardMeasure, SlabRule, SlabSize, Tally } from './boardMeasure'
export { boardMeasure } from './boardMeasure'
export type { BeamLoad, TopBeam } from './sag'
export { overhangSagMm, spanSagMm } from './sag'
