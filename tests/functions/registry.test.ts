import { describe, expect, test } from 'vitest';
import { invoke } from '../../functions/core/invoke.ts';
import { definitionFiles, registry } from '../../functions/registry.ts';

describe('the registry of functions', () => {
  test('holds one definition for each file, named after folder and file', () => {
    for (const [path, definition] of definitionFiles) {
      const expected = path.replace(/^\.\//, '').replace(/\.ts$/, '').replace(/[/-]/g, '.').toUpperCase();
      const short = expected.replace(/^UNITS\./, '');
      expect(definition.name, path).toBe(short);
    }
    expect(registry.size).toBe(definitionFiles.size);
  });
  test('calls a kernel through the common checks', () => {
    const ratio = registry.get('SEG.RATIO')!;
    expect(invoke(ratio, [42, 40])).toBeCloseTo(1.05, 12);
    expect(invoke(ratio, [42, 0])).toMatchObject({ code: '#DIV/0!' });
    expect(invoke(ratio, [0, 40])).toMatchObject({ code: '#NUM!', parameter: 'a' });
    expect(invoke(ratio, [42, null])).toMatchObject({ code: '#N/A', parameter: 'b' });
    expect(invoke(ratio, ['x', 2])).toMatchObject({ code: '#VALUE!', parameter: 'a' });
  });
});
