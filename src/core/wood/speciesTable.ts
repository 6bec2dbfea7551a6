import { InvariantError } from '../units'
import type { Cited, Species, WoodSource } from './species'

/** GPa in a million pounds-force per square inch: 6894.757 Pa × 10⁶ / 10⁹ (units). */
const GPA_PER_MPSI = 6.894757293168361

const LETTERS: Readonly<Record<string, WoodSource>> = {
  a: 'handbook-4-3',
  i: 'handbook-4-4',
  b: 'handbook-5-5b',
  s: 'handbook-5-3-copy',
  c: 'handbook-13-5-checked',
  m: 'from-memory',
}

/**
 * One row: id | name | Latin name | gravity (g: on green volume) | shrinkage % radial, tangential, volumetric | bending
 * modulus in 10⁶ lbf/in² or – . Each figure ends in the letter of its source (LETTERS).
 */
const ROWS = `
alder-red|Alder, red|Alnus rubra|.41s|4.4a|7.3a|12.6a|1.38s
ash-black|Ash, black|Fraxinus nigra|.49s|5.0a|7.8a|15.2a|1.60s
ash-green|Ash, green|Fraxinus pennsylvanica|.56s|4.6a|7.1a|12.5a|1.66s
ash-white|Ash, white|Fraxinus americana|.60s|4.9a|7.8a|13.3a|1.74s
basswood|Basswood, American|Tilia americana|.37s|6.6a|9.3a|15.8a|1.46s
beech|Beech, American|Fagus grandifolia|.64s|5.5a|11.9a|17.2a|1.72s
birch-paper|Birch, paper|Betula papyrifera|.55s|6.3a|8.6a|16.2a|1.59s
birch-yellow|Birch, yellow|Betula alleghaniensis|.62s|7.3a|9.5a|16.8a|2.01s
butternut|Butternut|Juglans cinerea|.38s|3.4a|6.4a|10.6a|1.18s
cherry-black|Cherry, black|Prunus serotina|.50s|3.7a|7.1a|11.5a|1.49s
chestnut|Chestnut, American|Castanea dentata|.43s|3.4a|6.7a|11.6a|1.23s
cottonwood|Cottonwood, eastern|Populus deltoides|.40s|3.9a|9.2a|13.9a|1.37s
elm-american|Elm, American|Ulmus americana|.50s|4.2a|9.5a|14.6a|1.34s
elm-rock|Elm, rock|Ulmus thomasii|.63s|4.8a|8.1a|14.9a|1.54s
elm-slippery|Elm, slippery|Ulmus rubra|.53s|4.9a|8.9a|13.8a|1.49s
hackberry|Hackberry|Celtis occidentalis|.53s|4.8a|8.9a|13.8a|1.19s
pecan|Hickory, pecan|Carya illinoinensis|.66s|4.9a|8.9a|13.6a|1.73s
hickory-pignut|Hickory, pignut|Carya glabra|.75s|7.2a|11.5a|17.9a|2.26s
locust-black|Locust, black|Robinia pseudoacacia|.69s|4.6c|7.2c|10.2m|2.05s
honeylocust|Honeylocust|Gleditsia triacanthos|.60gm|4.2c|6.6c|10.8m|1.63s
maple-bigleaf|Maple, bigleaf|Acer macrophyllum|.48s|3.7c|7.1c|11.6m|1.45s
maple-red|Maple, red|Acer rubrum|.54s|4.0c|8.2c|12.6m|1.64s
maple-silver|Maple, silver|Acer saccharinum|.47m|3.0c|7.2c|12.0m|1.14m
maple-sugar|Maple, sugar|Acer saccharum|.63s|4.8c|9.9c|14.7s|1.83s
oak-red|Oak, northern red|Quercus rubra|.63s|4.0s|8.6s|13.7m|1.82m
oak-white|Oak, white|Quercus alba|.68s|5.6a|10.5a|16.3a|1.78s
sweetgum|Sweetgum|Liquidambar styraciflua|.52m|5.3a|10.2a|15.8a|1.64m
sycamore|Sycamore, American (plane)|Platanus occidentalis|.49m|5.0a|8.4a|14.1a|1.42m
walnut-black|Walnut, black|Juglans nigra|.55s|5.5a|7.8a|12.8a|1.68s
willow-black|Willow, black|Salix nigra|.39m|3.3a|8.7a|13.9a|1.01m
yellow-poplar|Yellow-poplar (tulipwood)|Liriodendron tulipifera|.42s|4.6a|8.2a|12.7a|1.58s
redcedar-eastern|Redcedar, eastern|Juniperus virginiana|.47m|3.1a|4.7a|7.8a|.88m
redcedar-western|Redcedar, western|Thuja plicata|.32m|2.4a|5.0a|6.8a|1.11m
cedar-incense|Cedar, incense|Calocedrus decurrens|.37m|3.3a|5.2a|7.7a|1.04m
douglas-fir|Douglas-fir, coast|Pseudotsuga menziesii|.48m|4.8a|7.6a|12.4a|1.95m
mahogany|Mahogany, true|Swietenia macrophylla|.45gm|3.0i|4.1i|7.8i|1.50m
mahogany-african|Mahogany, African|Khaya spp.|.42gm|2.5i|4.5i|8.8i|1.40m
teak|Teak|Tectona grandis|.55gb|2.5m|5.8m|7.0m|1.55b
iroko|Iroko|Milicia excelsa|.54gm|2.8m|3.8m|8.8m|1.46m
`

