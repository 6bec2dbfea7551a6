import { describe, expect, it } from 'vitest'
import { flatOption, flatPlan, flatSlab } from '../../../../../tests/support/flatPlan'
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
import { footprintTool } from './footprintTool'

const camera = { scale: 0.25, x: 100, y: 100 }
const above = () => toolScene({ view: 'above', tool: 'footprint', camera })
const laid = (pose: { xMm: number; yMm: number; angleRad: number }) => ({
  name: 'layFootprint',
  args: { optionId: 'option', slabId: 'slab', pose: { ...pose, turnedOver: false } },
})

describe('footprintTool', () => {
  it('drags the table: drafts on the way, one command at the end', () => {
    const { steps, commands } = playTool(footprintTool, above(), [
      press([200, 150]),
      drag([202, 151]),
      drag([210, 150]),
      drag([225, 160]),
      release([225, 160]),
    ])
    expect(steps.map(({ draft }) => draft ?? null)).toEqual([
      null,
      null, // less than a tap's slop
      laid({ xMm: -60, yMm: -100, angleRad: 0 }),
      laid({ xMm: 0, yMm: -60, angleRad: 0 }),
      null,
    ])
    expect(commands).toEqual([laid({ xMm: 0, yMm: -60, angleRad: 0 })])
    expect(steps[0]?.select).toEqual({ kind: 'footprint' })
  })

  it('drags the table in the photo too, in true millimetres', () => {
    const photo = toolScene({ view: 'photo', tool: 'footprint' })
    const { commands } = playTool(footprintTool, photo, [
      press([300, 200]),
      drag([310, 195]),
      release([310, 195]),
    ])
    const [command] = commands
    if (command?.name !== 'layFootprint') throw new Error('the table was not moved')
    // 1 px of the photo is 1 mm
    expect(command.args.pose.xMm).toBeCloseTo(-60, 1)
    expect(command.args.pose.yMm).toBeCloseTo(-120, 1)
  })

  it('turns it about its middle by the handle', () => {
    const scene = above()
    const handle = handlesOf(scene).find(({ kind }) => kind === 'turnHandle')
    // 2000 × 800 from (−100, −100): its middle is (900, 300) mm, screen (325, 175); the handle stands 34 px off the end
    expect(handle?.screen[0]).toBeCloseTo(325 + 250 + 34, 6)
    expect(handle?.screen[1]).toBeCloseTo(175, 6)
    const { commands } = playTool(footprintTool, scene, [
      press([609, 175]),
      drag([325, 300]),
      release([325, 400]),
    ])
    const [command] = commands
    if (command?.name !== 'layFootprint') throw new Error('the table was not turned')
    // by hand: a quarter turn about (900, 300) takes the corner (−100, −100) to (1300, −700)
    expect(command.args.pose.angleRad).toBeCloseTo(Math.PI / 2, 9)
    expect(command.args.pose.xMm).toBeCloseTo(1300, 6)
    expect(command.args.pose.yMm).toBeCloseTo(-700, 6)
  })

  it('puts the handle at the other end when the first one is off screen', () => {
    const scene = { ...above(), size: { width: 600, height: 600 } }
    expect(handlesOf(scene).find(({ kind }) => kind === 'turnHandle')?.screen[0]).toBeCloseTo(325 - 284, 6)
  })

  it('nudges by arrow keys: 1 mm, with Shift 10, with Alt 0.1; a key held down is one step', () => {
    const { commands, steps } = playTool(footprintTool, above(), [
      key('ArrowRight'),
      key('ArrowRight', { shift: true }),
      key('ArrowUp', { alt: true }),
      KEY_UP,
    ])
    expect(commands).toEqual([laid({ xMm: -89, yMm: -100.1, angleRad: 0 })])
    expect(steps[0]?.draft).toEqual(laid({ xMm: -99, yMm: -100, angleRad: 0 }))
  })

  it('turns by a tenth of a degree with the square brackets, about its middle', () => {
    const { commands } = playTool(footprintTool, above(), [key(']'), key(']'), key('['), KEY_UP])
    const [command] = commands
    if (command?.name !== 'layFootprint') throw new Error('the table was not turned')
    const angle = (0.1 * Math.PI) / 180
    const { xMm, yMm, angleRad } = command.args.pose
    expect(angleRad).toBeCloseTo(angle, 12)
    // by hand: the corner lies (−1000, −400) from the middle (900, 300)
    expect(xMm).toBeCloseTo(900 - 1000 * Math.cos(angle) + 400 * Math.sin(angle), 9)
    expect(yMm).toBeCloseTo(300 - 1000 * Math.sin(angle) - 400 * Math.cos(angle), 9)
  })

  it('drops a held nudge by Escape', () => {
    const { commands } = playTool(footprintTool, above(), [key('ArrowRight'), key('Escape'), KEY_UP])
    expect(commands).toEqual([])
  })

  it('pans beside the table', () => {
    expect(playTool(footprintTool, above(), [press([30, 30])]).last.taken).toBe(false)
  })

  it('lays a table that is not laid yet with its middle where the slab is tapped', () => {
    const plan = flatPlan(flatSlab(), { ...flatOption(2000, 800, { xMm: 0, yMm: 0 }), footprint: null })
    const scene = toolScene({ plan, view: 'above', tool: 'footprint', camera })
    const { commands, last } = playTool(footprintTool, scene, [tap([325, 175])])
    expect(commands).toEqual([laid({ xMm: -100, yMm: -100, angleRad: 0 })])
    expect(last.say).toEqual({ kind: 'table-laid' })
  })
})
