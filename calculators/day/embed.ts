/*
 * The result inside another page: `/test/day/?view=embed#day=…`. It has no navigation, takes the width that the frame gives it, stores
 * nothing, and tells the page around it one thing: how high it is.
 */

/** `type` of the message to the page around. */
export const HEIGHT_MESSAGE = 'uphill-measured-height';

/** The page shows only the result: a script in its head has looked at the address before the first paint. */
export const isEmbedded = (): boolean => document.documentElement.hasAttribute('data-embedded');

/** Address of the embedded view, from that of the day. */
export function embedAddress(link: string): string {
  const address = new URL(link);
  address.search = '?view=embed';
  return address.href;
}

const escaped = (text: string): string =>
  text.replace(/[&<>"]/g, (sign) => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;' })[sign] ?? '&quot;');

/** What a publisher puts into a page: the frame, and the few lines that give it its height. Without them it scrolls. */
export const embedCode = (
  link: string,
  title: string,
): string => `<iframe src="${escaped(embedAddress(link))}" title="${escaped(title)}" style="width: 100%; height: 60rem; border: 0" loading="lazy"></iframe>
<script>
addEventListener("message", ({ data, source }) => {
  if (data?.type !== "${HEIGHT_MESSAGE}") return;
  for (const frame of document.querySelectorAll("iframe"))
    if (frame.contentWindow === source) frame.style.height = data.height + "px";
});
</script>
`;

/** Tells the page around how high an element is, now and whenever that changes. Any page may know: it is only a height. Gives back what ends it. */
export function tellHeight(element: Element): () => void {
  if (parent === window) return () => {};
  const observer = new ResizeObserver(() => {
    const height = Math.ceil(element.getBoundingClientRect().bottom + scrollY);
    parent.postMessage({ type: HEIGHT_MESSAGE, height }, '*');
  });
  observer.observe(element);
  return () => observer.disconnect();
}
