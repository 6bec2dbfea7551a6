import type { Option, Photo, Plan, Slab } from '../core/plan'
import { InvariantError } from '../core/units'
import { sameData } from './sameData'

type PhotoCapture = Extract<Slab['capture'], { kind: 'photo' }>

interface HasId {
  readonly id: string
}

/** `changes` laid over `object`; the very object when they say nothing new. */
export function patched<T extends object>(object: T, changes: Partial<NoInfer<T>>): T {
  return sameData(object, { ...object, ...changes }) ? object : { ...object, ...changes }
}

/** The item with this id. @throws InvariantError when there is none */
export function itemById<T extends HasId>(items: readonly T[], id: string, what: string): T {
  const found = items.find((item) => item.id === id)
  if (found === undefined) throw new InvariantError(`no such ${what}`, { id })
  return found
}

/** The list with one item edited; the very list when the edit returns the very item. */
export function withItem<T extends HasId>(
  items: readonly T[],
  id: string,
  what: string,
  edit: (item: T) => T,
): readonly T[] {
  const before = itemById(items, id, what)
  const after = edit(before)
  return after === before ? items : items.map((item) => (item === before ? after : item))
}

/** @throws InvariantError when the id is taken already */
export function withAdded<T extends HasId>(items: readonly T[], item: T, what: string): readonly T[] {
  if (items.some((other) => other.id === item.id))
    throw new InvariantError(`${what} exists already`, { id: item.id })
  return [...items, item]
}

/** @throws InvariantError when there is no such item */
export function withoutItem<T extends HasId>(items: readonly T[], id: string, what: string): readonly T[] {
  const gone = itemById(items, id, what)
  return items.filter((item) => item !== gone)
}

/** The very list when every item passes. */
export function kept<T>(items: readonly T[], isKept: (item: T) => boolean): readonly T[] {
  return items.every(isKept) ? items : items.filter(isKept)
}

export const withSlab = (plan: Plan, slabId: string, edit: (slab: Slab) => Slab): Plan =>
  patchedList(plan, 'slabs', withItem(plan.slabs, slabId, 'slab', edit))

export const withOption = (plan: Plan, optionId: string, edit: (option: Option) => Option): Plan =>
  patchedList(plan, 'options', withItem(plan.options, optionId, 'option', edit))

/** Like `patched`, by reference: for lists that were edited with sharing. */
export const patchedList = <T extends object, K extends keyof T>(object: T, key: K, value: T[K]): T =>
  object[key] === value ? object : { ...object, [key]: value }

/** @throws InvariantError when the slab was measured by stations */
export function withPhotoCapture(slab: Slab, edit: (capture: PhotoCapture) => PhotoCapture): Slab {
  if (slab.capture.kind !== 'photo') throw new InvariantError('slab has no photo', { id: slab.id })
  return patchedList(slab, 'capture', edit(slab.capture))
}

export const withPhoto = (slab: Slab, photoId: string, edit: (photo: Photo) => Photo): Slab =>
  withPhotoCapture(slab, (capture) =>
    patchedList(capture, 'photos', withItem(capture.photos, photoId, 'photo', edit)),
  )
