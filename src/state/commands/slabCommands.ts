import {
  blankPhotoSlab,
  blankStationSlab,
  defaultNames,
  type Option,
  type Photo,
  type Plan,
  type Slab,
} from '../../core/plan'
import { InvariantError } from '../../core/units'
import type { Command } from '../command'
import { kept, patched, patchedList, withAdded, withSlab, withPhotoCapture, withoutItem } from '../planEdits'
import { withoutPieces } from './withoutPieces'

interface NewSlab {
  readonly slabId: string
  readonly name?: string
  readonly thicknessMm?: number
}

const freeSlabName = (plan: Plan): string => {
  let number = plan.slabs.length + 1
  while (plan.slabs.some((slab) => slab.name === defaultNames.slab(number))) number++
  return defaultNames.slab(number)
}

const withNewSlab = (
  plan: Plan,
  { name, thicknessMm }: NewSlab,
  make: (name: string, thicknessMm: number | null) => Slab,
): Plan => {
  const slab = make(name ?? freeSlabName(plan), thicknessMm ?? null)
  return { ...plan, slabs: withAdded(plan.slabs, slab, 'slab') }
}

/** A photo as it was taken in: whatever was set on it elsewhere is left behind. */
type NewPhoto = Omit<Photo, 'observations' | 'straightLines'>

const unseen = (photo: NewPhoto): Photo => ({ ...photo, observations: [], straightLines: [] })

export const addPhotoSlab: Command<NewSlab & { readonly photo: NewPhoto }> = {
  name: 'addPhotoSlab',
  history: 'step',
  apply: (plan, args) =>
    withNewSlab(plan, args, (name, thicknessMm) =>
      blankPhotoSlab(args.slabId, name, unseen(args.photo), thicknessMm),
    ),
}

export const addStationSlab: Command<NewSlab> = {
  name: 'addStationSlab',
  history: 'step',
  apply: (plan, args) =>
    withNewSlab(plan, args, (name, thicknessMm) => blankStationSlab(args.slabId, name, thicknessMm)),
}

export const renameSlab: Command<{ readonly slabId: string; readonly name: string }> = {
  name: 'renameSlab',
  history: 'step',
  apply: (plan, { slabId, name }) => withSlab(plan, slabId, (slab) => patched(slab, { name })),
}

export type SlabFacts = Pick<
  Slab,
  'thicknessMm' | 'species' | 'tag' | 'moistureFraction' | 'priceCents' | 'edges'
>

export const setSlabFacts: Command<{ readonly slabId: string; readonly facts: Partial<SlabFacts> }> = {
  name: 'setSlabFacts',
  history: 'step',
  apply: (plan, { slabId, facts }) => withSlab(plan, slabId, (slab) => patched(slab, facts)),
}

const withoutSlab = (option: Option, slabId: string): Option => {
  const lifted = option.footprint?.slabId === slabId ? { ...option, footprint: null } : option
  return withoutPieces(lifted, (piece) => piece.slabId === slabId)
}

/** Whatever lay on the slab or was cut from it goes with it: footprint, named pieces, their placements and cuts. */
export const removeSlab: Command<{ readonly slabId: string }> = {
  name: 'removeSlab',
  history: 'step',
  apply: (plan, { slabId }) => ({
    ...plan,
    slabs: withoutItem(plan.slabs, slabId, 'slab'),
    options: plan.options.map((option) => withoutSlab(option, slabId)),
  }),
}

/** Marks and taped distances belong to the slab and stay; what was placed in the old photo's pixels goes. */
export const replacePhoto: Command<{
  readonly slabId: string
  readonly photo: NewPhoto
}> = {
  name: 'replacePhoto',
  history: 'step',
  apply: (plan, { slabId, photo }) =>
    withSlab(plan, slabId, (slab) =>
      withPhotoCapture(slab, (capture) => ({
        ...capture,
        photos: [unseen(photo)],
        datum: null,
        traces: kept(capture.traces, () => false),
      })),
    ),
}

type Stations = Extract<Slab['capture'], { kind: 'stations' }>['stations']

export const setStations: Command<{ readonly slabId: string; readonly stations: Stations }> = {
  name: 'setStations',
  history: 'step',
  apply: (plan, { slabId, stations }) =>
    withSlab(plan, slabId, (slab) => {
      if (slab.capture.kind !== 'stations') throw new InvariantError('slab has a photo', { slabId })
      return patchedList(slab, 'capture', patched(slab.capture, { stations }))
    }),
}

export const setFlatness: Command<{ readonly slabId: string; readonly flatness: Slab['flatness'] }> = {
  name: 'setFlatness',
  history: 'step',
  apply: (plan, { slabId, flatness }) => withSlab(plan, slabId, (slab) => patched(slab, { flatness })),
}
