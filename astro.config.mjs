import { satteri } from '@astrojs/markdown-satteri';
import preact from '@astrojs/preact';
import starlight from '@astrojs/starlight';
import { defineConfig } from 'astro/config';
import { baseLinks } from './site/integrations/base-links.ts';
import { contentSecurity } from './site/integrations/content-security.ts';
import { mathFont } from './site/integrations/math-font.ts';
import { tableHeads } from './site/integrations/table-heads.ts';
import { unusedScripts } from './site/integrations/unused-scripts.ts';
import { unusedStyles } from './site/integrations/unused-styles.ts';
import { mathPlugin } from './site/math/plugin.ts';

// A host sets these two; without them the site works at the root of any address.
const site = process.env.SITE_URL ?? 'https://uphill-measured.example';
const base = process.env.BASE_PATH ?? '/';

/** What the form of a calculator needs, without its answer. */
const FORM = [
  'parts/(Island|island|Form|Field|Fold|legends|Onward|ShareBar|remembered|useScenario)\\.',
  'scenario/(scenario|schema|amounts|parameters/\\w+|definitions/common)\\.',
  'quantities/(format|units)\\.',
];

/** What only answers about a climb need, and no test day: that must be light on the hill, where there may be no signal. */
const CLIMBS = new RegExp(
  `calculators/(${[
    'model/(climb|heat|infer|powerForTime|profile|ride|settling|stages)\\.',
    'scenario/(binding|causes|comparison|limit-remarks|named|rides|setting)\\.',
    'parts/(BikeTable|Facts|Folded|labels|Plot|ProfileChart)\\.',
  ].join('|')})`,
);

export default defineConfig({
  site,
  base,
  srcDir: './site',
  publicDir: './site/public',
  outDir: './dist',
  trailingSlash: 'always',
  prefetch: false,
  build: {
    // A style inlined into a page by an island would be blocked by the policy.
    inlineStylesheets: 'never',
  },
  vite: {
    plugins: [
      {
        // Vite wraps every import() into a helper of a kilobyte that preloads style sheets; ours have none.
        name: 'plain-import',
        enforce: 'pre',
        load: (id) =>
          id === '\0vite/preload-helper.js' ? 'export const __vitePreload = (load) => load();' : undefined,
        generateBundle: {
          // after Vite has written the lists of files that the helper would have preloaded
          order: 'post',
          handler: (_, bundle) => {
            for (const chunk of Object.values(bundle)) {
              if (chunk.type !== 'chunk' || !chunk.code.includes('__vite__mapDeps')) continue;
              chunk.code = chunk.code
                .replace(/const __vite__mapDeps=.*\n/, '')
                .replace(/,\s*__vite__mapDeps\(\[[\d,]*\]\)/g, '');
            }
          },
        },
      },
    ],
    build: {
      // The helper that preloads chunks weighs more than it saves: a calculator loads one chunk later, mathjs, if ever.
      modulePreload: false,
      rolldownOptions: {
        // What all calculators share in three files, for fewer requests and better compression: the form, needed at once, and what
        // answers, needed with the first touch or for a link, in two parts.
        output: {
          codeSplitting: {
            groups: [
              {
                name: 'form',
                minShareCount: 4,
                test: new RegExp(`preact|calculators/(${FORM.join('|')})`),
                priority: 2,
              },
              {
                name: 'answers',
                minShareCount: 4,
                test: (id) => id.includes('calculators') && !CLIMBS.test(id),
                priority: 1,
              },
              { name: 'climbs', minShareCount: 4, test: CLIMBS },
            ],
          },
        },
        // Astro marks every MDX page with a directive that the bundler does not know, and removes it itself.
        onLog: (level, log, handler) => log.code === 'MODULE_LEVEL_DIRECTIVE' || handler(level, log),
      },
      // Pictures stay files: inlined into the style sheet, every page would carry the home page's ornament.
      assetsInlineLimit: (path) => (path.endsWith('.svg') ? false : undefined),
    },
  },
  security: {
    csp: {
      directives: [
        "default-src 'self'",
        "img-src 'self' data:",
        "connect-src 'self'",
        "worker-src 'self'",
        "base-uri 'none'",
        "object-src 'none'",
        "form-action 'none'",
      ],
      // Search compiles its index reader from WebAssembly.
      scriptDirective: { resources: ["'self'", "'wasm-unsafe-eval'"] },
      // Style attributes (not elements) are let through: Starlight and charts drawn on the server use them.
      styleDirective: { resources: ["'self'", { resource: "'unsafe-inline'", kind: 'attribute' }] },
    },
  },
  markdown: {
    // Highlighters colour by style attributes; our few code examples read well in plain ink.
    syntaxHighlight: false,
    processor: satteri({ features: { math: true }, hastPlugins: [mathPlugin(), tableHeads(), baseLinks(base)] }),
  },
  integrations: [
    starlight({
      title: 'Uphill, Measured',
      description: "What a bike's motor adds on a climb, measured fairly and carried honestly to your hill.",
      locales: { root: { label: 'English', lang: 'en-GB' } },
      expressiveCode: false,
      disable404Route: true,
      markdown: { processedDirs: ['./content/'] },
      routeMiddleware: './site/route-data.ts',
      components: {
        Head: './site/components/Head.astro',
        PageSidebar: './site/components/PageSidebar.astro',
        Search: './site/components/Search.astro',
        Sidebar: './site/components/Sidebar.astro',
        ThemeProvider: './site/components/ThemeProvider.astro',
        ThemeSelect: './site/components/ThemeSelect.astro',
      },
      customCss: ['./site/styles/tokens.css', './site/styles/site.css', './site/styles/tool.css'],
      sidebar: [
        {
          label: 'Read',
          items: [
            'learn/torque',
            'learn/peak-and-rated-power',
            'learn/watt-hours',
            'learn/range',
            'learn/power-to-weight',
            'learn/forces-on-a-climb',
            'learn/scaling-a-climb',
            'learn/assist-and-the-law',
            'learn/testing-method',
            'learn/reading-a-test',
          ],
        },
        {
          label: 'Compute',
          items: [
            'calculators/climb-time',
            'calculators/side-by-side',
            'calculators/bigger-hill',
            'calculators/power-to-weight',
            'calculators/torque-at-cadence',
            'calculators/gears-and-restart',
            'calculators/holding-peak-power',
            'calculators/watt-hours',
            'calculators/keep-up',
            'calculators/what-changes-it',
            'calculators/your-hill',
          ],
        },
        { label: 'Test', items: ['test/plan', 'test/day'] },
        {
          label: 'Scenarios',
          items: [
            'scenarios',
            'scenarios/after-work-hill',
            'scenarios/two-laps-one-battery',
            'scenarios/unassisted-friend',
            'scenarios/long-pass',
            'scenarios/restart-on-the-ramp',
            'scenarios/ramp-and-flat',
          ],
        },
        {
          label: 'Reference',
          items: [
            'reference/model',
            'reference/links',
            'reference/data-files',
            'reference/sources',
            'reference/glossary',
          ],
        },
      ],
    }),
    preact(),
    unusedScripts(),
    unusedStyles(),
    mathFont(),
    contentSecurity(),
  ],
});
