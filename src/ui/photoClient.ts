/** The one photo worker of this page: that which photos are imported with, so that each is decoded once. */
export { photoClient } from '../state/planFiles'
