import preact from '@astrojs/preact';
import starlight from '@astrojs/starlight';
import { defineConfig } from 'astro/config';

export default defineConfig({
  site: process.env.SITE_URL ?? 'https://uphill-measured.example',
  base: process.env.BASE_PATH ?? '/',
  srcDir: './site',
  publicDir: './site/public',
  prefetch: false,
  integrations: [
    starlight({ title: 'Uphill, Measured', markdown: { processedDirs: ['./content/'] }, expressiveCode: false }),
    preact(),
  ],
});
