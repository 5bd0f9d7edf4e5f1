import react from '@vitejs/plugin-react';
import { defineConfig, type Plugin } from 'vite';

/** The development server puts an inline script into the page; only there the policy has to step aside. */
const policyOnlyInBuilds: Plugin = {
  name: 'lastinch-policy-only-in-builds',
  apply: 'serve',
  transformIndexHtml: (html) => html.replace(/<meta\s+http-equiv="Content-Security-Policy"[^>]*>/s, ''),
};

export default defineConfig({
  root: import.meta.dirname,
  // Relative addresses: the built folder works from any place of any server.
  base: './',
  plugins: [react(), policyOnlyInBuilds],
  build: {
    target: 'es2022',
    outDir: 'dist',
    emptyOutDir: true,
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    rolldownOptions: {
      output: {
        // What seldom changes stays in the browser's cache when the workbench does.
        codeSplitting: {
          groups: [
            {
              name: 'screen',
              test: /node_modules\/(react|react-dom|scheduler|react-aria|react-aria-components|react-stately|@react-|@internationalized|clsx)/,
            },
            { name: 'reader', test: /node_modules\/(yaml|zod)\// },
          ],
        },
      },
    },
  },
  worker: { format: 'es' },
});
