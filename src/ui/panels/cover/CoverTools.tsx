import type { Option, Slab } from '../../../core/plan'
import { BestPlacePart } from './BestPlacePart'
import { LargestPart } from './LargestPart'
import { useSubject } from './useSubject'

/** What the searches offer at the stage Table. */
export function CoverTools({ option, slab }: { readonly option: Option; readonly slab: Slab | null }) {
  const subject = useSubject(option, slab)
  if (subject === null) return null
  return (
    <>
      <BestPlacePart key={subject.slab.id} option={option} subject={subject} />
      <LargestPart option={option} subject={subject} />
    </>
  )
}
