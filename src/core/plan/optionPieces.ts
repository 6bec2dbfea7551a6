import { type MadeCut, type NamedMark, type NamedCut, pieceTree, setOutCut } from '../cuts'
import { crossedCuts } from './crossedCuts'
import { regionsAreaMm2 } from '../geometry'
import { namedCuts } from './footprintCuts'
import { namedPieces } from './namedPieces'
import { type Issue, issueOf } from './issue'
import { type Found, ready } from './part'
import type { SlabShapeResult } from './planResult'
import type { FootprintResult, PiecesResult, SetOutCut } from './tableResult'
import type { Option } from './schema'

export interface PiecesInput {
  readonly optionId: string
  readonly sides: Option['table']['sides']
  readonly cuts: Option['cuts']
  readonly pieces: Option['pieces']
  readonly placements: Option['placements']
  readonly footprint: FootprintResult
  readonly pose: NonNullable<Option['footprint']>['pose']
  readonly shape: SlabShapeResult
  readonly marks: readonly NamedMark[]
}

/** What the cuts make of the slab: pieces by name, and each cut as it is set out at the bench. */
export function optionPieces(input: PiecesInput): Found<PiecesResult> {
  const { footprint, shape } = input
  const cuts = namedCuts(input)
  const tree = pieceTree(shape.wood, cuts)
  const { pieces, issues } = namedPieces(tree.leaves, input)
  const yields = (cutId: string): readonly string[] =>
    pieces.filter((piece) => piece.cutId === cutId && piece.use !== 'table').map(({ name }) => name)
  const setOut = tree.cuts.flatMap((made): SetOutCut[] => {
    const cut = cuts.find(({ id }) => id === made.cutId)
    const said = input.cuts.find(({ id }) => id === made.cutId)
    if (cut === undefined || said === undefined || made.extentMm === null) return []
    return [
      {
        ...setOutCut(cut, made.extentMm, input.marks),
        cutId: cut.id,
        number: 0,
        side: said.kind === 'footprint' ? said.side : null,
        kerfMm: cut.kerfMm,
        yields: yields(cut.id),
      },
    ]
  })
  return ready(
    {
      slabId: footprint.slabId,
      pieces,
      cuts: setOut.map((cut, index) => ({ ...cut, number: index + 1 })),
      kerfAreaMm2: tree.cuts.reduce((sum, cut) => sum + cut.kerfAreaMm2, 0),
      pieceAreaMm2: regionsAreaMm2(tree.leaves.map(({ region }) => region)),
    },
    [...issues, ...cutIssues(input, cuts, tree.cuts)],
  )
}

function cutIssues(
  { optionId, cuts: said, pieces }: PiecesInput,
  cuts: readonly NamedCut[],
  made: readonly MadeCut[],
): readonly Issue[] {
  const numbers = new Map(said.map(({ id }, index) => [id, String(index + 1)]))
  const crossings = crossedCuts(said)
  return said.flatMap((cut): readonly Issue[] => {
    if (cut.kind !== 'line') return []
    const at = ['options', optionId, 'cuts', cut.id]
    const cutName = numbers.get(cut.id) ?? ''
    if (!cuts.some(({ id }) => id === cut.id))
      return [issueOf('cut-piece-unknown', 'blocker', at, { cutName })]
    const pieceName = pieces.find(({ id }) => id === cut.pieceId)?.name ?? ''
    const done = made.find(({ cutId }) => cutId === cut.id)
    const { kerfMm } = cut
    return [
      ...(done?.extentMm === null
        ? [issueOf('cut-misses-piece', 'warning', at, { cutName, pieceName })]
        : []),
      ...(done?.takesAll === true
        ? [issueOf('cut-kerf-takes-all', 'warning', at, { cutName, pieceName, kerfMm })]
        : []),
      ...crossings
        .filter(({ laterId }) => laterId === cut.id)
        .map(({ earlierId }) =>
          issueOf('cuts-cross', 'warning', [...at, earlierId], {
            cutName,
            otherName: numbers.get(earlierId) ?? '',
          }),
        ),
    ]
  })
}
