import { type BrowserContext, test as base, expect } from '@playwright/test';

/**
 * The test function for pages: like Playwright's, but a test fails when a page says anything on the console, throws,
 * or asks another origin for something. A test that expects such a thing names it:
 *   test.use({ allowed: [/404/] })
 * A context that a test opens itself is watched after `watch(context)`.
 */
export const test = base.extend<{ allowed: RegExp[]; watch: (context: BrowserContext) => void; watched: undefined }>({
  allowed: [[], { option: true }],
  watch: async ({ allowed, baseURL }, use) => {
    const said: string[] = [];
    const note = (text: string) => {
      if (!allowed.some((each) => each.test(text))) said.push(text);
    };
    await use((context) => {
      context.on('console', (message) =>
        note(`console ${message.type()}: ${message.text()} (${message.page()?.url()})`),
      );
      context.on('weberror', (error) => note(`error: ${error.error().message}`));
      context.on('request', (request) => {
        const { protocol, origin } = new URL(request.url());
        if (protocol.startsWith('http') && origin !== baseURL) note(`request to another origin: ${request.url()}`);
      });
    });
    expect(said, 'what pages said or asked elsewhere').toEqual([]);
  },
  watched: [
    async ({ context, watch }, use) => {
      watch(context);
      await use(undefined);
    },
    { auto: true },
  ],
});

export { expect };
