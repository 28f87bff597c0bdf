import { expect, test, vi } from 'vitest';
import { answers } from './answers.ts';

/** Functions of the platform whose last digits ECMAScript (section 21.3.2) leaves to each browser. */
const left = [
  ...([
    'acos',
    'acosh',
    'asin',
    'asinh',
    'atan',
    'atan2',
    'atanh',
    'cbrt',
    'cos',
    'cosh',
    'exp',
    'expm1',
  ] as const),
  ...(['hypot', 'log', 'log10', 'log1p', 'log2', 'pow', 'sin', 'sinh', 'tan', 'tanh'] as const),
];

test('no function or operator of the language takes a number from the platform’s exp, log, powers or angles', () => {
  answers();
  const asked = new Map<string, string>();
  const spies = left.map((name) => {
    const platform = Math[name] as (...args: number[]) => number;
    return vi.spyOn(Math, name).mockImplementation((...args: number[]) => {
      const [, , caller = '', ...callers] = new Error().stack!.split('\n').map((line) => line.trim());
      asked.set(name, [caller, ...callers].slice(0, 4).join(' '));
      return platform(...args);
    });
  });
  try {
    Math.exp(1);
    expect([...asked.keys()]).toEqual(['exp']);
    asked.clear();
    answers();
  } finally {
    for (const spy of spies) spy.mockRestore();
  }
  expect(Object.fromEntries(asked)).toEqual({});
});
