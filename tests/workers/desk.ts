import { rectifyingTransform, rectifyInto, slabFrame, slabScaleFromMarks } from '../../src/core/photo'
import { computePlan } from '../../src/core/plan'
import { importPhoto, getPhotoBytes, loadDemo, photoClient } from '../../src/state/planFiles'
import { planStore } from '../../src/state/planStore'
import { PhotoClient } from '../../src/workers'

/** What the tests of the photo worker use in a real browser. This page is no part of the program. */
export const desk = {
  PhotoClient,
  computePlan,
  getPhotoBytes,
  importPhoto,
  loadDemo,
  photoClient,
  planStore,
  rectifyInto,
  rectifyingTransform,
  slabFrame,
  slabScaleFromMarks,
}

export type Desk = typeof desk

Object.assign(globalThis, { desk })
