import type { ChartOutline } from '../../session/charts/chart-record.ts';
import { usePage } from '../state/context.ts';
import { Icon } from '../theme/icons.tsx';

/** The book's charts in its contents. */
export function ChartList({ charts }: { charts: readonly ChartOutline[] }) {
  const page = usePage();
  if (charts.length === 0) return null;
  return (
    <section>
      <h3>Charts</h3>
      <ul>
        {charts.map(({ key, title }) => (
          <li key={key}>
            <button
              type="button"
              class="contents-item"
              title={title}
              aria-current={page.chart.value === key ? 'page' : undefined}
              onClick={() => {
                page.chart.value = key;
                page.contentsOpen.value = false;
              }}
            >
              <Icon name="chart" />
              <span class="contents-label">{title}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
