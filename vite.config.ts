import { cpus } from 'node:os'
import react from '@vitejs/plugin-react'
import type { Plugin } from 'vite'
import { defineConfig } from 'vitest/config'
import { offlinePlugin } from './.scripts/offlinePlugin.mjs'

/**
 * The page forbids inline scripts and outside requests. Only the development server needs an exception: it puts
 * a small inline script on the page and speaks to it over a socket. The built page keeps the strict policy.
 */
const relaxPolicyInDevelopment: Plugin = {
  name: 'relax-policy-in-development',
  apply: 'serve',
  transformIndexHtml: (html) =>
    html
      .replace("script-src 'self'", "script-src 'self' 'unsafe-inline'")
      .replace("connect-src 'self'", "connect-src 'self' ws:"),
}

// Half of the tests compute for seconds; more workers than cores would only make each other time out.
const maxWorkers = Math.max(1, Math.min(4, cpus().length))

// Suites that measure time or drive the one browser run a file at a time.
const oneAtATime = { fileParallelism: false, maxWorkers: 1, environment: 'node' } as const

export default defineConfig({
  base: './',
  plugins: [react(), relaxPolicyInDevelopment, offlinePlugin()],
  worker: { format: 'es' },
  build: {
    target: 'es2022',
    manifest: true,
    modulePreload: { polyfill: false },
    chunkSizeWarningLimit: 1000,
  },
  test: {
    maxWorkers,
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          environment: 'node',
          include: ['src/**/*.test.ts', 'tests/**/*.test.ts'],
          exclude: ['tests/e2e/**', 'tests/arch/fixtures/**'],
          testTimeout: 180_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'ui',
          environment: 'happy-dom',
          include: ['src/**/*.test.tsx', 'tests/**/*.test.tsx'],
          exclude: ['tests/e2e/**', 'tests/arch/fixtures/**'],
          testTimeout: 180_000,
        },
      },
      {
        extends: true,
        test: {
          ...oneAtATime,
          name: 'e2e',
          include: ['tests/e2e/**/*.e2e.ts'],
          globalSetup: ['tests/e2e/globalSetup.ts'],
          testTimeout: 120_000,
          hookTimeout: 120_000,
        },
      },
      {
        extends: true,
        test: {
          ...oneAtATime,
          name: 'bench',
          include: ['tests/bench/**/*.bench.ts'],
          testTimeout: 300_000,
        },
      },
      {
        extends: true,
        test: {
          ...oneAtATime,
          name: 'campaign',
          include: ['tests/campaign/**/*.campaign.ts'],
          globalSetup: ['tests/e2e/globalSetup.ts'],
          testTimeout: 3_600_000,
        },
      },
    ],
  },
})
