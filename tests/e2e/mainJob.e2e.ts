import { appTest } from '../support/appTest'
import { fingerHand, mouseHand } from '../support/hand'
import { doTheJob, FINGER, JOBS, MOUSE } from '../support/wholeJob'

for (const job of JOBS) {
  appTest(`the whole job on ${job.photo} by mouse, its figures true to the slab`, async ({ desktop }) => {
    await doTheJob(mouseHand(desktop.page), job, MOUSE, `job ${job.photo} mouse`)
  })

  appTest(`the whole job on ${job.photo} by touch on a phone`, async ({ phone }) => {
    await doTheJob(fingerHand(phone.page), job, FINGER, `job ${job.photo} touch`)
  })
}
