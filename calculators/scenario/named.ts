import { propagate, type UncertainInput, type UncertainResult } from '../model/index.ts';

/** `propagate` for results that have names: a function of input values, in order, to a value for each name. */
export function propagateNamed<Name extends string>(
  inputs: readonly UncertainInput[],
  f: (values: number[]) => Readonly<Record<Name, number>>,
): Readonly<Record<Name, UncertainResult>> {
  let names: string[] = [];
  const results = propagate(inputs, (values) => {
    const named = f(values);
    names = Object.keys(named);
    return Object.values(named);
  });
  return Object.fromEntries(names.map((name, i) => [name, results[i]])) as Record<Name, UncertainResult>;
}
