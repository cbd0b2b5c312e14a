import { defineCollection } from 'astro:content';
import { docsSchema, i18nSchema } from '@astrojs/starlight/schema';
import { glob } from 'astro/loaders';

export const collections = {
  docs: defineCollection({
    loader: glob({ base: './content', pattern: '**/[^_]*.{md,mdx}' }),
    schema: docsSchema(),
  }),
};
void i18nSchema;
