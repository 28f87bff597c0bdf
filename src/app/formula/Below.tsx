/** What is shown under the formula editor. */
import type { FunctionHelp } from '../../../functions/core/describe.ts';
import { usePage } from '../state/context.ts';
import { helpNamed } from '../state/functions.ts';
import { draft, targetOf } from './draft.ts';
import { argumentAt, callAt, writtenArguments, writtenValue } from './signature.ts';
import { caret, check, completing, focused, preview, writeInstead } from './writing.ts';

interface CallHelp {
  readonly help: FunctionHelp;
  readonly argument: number;
}

function helpAt(text: string, at: number): CallHelp | null {
  const call = callAt(text, at);
  const help = call && helpNamed(call.name);
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
  const doubt = draft.value && !midWord && !problem ? check.value?.doubts[0] : undefined;
  const gives = midWord ? null : preview.value;
  if (!problem && !gives && !call && !doubt) return null;
  return (
    <div class="formula-below">
      {call && <Signature call={call} />}
      {doubt && (
        <p class="doubtful" role="status">
          {doubt.sentence}{' '}
          <button
            type="button"
            class="link"
            onMouseDown={(event) => event.preventDefault()}
            onClick={() => writeInstead(page, doubt)}
          >
            Change to {doubt.instead}
          </button>
        </p>
      )}
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
  const here = argumentAt(help, argument);
  return (
    <div class="signature">
      <code>
        {help.name}(
        {writtenArguments(help).map(({ text, of }, index) => (
          <span key={text}>
            {index > 0 && ', '}
            <span class={of === here ? 'here' : undefined}>{text}</span>
          </span>
        ))}
        )
      </code>
      {help.builtIn && <p>{help.summary}</p>}
      <Argument of={help.parameters[here]} />
    </div>
  );
}

/** What an argument means, its unit and bounds. */
function Argument({ of: at }: { of: FunctionHelp['parameters'][number] | undefined }) {
  return at ? (
    <p>
      <strong>{at.name}</strong>: {at.about}
      {at.unit && `, ${at.unit}`}. Accepts {at.accepts}
      {at.optional && at.fallback !== undefined && `; optional, default ${writtenValue(at.fallback)}`}.
    </p>
  ) : null;
}
