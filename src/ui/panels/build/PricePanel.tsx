import '../../styles/build.css'
import { useOption, useShownPlan } from '../../useActive'
import { CostsPart } from './CostsPart'
import { Freshness } from './Freshness'
import { OptionsPart } from './OptionsPart'
import { QuotePart } from './QuotePart'
import { RatesPart } from './RatesPart'
import { ShoppingPart } from './ShoppingPart'
import { TermsPart } from './TermsPart'
import { useShownBuild } from './useBuild'
import { WorkPart } from './WorkPart'
import { YardPart } from './YardPart'

const NOTHING_YET = { price: null, work: null, shopping: null } as const

/** What the table costs and what the client pays; the order of work and what is to be bought. */
export function PricePanel() {
  const option = useOption()
  const { shop } = useShownPlan()
  const shown = useShownBuild(option?.id ?? '')
  if (option === null) return null
  const { result } = shown
  const { price, work, shopping } = result ?? NOTHING_YET
  return (
    <>
      <Freshness {...shown} />
      {price !== null && (
        <div className="build-results" data-old={shown.isCurrent ? undefined : ''}>
          <QuotePart price={price} shop={shop} />
        </div>
      )}
      <OptionsPart option={option} />
      <YardPart price={price} />
      <TermsPart />
      <CostsPart option={option} />
      <RatesPart />
      <WorkPart option={option} work={work} />
      {shopping !== null && <ShoppingPart shopping={shopping} />}
    </>
  )
}
