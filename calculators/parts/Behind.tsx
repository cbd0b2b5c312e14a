import type { Remark } from '../scenario/index.ts';

export { InputsUsed } from './InputsUsed.tsx';
export { Onward } from './Onward.tsx';

/** What the reader should know about the answer. */
export function Sentences({ remarks }: { remarks: readonly Remark[] }) {
  return (
    <ul class="remarks">
      {remarks.map(({ tone, text }) => (
        <li class={tone} key={text}>
          {text}
        </li>
      ))}
    </ul>
  );
}
