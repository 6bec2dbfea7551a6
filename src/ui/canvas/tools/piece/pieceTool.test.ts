import { describe, expect, it } from 'vitest'
import { flatBox, flatOption, flatPlan, flatSlab } from '../../../../../tests/support/flatPlan'
import {
  drag,
  key,
  KEY_UP,
  playTool,
  press,
  release,
  tap,
  toolScene,
} from '../../../../../tests/support/toolScene'
import { handlesOf } from '../../handles'
import { pieceTool } from './pieceTool'

// The table reaches 150 mm over the slab's far edge: a gap; the near side leaves an offcut 400 mm wide.
const slab = flatSlab({ outline: flatBox(-200, -150, 2000, 900) })
const option = flatOption(2000, 800, { xMm: -100, yMm: -300 })
const plan = flatPlan(slab, option)
const camera = { scale: 0.25, x: 50, y: 50 }
const table = (more: Parameters<typeof toolScene>[0] = {}) =>
  toolScene({ plan, view: 'table', tool: 'piece', camera, ...more })

/** The near offcut, laid on the table already. */
function laidPlan() {
  const scene = table()
  const { commands } = playTool(pieceTool, scene, trayDrag(scene))
  const [command] = commands
  if (command?.name !== 'layPiece') throw new Error('no piece was laid')
  const { piece, placementId, pose } = command.args
  return flatPlan(slab, {
    ...option,
    pieces: [{ ...piece, slabId: 'slab' }],
    placements: [{ id: placementId, pieceId: piece.id, pose }],
  })
}

function trayDrag(scene: ReturnType<typeof table>) {
  const largest = scene.tray[0]
  const handle = handlesOf(scene).find(({ id }) => id === `piece/${largest?.piece.key}`)
  if (!handle) throw new Error('the tray is empty')
  const [x, y] = handle.screen
  return [press([x, y]), drag([x, y - 50]), drag([300, 60]), release([300, 60])] as const
}

describe('pieceTool', () => {
  it('drags an offcut out of the tray onto the table: named and laid in one command', () => {
    const scene = table()
    const { commands, last, steps } = playTool(pieceTool, scene, trayDrag(scene))
    const [command] = commands
    expect(commands).toHaveLength(1)
    if (command?.name !== 'layPiece') throw new Error('no piece was laid')
    expect(command.args).toMatchObject({ optionId: 'option', slabId: 'slab', placementId: 'new2' })
    expect(command.args.piece.id).toBe('new1')
    expect(last.select).toEqual({ kind: 'placement', placementId: 'new2' })
    expect(steps[2]?.draft).toEqual(command)
  })

  it('lets an offcut that is dropped beside the table go back to the tray', () => {
    const scene = table()
    const [first, second] = trayDrag(scene)
    const { commands } = playTool(pieceTool, scene, [first, second, release([780, 590])])
    expect(commands).toEqual([])
  })

  it('takes a laid piece off again when it is dragged away from the table', () => {
    const scene = table({ plan: laidPlan(), selection: { kind: 'placement', placementId: 'new2' } })
    const handle = handlesOf(scene).find(({ id }) => id === 'placement/new2')
    if (!handle) throw new Error('no piece lies on the table')
    const [x, y] = handle.screen
    const moved = playTool(pieceTool, scene, [press([x, y]), drag([x + 10, y]), release([x + 10, y])])
    expect(moved.commands[0]?.name).toBe('movePlacement')
    const off = playTool(pieceTool, scene, [press([x, y]), drag([x, y + 500]), release([x, y + 500])])
    expect(off.commands).toEqual([
      { name: 'removePlacement', args: { optionId: 'option', placementId: 'new2' } },
    ])
    expect(off.last.select).toBeNull()
  })

  it('turns a laid piece over about its middle, and nudges and turns it by keys', () => {
    const scene = table({ plan: laidPlan(), selection: { kind: 'placement', placementId: 'new2' } })
    const before = scene.option?.placements[0]?.pose
    const over = playTool(pieceTool, scene, [key('o'), KEY_UP]).commands[0]
    if (over?.name !== 'movePlacement' || !before) throw new Error('the piece was not turned over')
    expect(over.args.pose.turnedOver).toBe(!before.turnedOver)
    const nudged = playTool(pieceTool, scene, [key('ArrowDown', { shift: true }), KEY_UP]).commands[0]
    expect(nudged).toMatchObject({ name: 'movePlacement', args: { pose: { yMm: before.yMm + 10 } } })
    const removed = playTool(pieceTool, scene, [key('Delete')]).commands
    expect(removed).toEqual([{ name: 'removePlacement', args: { optionId: 'option', placementId: 'new2' } }])
  })

  it('lays the selected offcut into the largest gap by Enter', () => {
    const key1 = table().tray[0]?.piece.key ?? ''
    const scene = table({ selection: { kind: 'piece', key: key1 } })
    const { commands, last } = playTool(pieceTool, scene, [key('Enter')])
    expect(commands[0]?.name).toBe('layPiece')
    expect(last.say).toEqual({ kind: 'piece-laid' })
    expect(playTool(pieceTool, table(), [key('Enter')]).last.unused).toBe(true)
  })

  it('selects by a tap, and pans beside everything', () => {
    const scene = table()
    const handle = handlesOf(scene).find(({ id }) => id === `piece/${scene.tray[0]?.piece.key}`)
    const [x, y] = handle?.screen ?? [0, 0]
    expect(playTool(pieceTool, scene, [tap([x, y])]).last.select).toMatchObject({ kind: 'piece' })
    expect(playTool(pieceTool, scene, [press([790, 5])]).last.taken).toBe(false)
  })
})
