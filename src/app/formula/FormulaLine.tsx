import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { FunctionHelp } from '../../../functions/core/describe.ts';
import type { FormulaCheck } from '../../session/api.ts';
import type { Preview } from '../../worker/protocol.ts';
import { usePage } from '../shell/context.ts';
import { Icon } from '../shell/icons.tsx';
import { gone, useFollow } from '../state/follow.ts';
import { functionHelp, loadFunctions } from '../state/functions.ts';
import type { Page, Scope } from '../state/page.ts';
import { activeColumn } from '../state/page.ts';
import { commitDraft, draft, formulaIn, placeOf, rescoped, targetOf } from './draft.ts';
import { createEarlyField } from './early.ts';
import type { EditorEvents, FormulaEditor } from './editor.ts';
import './line.css';
import { callAt } from './signature.ts';

/** The line above the sheet: what is being edited, its text, what it would give. */
export function FormulaLine() {
  const page = usePage();
  const host = useRef<HTMLDivElement>(null);
  const editor = useRef<FormulaEditor | null>(null);
  const focused = useSignal(false);
  const caret = useSignal(0);
  const check = useSignal<FormulaCheck | null>(null);
  const preview = useSignal<Preview | null>(null);
  const asked = useRef(0);
  /** Grows when another editor is there to be told what is wrong. */
  const checkAgain = useSignal(0);

  useEffect(() => {
    const place = host.current;
    if (!place) return;
    let gone = false;
    const events: EditorEvents = {
      changed: (text, at) => write(page, text, at),
      moved: (_text, at) => {
        caret.value = at;
      },
      commit: () => void commit(page, true),
      cancel: () => {
        draft.value = null;
        page.grid.current?.focus();
      },
      focus: (now) => {
        focused.value = now;
      },
      vocabulary: () => {
        const target = targetOf(page);
        return {
          functions: functionHelp.value,
          outline: page.outline.value,
          sheet: page.outline.value?.sheets.find(({ id }) => id === target?.sheet) ?? null,
          inFormula: target !== null && formulaIn(target.scope, target.text) !== null,
        };
      },
    };
    const make = (made: FormulaEditor) => {
      editor.current = made;
      page.line.current = made;
    };
    make(createEarlyField(place, 'Formula or value', events));
    void loadFunctions(page);
    void import('./editor.ts').then(({ createFormulaEditor }) => {
      const early = editor.current;
      if (gone || !early) return;
      const focus = early.hasFocus();
      const made = createFormulaEditor(place, 'Formula or value', events, early.chosen());
      make(made);
      early.destroy();
      if (focus) made.take();
      checkAgain.value++;
    });
    return () => {
      gone = true;
      page.line.current = null;
      editor.current?.destroy();
    };
  }, [page]);

  function write(of: Page, text: string, at: number): void {
    const target = targetOf(of);
    caret.value = at;
    if (target) draft.value = { ...target, text };
  }

  /** Takes what is written. The keys go to the sheet at once: what is typed next is meant for it. */
  async function commit(of: Page, down: boolean): Promise<void> {
    const alone = draft.value?.scope === 'cell';
    if (down && alone) of.grid.current?.step(1, 0);
    else of.grid.current?.focus();
    if (!(await commitDraft(of))) of.line.current?.focus();
  }

  useFollow(() => {
    checkAgain.value;
    const target = targetOf(page);
    const version = page.outline.value?.version ?? 0;
    const text = target?.text ?? '';
    editor.current?.setText(text);
    const formula = target && formulaIn(target.scope, text);
    const turn = ++asked.current;
    if (!target || formula === null || formula.trim() === '' || version === 0) {
      check.value = null;
      preview.value = null;
      return;
    }
    const shift = text.length - formula.length;
    void page.service.check(formula, placeOf(target)).then((found) => {
      if (turn !== asked.current) return;
      const moved = shift === 0 ? found : shifted(found, shift);
      check.value = moved;
      editor.current?.setCheck(text, moved);
    }, gone);
    if (!draft.value) {
      preview.value = null;
      return;
    }
    void page.service
      .preview(formula, { sheet: target.sheet, column: target.column, row: target.row })
      .then((found) => {
        if (turn === asked.current) preview.value = found;
      }, gone);
  });

  const target = targetOf(page);
  const column = page.sheet.value?.columns.find(({ id }) => id === target?.column) ?? activeColumn(page);
  if (editor.current && target && column)
    editor.current.setLabel(
      target.scope === 'column' ? `${column.label}, every row` : `${column.address}${target.row + 1} alone`,
    );
  const editing = draft.value !== null;
  return (
    <section class="formula-line" data-part="line" aria-label="What is being edited">
      <ScopeSwitch page={page} />
      <div class={`formula-box${editing ? ' editing' : ''}${column ? '' : ' idle'}`}>
        {target?.scope === 'column' && (
          <span class="equals" aria-hidden="true">
            =
          </span>
        )}
        <div class="formula-editor" ref={host} />
        {editing && (
          <div class="formula-actions">
            <button
              type="button"
              aria-label="Take it"
              title="Take it (Enter)"
              onClick={() => void commit(page, false)}
            >
              <Icon name="check" />
            </button>
            <button
              type="button"
              aria-label="Leave it as it was"
              title="Leave it as it was (Esc)"
              onClick={() => {
                draft.value = null;
                page.grid.current?.focus();
              }}
            >
              <Icon name="close" />
            </button>
          </div>
        )}
      </div>
      <Below
        check={check.value}
        preview={preview.value}
        call={focused.value && target ? helpAt(target.text, caret.value) : null}
      />
    </section>
  );
}

