import type { AnyDefinition, Example } from './define.ts';
import { expectedInWords } from './invoke.ts';
import type { Parameter } from './parameter.ts';
import type { Constant, Source } from './source.ts';

/** A parameter as help, reference and command line show it. */
export interface ParameterHelp {
  readonly name: string;
  readonly about: string;
  readonly unit: string;
  /** What is accepted, in words. */
  readonly accepts: string;
  readonly optional: boolean;
  /** The value it has when left out; absent where the function works it out or does without. */
  readonly fallback?: number | string | boolean;
  /** Why the limits stand where they stand. */
  readonly because?: string;
}

/** A definition as plain data: everything that can be shown, nothing that computes. */
export interface FunctionHelp {
  readonly name: string;
  /** One of spreadsheets at large, not of the domain. */
  readonly builtIn?: true;
  /** Other names of the same function. */
  readonly aliases?: readonly string[];
  /** What an XLSX export makes of a built-in function: a formula where its arguments allow, or its values. */
  readonly inXlsx?: 'formula' | 'values';
  readonly family: string;
  readonly signature: string;
  readonly summary: string;
  readonly searchWords: readonly string[];
  readonly parameters: readonly ParameterHelp[];
  /** Parameters that repeat together: [from, to) among `parameters`. */
  readonly repeats?: readonly [from: number, to: number];
  readonly result: {
    readonly is: string;
    readonly unit: string;
    readonly about: string;
    readonly oneOf?: readonly string[];
  };
  readonly rule: string;
  readonly sources: readonly Source[];
  readonly constants: readonly Constant[];
  readonly cautions: readonly string[];
  readonly notes: readonly string[];
  readonly examples: readonly Example[];
  readonly seeAlso: readonly string[];
}

/** `LEAN.SHANK(ankle, [lift=0], [foot])` */
function signature(definition: AnyDefinition): string {
  const names = definition.parameters.map((parameter) => {
    if (!parameter.optional) return parameter.name;
    const fallback = fallbackOf(parameter);
    return fallback === undefined ? `[${parameter.name}]` : `[${parameter.name}=${written(fallback)}]`;
  });
  return `${definition.name}(${names.join(', ')}${definition.repeats ? ', …' : ''})`;
}

export function describe(definition: AnyDefinition): FunctionHelp {
  return {
    name: definition.name,
    family: definition.family,
    signature: signature(definition),
    summary: definition.summary,
    searchWords: definition.searchWords ?? [],
    parameters: definition.parameters.map(parameterHelp),
    ...(definition.repeats
      ? {
          repeats: [definition.parameters.length - definition.repeats, definition.parameters.length] as const,
        }
      : {}),
    result: definition.result,
    rule: definition.rule,
    sources: definition.sources,
    constants: definition.constants ?? [],
    cautions: definition.cautions ?? [],
    notes: definition.notes ?? [],
    examples: definition.examples,
    seeAlso: definition.seeAlso,
  };
}

function parameterHelp(parameter: Parameter): ParameterHelp {
  const fallback = fallbackOf(parameter);
  const bounds =
    parameter.kind === 'number' ? parameter.bounds : parameter.kind === 'range' ? parameter.cells : undefined;
  return {
    name: parameter.name,
    about: parameter.about,
    unit: 'unit' in parameter ? parameter.unit : '',
    accepts: expectedInWords(parameter),
    optional: parameter.optional ?? false,
    ...(fallback === undefined ? {} : { fallback }),
    ...(bounds?.because ? { because: bounds.because } : {}),
  };
}

function fallbackOf(parameter: Parameter): number | string | boolean | undefined {
  return 'fallback' in parameter ? parameter.fallback : undefined;
}

/** A default as a formula would write it. */
function written(value: number | string | boolean): string {
  if (typeof value === 'string') return `"${value}"`;
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE';
  return String(Math.round(value * 1e4) / 1e4);
}
