import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { InvariantError } from '../core/units'
import { hydrate } from '../state/planFiles'
import { keepProgram } from '../state/programVersion'
import { App } from './App'
import { reporting } from './files/reporting'
import { goToWork } from './stages/goToWork'
import { setReady } from './uiStore'
import './styles/index.css'

const place = document.getElementById('root')
if (place === null) throw new InvariantError('the page has no place for the program')

const opened = reporting(hydrate).then(goToWork).finally(setReady)
// Once the job is there: fetching the rest of the program must not delay it.
void opened.then(keepProgram)
createRoot(place).render(
  <StrictMode>
    <App />
  </StrictMode>,
)
