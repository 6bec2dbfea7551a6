import type { BuildResult } from '../../../core/plan'
import { useFormat } from '../../text/useFormat'
import { Figures } from '../Figures'
import { PanelPart } from '../PanelPart'
import { bt } from './bt'
import { SheetDiagram } from './SheetDiagram'

type Form = NonNullable<BuildResult['form']>

function Parts({ form }: { readonly form: Form }) {
  const format = useFormat()
  return (
    <table>
      <thead>
        <tr>
          <th scope="col">{bt('parts-part')}</th>
          <th scope="col" className="number">
            {bt('parts-size')}
          </th>
        </tr>
      </thead>
      <tbody>
        {form.parts.map(({ name, lengthMm, widthMm }) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td className="number">
              {format.length(lengthMm)} × {format.length(widthMm)}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

/** The parts of the form, and the sheets that they are sawn from. */
export function SheetsPart({ form }: { readonly form: Form }) {
  const format = useFormat()
  const { cutting } = form
  if (form.parts.length === 0) return null
  return (
    <PanelPart title={bt('sheet-title')}>
      {cutting === null ? (
        <p className="example-warning">{bt('sheet-does-not-fit')}</p>
      ) : (
        <>
          <p className="sheet-verdict">{bt(form.isProvenLeast ? 'sheet-proven' : 'sheet-not-proven')}</p>
          {cutting.sheets.map((use, at) => (
            // A cutting has no names: its sheets are told apart by their place in it.
            <SheetDiagram key={`${at}/${use.stock}`} form={form} use={use} number={at + 1} />
          ))}
          <p className="note">{bt('sheet-cuts-note')}</p>
          {cutting.costCents > 0 && (
            <Figures rows={[{ name: bt('sheet-cost'), figure: format.money(cutting.costCents) }]} />
          )}
        </>
      )}
      <Parts form={form} />
    </PanelPart>
  )
}
