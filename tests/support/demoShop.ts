import { blankShop, type Option, type Plan, type Slab } from '../../src/core/plan'

/** An invented shop's rates: no such shop, product or price exists. */
export const demoShop = (): Plan['shop'] => ({
  ...blankShop(),
  currency: 'EUR',
  hourCents: 4_800,
  sheets: [
    {
      id: 'sheet-1',
      name: 'Faced board 18 mm',
      lengthMm: 2800,
      widthMm: 2070,
      count: null,
      costCents: 7_400,
    },
    { id: 'sheet-2', name: 'Strip from the last form', lengthMm: 2300, widthMm: 160, count: 2, costCents: 0 },
  ],
  prices: {
    caulkCentsPerM: 70,
    tapeCentsPerM: 35,
    releaseCentsPerM2: 180,
    dripSheetCentsPerM2: 45,
    screwCents: 6,
    bladeCentsPerM: 30,
    keyCents: 900,
  },
  finish: { name: 'Hard oil', coats: 3, coverM2PerLitre: 14, centsPerLitre: 4_200 },
  overhead: { centsPerHour: 1_100, fraction: 0 },
  profit: { kind: 'margin', fraction: 0.2 },
  roundUpToCents: 1_000,
  taxFraction: 0.2,
  depositFraction: 0.4,
})

/** What the invented client's table stands on and comes in by. */
export const demoStanding = (standing: Option['standing']): Option['standing'] => ({
  ...standing,
  door: { widthMm: 860, heightMm: 2010 },
})

export const demoCosts = (): Option['quote'] => ({
  baseCents: 46_000,
  deliveryCents: 12_000,
  keys: 2,
  own: [
    {
      id: 'cost-1',
      group: 'consumables',
      name: 'Gloves and filters',
      quantity: 1,
      unit: '',
      unitCents: 2_400,
    },
  ],
})

/** Height of the slab's face over a level line as a straightedge would show it: cupped and a little twisted. */
export const demoHeights = (
  lengthMm: number,
  widthMm: number,
  thicknessMm: number,
): Slab['wood']['heights'] =>
  [0, 0.5, 1].flatMap((along) =>
    [-0.5, 0, 0.5].map((across) => ({
      xMm: Math.round(along * lengthMm),
      yMm: Math.round(across * widthMm),
      topMm: thicknessMm + Math.round(10 * (10 * across ** 2 + 3 * (along - 0.5) * across)) / 10,
      thicknessMm: null,
    })),
  )
