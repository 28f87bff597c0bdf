import { useSignal, useSignalEffect } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { FunctionHelp } from '../../../functions/core/describe.ts';
import type { FormulaCheck } from '../../session/api.ts';
import type { Preview } from '../../worker/protocol.ts';
import { usePage } from '../shell/context.ts';
import { Icon } from '../shell/icons.tsx';
import { functionHelp, loadFunctions } from '../state/functions.ts';
import type { Page, Scope } from '../state/page.ts';
import { activeColumn } from '../state/page.ts';
import { commitDraft, draft, formulaIn, placeOf, targetOf } from './draft.ts';
import type { FormulaEditor } from './editor.ts';
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

  useEffect(() => {
    let gone = false;
    let made: FormulaEditor | null = null;
    void Promise.all([import('./editor.ts'), loadFunctions(page)]).then(([{ createFormulaEditor }]) => {
      if (gone || !host.current) return;
      made = createFormulaEditor(host.current, 'Formula or value', {
        changed: (text, at) => write(page, text, at),
        moved: (_text, at) => {
          caret.value = at;
        },
        commit: (text) => void commit(page, text),
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
            sheet: page.sheet.value,
            inFormula: target !== null && formulaIn(target.scope, target.text) !== null,
          };
        },
      });
      editor.current = made;
      const target = targetOf(page);
      made.setText(target?.text ?? '');
      page.line.current = {
        focus: () => made?.focus(),
        insert: (text) => made?.insert(text),
        hasFocus: () => made?.hasFocus() ?? false,
        wantsName: () => made?.wantsName() ?? false,
      };
    });
    return () => {
      gone = true;
      page.line.current = null;
      made?.destroy();
    };
  }, [page]);

  function write(of: Page, text: string, at: number): void {
    const target = targetOf(of);
    caret.value = at;
    if (target) draft.value = { ...target, text };
  }

  async function commit(of: Page, text: string): Promise<void> {
    // The sheet has the keys at once: what is typed while the book takes the draft in belongs there, or where they go next.
    of.grid.current?.focus();
    const sent = draft.value;
    if (sent && !(await commitDraft(of, text)) && draft.value === sent) of.line.current?.focus();
  }

  useSignalEffect(() => {
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
    });
    if (!draft.value) {
      preview.value = null;
      return;
    }
    void page.service
      .preview(formula, { sheet: target.sheet, column: target.column, row: target.row })
      .then((found) => {
        if (turn === asked.current) preview.value = found;
      });
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
              onClick={() => void commit(page, draft.value?.text ?? '')}
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
    if (draft.value) draft.value = null;
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
