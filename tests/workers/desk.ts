import { rectifyingTransform, rectifyInto, slabFrame, slabScaleFromMarks } from '../../src/core/photo'
import { flush } from '../../src/state/autosave'
import { renamePlan, setPlanNote } from '../../src/state/commands'
import { getPhotoBytes, hydrate, importPhoto, loadDemo, photoClient } from '../../src/state/planFiles'
import { planStore } from '../../src/state/planStore'
import { run } from '../../src/state/run'
import { sessionStore } from '../../src/state/sessionStore'
import { PourClient } from '../../src/workers'

/** What the tests of workers and storage use in a real browser. This page is no part of the program. */
export const desk = {
  flush,
  getPhotoBytes,
  hydrate,
  importPhoto,
  loadDemo,
  photoClient,
  pourClient: () => new PourClient(),
  planStore,
  rectifyInto,
  rectifyingTransform,
  renamePlan,
  run,
  sessionStore,
  setPlanNote,
  slabFrame,
  slabScaleFromMarks,
}

export type Desk = typeof desk

Object.assign(globalThis, { desk })
