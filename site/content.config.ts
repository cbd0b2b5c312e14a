import { defineCollection } from 'astro:content';
import { docsSchema, i18nSchema } from '@astrojs/starlight/schema';
import { glob } from 'astro/loaders';

export const collections = {
  // Pages live beside the code, not inside the site, so that writers find them.
  docs: defineCollection({
    loader: glob({ base: './content', pattern: '**/[^_]*.{md,mdx}' }),
    schema: docsSchema(),
  }),
  i18n: defineCollection({
    loader: glob({ base: './site/i18n', pattern: '*.json' }),
    schema: i18nSchema(),
  }),
};
