import type { PxPoint } from '../../core/geometry'
import { InvariantError } from '../../core/units'
import type { Command } from '../command'
import {
  itemById,
  patched,
  patchedList,
  withAdded,
  withItem,
  withoutItem,
  withPhoto,
  withSlab,
} from '../planEdits'

interface InPhoto {
  readonly slabId: string
  readonly photoId: string
  readonly lineId: string
}

/** Three points or more along something straight on the slab's face. */
export const addStraightLine: Command<
  InPhoto & { readonly pointsPx: readonly PxPoint[]; readonly sdPx?: number }
> = {
  name: 'addStraightLine',
  history: 'step',
  apply: (plan, { slabId, photoId, lineId, pointsPx, sdPx }) => {
    if (pointsPx.length < 3) throw new InvariantError('a straight line needs three points', { lineId })
    return withSlab(plan, slabId, (slab) =>
      withPhoto(slab, photoId, (photo) => ({
        ...photo,
        straightLines: withAdded(
          photo.straightLines,
          { id: lineId, pointsPx, sdPx: sdPx ?? null },
          'straight line',
        ),
      })),
    )
  },
}

export const moveLinePoint: Command<
  InPhoto & { readonly index: number; readonly atPx: PxPoint; readonly sdPx?: number }
> = {
  name: 'moveLinePoint',
  history: 'step',
  apply: (plan, { slabId, photoId, lineId, index, atPx, sdPx }) =>
    withSlab(plan, slabId, (slab) =>
      withPhoto(slab, photoId, (photo) => {
        const { pointsPx } = itemById(photo.straightLines, lineId, 'straight line')
        if (pointsPx[index] === undefined) throw new InvariantError('no such point', { lineId, index })
        return patchedList(
          photo,
          'straightLines',
          withItem(photo.straightLines, lineId, 'straight line', (line) =>
            patched(line, { pointsPx: pointsPx.with(index, atPx), ...(sdPx === undefined ? {} : { sdPx }) }),
          ),
        )
      }),
    ),
}

export const removeStraightLine: Command<InPhoto> = {
  name: 'removeStraightLine',
  history: 'step',
  apply: (plan, { slabId, photoId, lineId }) =>
    withSlab(plan, slabId, (slab) =>
      withPhoto(slab, photoId, (photo) =>
        patchedList(photo, 'straightLines', withoutItem(photo.straightLines, lineId, 'straight line')),
      ),
    ),
}
