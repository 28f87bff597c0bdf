/** The list of what the book contains, on the left. */
import { useSignal } from '@preact/signals';
import type { Purpose } from '../../book/model.ts';
import type { Outline, SheetOutline } from '../../session/api.ts';
import { ChartList } from '../charts/ChartList.tsx';
import { goTo, run } from '../state/actions.ts';
import { usePage } from '../state/context.ts';
import type { IconName } from '../theme/icons.tsx';
import { Icon } from '../theme/icons.tsx';

const purposes: readonly { readonly purpose: Purpose; readonly title: string; readonly icon: IconName }[] = [
  { purpose: 'gathered', title: 'Data', icon: 'gathered' },
  { purpose: 'worked', title: 'Results', icon: 'worked' },
  { purpose: 'notes', title: 'Notes', icon: 'notes' },
];

/** The book's contents by purpose, and its settings. */
export function Contents() {
  const page = usePage();
  const outline = page.outline.value;
  return (
    <nav
      class={`contents${page.contentsOpen.value ? ' open' : ''}`}
      data-part="contents"
      aria-label="Contents of the book"
    >
      {outline &&
        purposes.map(({ purpose, title, icon }) => {
          const sheets = outline.sheets.filter((sheet) => sheet.purpose === purpose);
          return (
            sheets.length > 0 && (
              <section key={purpose}>
                <h3>{title}</h3>
                <ul>
                  {sheets.map((sheet) => (
                    <SheetItem key={sheet.id} sheet={sheet} icon={icon} />
                  ))}
                </ul>
              </section>
            )
          );
        })}
      {outline && <ChartList charts={outline.charts} />}
      {outline && outline.names.length > 0 && <Settings outline={outline} />}
    </nav>
  );
}

function SheetItem({ sheet, icon }: { sheet: SheetOutline; icon: IconName }) {
  const page = usePage();
  const now = page.sheetId.value === sheet.id && page.chart.value === null;
  return (
    <li>
      <button
        type="button"
        class="contents-item"
        aria-current={now ? 'page' : undefined}
        title={sheet.note}
        onClick={() => {
          page.sheetId.value = sheet.id;
          page.chart.value = null;
          page.contentsOpen.value = false;
        }}
      >
        <Icon name={icon} />
        <span class="contents-label">{sheet.label}</span>
        <span class="contents-count" title={`${sheet.rows} rows`}>
          {sheet.rows.toLocaleString('en')}
        </span>
      </button>
    </li>
  );
}

/** Settings can be changed from anywhere: formulas everywhere follow. */
function Settings({ outline }: { outline: Outline }) {
  return (
    <section>
      <h3>Settings</h3>
      <ul>
        {outline.names.map((named) => (
          <Setting key={named.name} named={named} />
        ))}
      </ul>
    </section>
  );
}

function Setting({ named }: { named: Outline['names'][number] }) {
  const page = usePage();
  const text = useSignal<string | null>(null);
  const take = async () => {
    const typed = text.value;
    text.value = null;
    if (typed === null || typed === named.display) return;
    await run(page, {
      do: 'set-cells',
      sheet: named.sheet,
      row: named.row,
      columns: [named.column],
      texts: [[typed]],
      formulas: true,
    });
  };
  return (
    <li class="named-item" data-setting={named.name}>
      <button
        type="button"
        class="named-name"
        title={[named.name, named.note].filter(Boolean).join(': ')}
        onClick={() => goTo(page, { sheet: named.sheet, column: named.column, row: named.row })}
      >
        {named.label}
        {named.unit && <span class="soft"> ({named.unit})</span>}
      </button>
      <input
        class={/^[\d\s.,+−-]/.test(named.display) ? undefined : 'word'}
        aria-label={named.unit ? `${named.label}, ${named.unit}` : named.label}
        title={named.note}
        value={text.value ?? named.display}
        onFocus={(event) => event.currentTarget.select()}
        onInput={(event) => {
          text.value = event.currentTarget.value;
        }}
        onBlur={() => void take()}
        onKeyDown={(event) => {
          if (event.key === 'Enter') event.currentTarget.blur();
          else if (event.key === 'Escape') {
            text.value = null;
            event.currentTarget.value = named.display;
            event.currentTarget.blur();
          }
        }}
      />
    </li>
  );
}