const FIGURE = /^([\d.]+)(g?)([a-z])$/

function figureOf(text: string, factor: number): Cited & { readonly isGreen: boolean } {
  const [, digits = '', green = '', letter = ''] = FIGURE.exec(text) ?? []
  const source = LETTERS[letter]
  if (source === undefined) throw new InvariantError('a figure of wood needs its source', { text })
  return { value: Number(digits) * factor, source, isGreen: green === 'g' }
}

const cited = (text: string, factor: number): Cited => {
  const { value, source } = figureOf(text, factor)
  return { value, source }
}

function speciesOf(row: string): Species {
  const cells = row.split('|')
  const cell = (at: number): string => cells[at] ?? ''
  return {
    id: cell(0),
    name: cell(1),
    latinName: cell(2),
    gravity: cited(cell(3), 1),
    gravityBasis: figureOf(cell(3), 1).isGreen ? 'green' : 'dry',
    radialFraction: cited(cell(4), 0.01),
    tangentialFraction: cited(cell(5), 0.01),
    volumetricFraction: cited(cell(6), 0.01),
    elasticityGPa: cell(7) === '–' ? null : cited(cell(7), GPA_PER_MPSI),
  }
}

/** Kinds of wood that slabs are sold in, with the figures of the Wood Handbook. Rules: WOOD-1. */
export const WOOD_SPECIES: readonly Species[] = ROWS.trim().split('\n').map(speciesOf)

/** What makers say for what the table calls otherwise. Common usage, no source. */
const ALIASES: Readonly<Record<string, string>> = {
  ash: 'ash-white',
  oak: 'oak-white',
  'red oak': 'oak-red',
  walnut: 'walnut-black',
  cherry: 'cherry-black',
  maple: 'maple-sugar',
  'hard maple': 'maple-sugar',
  'soft maple': 'maple-red',
  elm: 'elm-american',
  poplar: 'yellow-poplar',
  tulipwood: 'yellow-poplar',
  cottonwood: 'cottonwood',
  lime: 'basswood',
  birch: 'birch-yellow',
  hickory: 'hickory-pignut',
  locust: 'locust-black',
  plane: 'sycamore',
  willow: 'willow-black',
  'western red cedar': 'redcedar-western',
  'douglas fir': 'douglas-fir',
}

const plain = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[^a-z ]+/g, ' ')
    .replace(/ +/g, ' ')
    .trim()

/** `Ash, white` as makers say it: `white ash`. */
const turned = (name: string): string =>
  plain(
    name
      .replace(/\(.*\)/, '')
      .split(',')
      .toReversed()
      .join(' '),
  )

/**
 * The kind of wood that a maker's word means.
 * @param text an id, a name of the table in either order, a Latin name or a common short name; any case
 * @returns null where no such wood is in the table: never a guess by likeness
 * Rules: WOOD-1.
 */
export function speciesNamed(text: string): Species | null {
  const id = text.trim().toLowerCase()
  const word = plain(text)
  return (
    WOOD_SPECIES.find(
      (species) =>
        species.id === id ||
        [plain(species.name), turned(species.name), plain(species.latinName)].includes(word),
    ) ??
    WOOD_SPECIES.find((species) => species.id === ALIASES[word]) ??
    null
  )
}
