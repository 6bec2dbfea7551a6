import type { Photo } from '../../core/plan'
import type { InputProblem, Result } from '../../core/units'
import { addLaterPhoto, addPhotoSlab, addStationSlab, replacePhoto } from '../../state/commands'
import { trackJob } from '../../state/jobStore'
import { newId } from '../../state/newId'
import {
  type DemoName,
  loadDemo,
  newPlan,
  openFile,
  type OpenedFile,
  savePlanFile,
} from '../../state/planFiles'
import { planStore } from '../../state/planStore'
import { run } from '../../state/run'
import { type SessionState, sessionStore, setNotice, setPhotoId } from '../../state/sessionStore'
import { goToWork } from '../stages/goToWork'
import { t } from '../text/t'
import { ask } from '../uiStore'
import { askWhichToKeep } from './askWhichToKeep'
import { handOut } from './handOut'
import { pickFile } from './pickFile'
import { reporting } from './reporting'

const PHOTO_FILES = 'image/jpeg,image/png,image/webp,image/*'
/** Phones offer nothing for an ending they do not know, so a plain zip and JSON stand beside our own. */
const ALL_FILES = `${PHOTO_FILES},.waneline,.zip,.json,application/zip,application/json`

type PutToUse = (photo: Photo) => Promise<void>

/** Opens a file; one that is too large to be worked on is offered in a smaller copy. */
async function open(file: File, putToUse: PutToUse, reduce = false): Promise<void> {
  const opened = await reporting(() => trackJob('job-opening', (job) => openFile(file, { reduce, ...job })))
  if (opened === null) return
  if (!opened.ok) {
    if (opened.problem.code === 'photo-too-large' && !reduce) offerSmaller(file, putToUse, opened.problem)
    return
  }
  await takeOpened(opened.value, putToUse)
  if (opened.value.kind === 'plan' && opened.value.twin !== undefined) {
    askWhichToKeep(opened.value.plan.name, opened.value.twin, file.lastModified)
  }
}

function offerSmaller(file: File, putToUse: PutToUse, problem: InputProblem): void {
  setNotice(null)
  ask({
    problem,
    yes: t('question-reduce-yes'),
    no: t('question-no'),
    onYes: () => void open(file, putToUse, true),
  })
}

async function takeOpened(opened: OpenedFile, putToUse: PutToUse): Promise<void> {
  if (opened.kind === 'photo') await putToUse(opened.photo)
  else goToWork()
}

/** A slab begins a job of its own, unless the job on the bench has none yet. @returns whether there is room for it */
async function makeRoomForSlab(): Promise<boolean> {
  if (planStore.getState().plan.slabs.length === 0) return true
  const begun: Result<unknown> | null = await reporting(newPlan)
  return begun?.ok === true
}

/** A new job without a photo: the slab's edges are taped from a datum. */
export async function startWithStations(): Promise<void> {
  if (!(await makeRoomForSlab())) return
  const slabId = newId()
  run(addStationSlab, { slabId })
  sessionStore.setState({ slabId, stage: 'trace', view: 'above', tool: 'select', selection: null })
}

async function startWithPhoto(photo: Photo): Promise<void> {
  if (!(await makeRoomForSlab())) return
  const slabId = newId()
  run(addPhotoSlab, { slabId, photo })
  sessionStore.setState({ slabId, stage: 'photo', view: 'photo', tool: 'select', selection: null })
}

/** Anything that was dropped, pasted or chosen: a photo or a saved job. */
export const openAnyFile = (file: File): Promise<void> => open(file, startWithPhoto)

/** A new job from a photo of the maker's own. */
export async function startOwnJob(source: 'file' | 'camera'): Promise<void> {
  const file = await pickFile({ accept: PHOTO_FILES, camera: source === 'camera' })
  if (file !== null) await openAnyFile(file)
}

export async function openFromDevice(): Promise<void> {
  const file = await pickFile({ accept: ALL_FILES })
  if (file !== null) await openAnyFile(file)
}

/** Another photo of the slab that is worked on: its marks and taped distances stay. */
export async function replacePhotoFromDevice(): Promise<void> {
  const file = await pickFile({ accept: PHOTO_FILES })
  if (file === null) return
  await open(file, async (photo) => {
    const { slabId } = sessionStore.getState()
    const { slabs } = planStore.getState().plan
    const slab = slabs.find(({ id }) => id === slabId) ?? slabs[0]
    if (slab?.capture.kind === 'photo') run(replacePhoto, { slabId: slab.id, photo })
  })
}

/** One more photo of the slab that is worked on: what is laid on the slab stays. */
export async function addLaterPhotoFromDevice(): Promise<void> {
  const file = await pickFile({ accept: PHOTO_FILES })
  if (file === null) return
  await open(file, async (photo) => {
    const { slabId } = sessionStore.getState()
    const { slabs } = planStore.getState().plan
    const slab = slabs.find(({ id }) => id === slabId) ?? slabs[0]
    if (slab?.capture.kind !== 'photo') return
    run(addLaterPhoto, { slabId: slab.id, photo })
    setPhotoId(photo.id)
    sessionStore.setState({ tool: 'mark' })
  })
}

const AT_ITS_PHOTO: Partial<SessionState> = { stage: 'photo', tool: 'select' }

/** One more slab for the job on the bench, by its photo; `next` is what the maker turns to then. */
export async function addSlabPhotoFromDevice(next = AT_ITS_PHOTO): Promise<void> {
  const file = await pickFile({ accept: PHOTO_FILES })
  if (file === null) return
  await open(file, async (photo) => {
    const slabId = newId()
    run(addPhotoSlab, { slabId, photo })
    sessionStore.setState({ slabId, view: 'photo', selection: null, ...next })
  })
}

/** Plan and photos in one file, handed to the browser to keep. */
export async function saveToDevice(): Promise<void> {
  const saved = await reporting(() => savePlanFile(planStore.getState().plan))
  if (saved === null) return
  handOut(saved.blob, saved.fileName)
  if (saved.missingPhotos > 0) {
    setNotice({ code: 'photos-not-in-file', values: { count: saved.missingPhotos } })
  }
}

export async function openDemo(name: DemoName): Promise<void> {
  const loaded = await reporting(() => loadDemo(name))
  if (loaded?.ok === true) goToWork()
}
