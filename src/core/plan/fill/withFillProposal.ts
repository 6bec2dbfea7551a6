import type { FillPiece, FillProposal } from '../../layout'
import type { Option } from '../schema'

/**
 * The option with a proposal taken up: its pieces named, its cuts at the end of the list, its placements.
 * A named piece that lies unused in a cut offcut goes on as the first piece cut from it, so that earlier cuts still find it.
 * @param slabId the slab that the pieces are cut from
 * @param makeId a new id each time it is asked
 * Rules: LAY-24.
 */
export function withFillProposal(
  option: Option,
  slabId: string,
  { pieces }: Pick<FillProposal, 'pieces'>,
  makeId: () => string,
): Option {
  const goesOn = new Map(option.pieces.map(({ id, name }) => [id, name]))
  const named = pieces.map((piece) => {
    const name = goesOn.get(piece.offcutKey)
    goesOn.delete(piece.offcutKey)
    return { piece, oldId: name === undefined ? null : piece.offcutKey, oldName: name }
  })
  const names = freeNames(option)
  const terms = named.map(({ piece, oldId, oldName }) => ({
    piece,
    id: oldId ?? makeId(),
    name: oldName ?? names.next().value,
  }))
  const kept = option.pieces.filter(({ id }) => !named.some(({ oldId }) => oldId === id))
  return {
    ...option,
    pieces: [...kept, ...terms.map(({ id, name, piece }) => ({ id, name, slabId, anchor: piece.anchor }))],
    cuts: [...option.cuts, ...terms.flatMap(({ id, piece }) => lineCuts(id, piece, makeId))],
    placements: [
      ...option.placements,
      ...terms.map(({ id, piece }) => ({ id: makeId(), pieceId: id, pose: piece.pose })),
    ],
  }
}

const lineCuts = (pieceId: string, { cuts }: FillPiece, makeId: () => string): Option['cuts'] =>
  cuts.map(({ line, kerfMm, wasteSide }) => ({
    kind: 'line' as const,
    id: makeId(),
    pieceId,
    from: line.from,
    to: line.to,
    kerfMm,
    wasteSide,
  }))

/** F1, F2, … without those that are taken. */
function* freeNames({ pieces }: Option): Generator<string, string, undefined> {
  for (let number = 1; ; number += 1) {
    const name = `F${number}`
    if (!pieces.some((piece) => piece.name === name)) yield name
  }
}
