import type { FillProposal } from '../../../core/layout'
import { litresSaved } from '../../../core/layout'
import type { ResinResult } from '../../../core/plan'
import { savedCents } from '../../../core/resin'
import { useFormat } from '../../text/useFormat'
import { ChoiceGroup } from '../../fields/ChoiceGroup'
import { Figures } from '../Figures'
import { ft } from './ft'

interface Props {
  readonly proposals: readonly FillProposal[]
  readonly chosen: FillProposal
  readonly onChoose: (place: number) => void
  readonly resin: ResinResult | null
}

const nameOf = ({ virtues }: FillProposal): string => virtues.map((virtue) => ft(virtue)).join(', ')

/** The proposals side by side, and what the chosen one brings. */
export function ProposalChoice({ proposals, chosen, onChoose, resin }: Props) {
  const format = useFormat()
  const litres = resin === null ? null : litresSaved(chosen.filledMm2, resin.castThicknessMm)
  const cents = resin === null || litres === null ? null : savedCents(litres, resin)
  return (
    <>
      {proposals.length > 1 && (
        <ChoiceGroup
          label={ft('choose')}
          value={String(proposals.indexOf(chosen))}
          options={proposals.map((proposal, place) => ({ value: String(place), label: nameOf(proposal) }))}
          onChange={(place) => onChoose(Number(place))}
        />
      )}
      <Figures
        rows={[
          { name: ft('of-gaps'), figure: format.share(chosen.filledShareOfVoid) },
          { name: ft('of-reachable'), figure: format.share(chosen.filledShareOfReachable) },
          ...(litres === null ? [] : [{ name: ft('saved'), figure: format.volume(litres) }]),
          ...(cents === null ? [] : [{ name: ft('money'), figure: format.money(cents) }]),
          {
            name: ft('pieces'),
            figure:
              chosen.turnedOverCount === 0
                ? String(chosen.pieces.length)
                : ft('pieces-turned', { count: chosen.pieces.length, turned: chosen.turnedOverCount }),
          },
          { name: ft('cuts'), figure: String(chosen.cutCount) },
        ]}
      />
    </>
  )
}