function ScopeSwitch({ page }: { page: Page }) {
  const target = targetOf(page);
  const column = page.sheet.value?.columns.find(({ id }) => id === target?.column);
  if (!target || !column) return <p class="scope-none soft">Choose a cell or a heading</p>;
  const choose = (scope: Scope) => {
    if (draft.value) draft.value = rescoped(draft.value, scope);
    page.scopeChoice.value = scope;
  };
  const option = (scope: Scope, label: string, about: string) => (
    <label title={about}>
      <input
        type="radio"
        name="scope"
        class="unseen"
        checked={target.scope === scope}
        onChange={() => choose(scope)}
      />
      <span>{label}</span>
    </label>
  );
  return (
    <fieldset class="scope">
      <legend class="unseen">What the line edits</legend>
      {option('column', `${column.name}, every row`, 'The formula of the whole column')}
      {option('cell', `${column.address}${target.row + 1} alone`, 'This one cell')}
    </fieldset>
  );
}

interface CallHelp {
  readonly help: FunctionHelp;
  readonly argument: number;
}

function helpAt(text: string, caret: number): CallHelp | null {
  const call = callAt(text, caret);
  const help = call && functionHelp.value.find(({ name }) => name === call.name);
  return help ? { help, argument: call.argument } : null;
}

/** Under the line: what is wrong, what it would give, or the argument the caret is at. */
function Below({
  check,
  preview,
  call,
}: {
  check: FormulaCheck | null;
  preview: Preview | null;
  call: CallHelp | null;
}) {
  const problem = draft.value ? check?.problems[0] : undefined;
  if (!problem && !preview && !call) return null;
  return (
    <div class="formula-below">
      {call && <Signature call={call} />}
      {problem ? (
        <p class="wrong" role="status">
          {problem.sentence}
        </p>
      ) : (
        preview && (
          <p class={preview.error ? 'wrong' : 'gives'}>
            This row: <strong>{preview.display}</strong>
          </p>
        )
      )}
    </div>
  );
}

function Signature({ call: { help, argument } }: { call: CallHelp }) {
  const at = help.parameters[Math.min(argument, help.parameters.length - 1)];
  return (
    <div class="signature">
      <code>
        {help.name}(
        {help.parameters.map((parameter, index) => (
          <span key={parameter.name}>
            {index > 0 && ', '}
            <span class={parameter === at ? 'here' : undefined}>
              {parameter.optional ? `[${parameter.name}]` : parameter.name}
            </span>
          </span>
        ))}
        )
      </code>
      {at && (
        <p>
          <strong>{at.name}</strong>: {at.about}
          {at.unit && `, ${at.unit}`}. Accepts {at.accepts}
          {at.optional && at.fallback !== undefined && `; left out: ${at.fallback}`}.
        </p>
      )}
    </div>
  );
}

function shifted(check: FormulaCheck, by: number): FormulaCheck {
  const move = <T extends { readonly from: number; readonly to: number }>(span: T): T => ({
    ...span,
    from: span.from + by,
    to: span.to + by,
  });
  return { ...check, problems: check.problems.map(move), tokens: check.tokens.map(move) };
}
