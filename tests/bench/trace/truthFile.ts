import { readFileSync } from 'node:fs'
import { truthSchema, type PhotoTruth } from '../../support/truth'
export type { PhotoTruth }
/** @throws ZodError when the file is not of the shape that tests/photos/README.md describes */
export const readTruthFile = (file: string): PhotoTruth =>
  truthSchema.parse(JSON.parse(readFileSync(file, 'utf8')))
