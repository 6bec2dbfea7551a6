/**
 * Fetches every panel that comes late, so that a test of what a panel shows does not also time how fast a busy machine
 * turns its modules into code.
 */
export const panelsAtHand = async (): Promise<void> => {
  await Promise.all([
    import('../../src/ui/panels/cover/SlabsPanel'),
    import('../../src/ui/panels/PhotoPanel'),
    import('../../src/ui/panels/SizePanel'),
    import('../../src/ui/panels/EdgePanel'),
    import('../../src/ui/panels/TablePanel'),
    import('../../src/ui/panels/cover/CoverTools'),
    import('../../src/ui/panels/CutsPanel'),
    import('../../src/ui/panels/pour/PourPanel'),
    import('../../src/ui/panels/build/FormPanel'),
    import('../../src/ui/panels/build/PricePanel'),
    import('../../src/ui/panels/PaperPanel'),
    import('../../src/ui/text/coverTexts'),
    import('../../src/ui/text/paperTexts'),
    import('../../src/ui/text/pourTexts'),
    import('../../src/ui/text/slabTexts'),
    import('../../src/ui/text/tableTexts'),
  ])
}
