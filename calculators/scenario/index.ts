export * from './doubts.ts';
export * from './editing.ts';
export * from './link.ts';
export * from './outcome.ts';
export * from './scenario.ts';
export * from './schema.ts';
export * from './setting.ts';
