/** The address of a page of this site, given its path from the root: `/learn/torque/` may be served as `/sub/learn/torque/`. */
export const addressUnderBase = (path: string): string => import.meta.env.BASE_URL.replace(/\/$/, '') + path;
