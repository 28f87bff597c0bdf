import type { FunctionHelp } from '../../../functions/core/describe.ts';
import { usePage } from '../state/context.ts';
import { functionHelp } from '../state/functions.ts';
import { type CommonFunction, commonFunctions, inBrackets } from './common-functions.ts';
import { draft, targetOf } from './draft.ts';
import { callAt } from './signature.ts';
import { caret, check, completing, focused, preview } from './writing.ts';

interface CallHelp {
  readonly help: FunctionHelp | CommonFunction;
  readonly argument: number;
}

function helpAt(text: string, at: number): CallHelp | null {
  const call = callAt(text, at);
  const help =
    call && (functionHelp.value.find(({ name }) => name === call.name) ?? commonFunctions.get(call.name));
  return help ? { help, argument: call.argument } : null;
}

/** Under the editor in hand: what is wrong, what it would give, and the argument the caret is at. */
export function Below() {
  const page = usePage();
  const target = targetOf(page);
  const call = focused.value && target ? helpAt(target.text, caret.value) : null;
  // A word that is just being completed is neither right nor wrong yet.
  const midWord = completing.value;
  const problem = draft.value && !midWord ? check.value?.problems[0] : undefined;
  const gives = midWord ? null : preview.value;
  if (!problem && !gives && !call) return null;
  return (
    <div class="formula-below">
      {call && <Signature call={call} />}
      {problem ? (
        <p class="wrong" role="status">
          {problem.sentence}
        </p>
      ) : (
        gives && (
          <p class={gives.error ? 'wrong' : 'gives'}>
            This row: <strong>{gives.display}</strong>
          </p>
        )
      )}
    </div>
  );
}

function Signature({ call: { help, argument } }: { call: CallHelp }) {
  const { parameters } = help;
  const here = Math.min(argument, parameters.length - 1);
  return (
    <div class="signature">
      <code>
        {help.name}(
        {parameters.map((parameter, index) => (
          <span key={parameter.name}>
            {index > 0 && ', '}
            <span class={index === here ? 'here' : undefined}>{inBrackets(parameter)}</span>
          </span>
        ))}
        )
      </code>
      {'rule' in help ? <Argument of={help.parameters[here]} /> : <p>{help.summary}.</p>}
    </div>
  );
}

/** What an argument of ours means, its unit and bounds. */
function Argument({ of: at }: { of: FunctionHelp['parameters'][number] | undefined }) {
  return at ? (
    <p>
      <strong>{at.name}</strong>: {at.about}
      {at.unit && `, ${at.unit}`}. Accepts {at.accepts}
      {at.optional && at.fallback !== undefined && `; optional, default ${at.fallback}`}.
    </p>
  ) : null;
}
