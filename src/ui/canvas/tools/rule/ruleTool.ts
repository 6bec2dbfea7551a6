import { t } from '../../../text/t'
import { clickSdPx } from '../clickCare'
import { pointsTool } from '../setPoints'

/** Two taps lay a rule or batten of known length: its ends. */
export const ruleTool = pointsTool({
  whenFull: 2,
  finished: ([from, to], pointer, scene) => {
    const { slab, photo, ruleSize } = scene
    if (!slab || !photo || !ruleSize || !from || !to) return null
    const ruleId = scene.newId()
    return {
      command: {
        name: 'layRule',
        args: {
          slabId: slab.id,
          photoId: photo.id,
          ruleId,
          markIds: [scene.newId(), scene.newId()],
          endsPx: [from, to],
          ...ruleSize,
          sdPx: clickSdPx(pointer, scene),
          name: freeName(slab.rules.map(({ name }) => name)),
        },
      },
      select: { kind: 'rule', ruleId },
      say: { kind: 'rule-laid' },
    }
  },
})

/** "Rule 1", or the first number that is free. */
function freeName(taken: readonly string[]): string {
  for (let number = 1; ; number++) {
    const name = t('canvas-rule-name', { number: String(number) })
    if (!taken.includes(name)) return name
  }
}
