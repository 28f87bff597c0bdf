import type { ChartData } from '../../session/charts/data.ts';
import { acrossOf } from './points.ts';

/** More rows than this are read from the CSV file. */
const most = 1000;

/** What the chart is drawn from, point by point. */
export function ChartTable({ data }: { data: ChartData }) {
  const rows = data.panels.flatMap(({ title, points }) => points.map((point) => ({ title, point })));
  const grouped = data.groups.length > 0;
  return (
    <div class="chart-table">
      <table>
        <thead>
          <tr>
            <th scope="col">Name</th>
            {grouped && <th scope="col">Group</th>}
            {data.x.is !== 'groups' && <th scope="col">{data.x.label}</th>}
            {data.y.label !== '' && <th scope="col">{data.y.label}</th>}
            <th scope="col">{data.beside?.label ?? 'More'}</th>
          </tr>
        </thead>
        <tbody>
          {rows.slice(0, most).map(({ title, point }) => (
            <tr key={`${title} ${point.row} ${point.x}`}>
              <th scope="row">{point.name}</th>
              {grouped && <td>{data.groups[point.group]}</td>}
              {data.x.is !== 'groups' && <td class="numeric">{acrossOf(data, point)}</td>}
              {data.y.label !== '' && <td class="numeric">{Number(point.y.toPrecision(6))}</td>}
              {data.beside ? (
                <td class="numeric">
                  {point.beside === undefined ? '' : Number(point.beside.toPrecision(4))}
                </td>
              ) : (
                <td>{point.note ?? ''}</td>
              )}
            </tr>
          ))}
        </tbody>
      </table>
      {rows.length > most && <p>{rows.length - most} further points are in the CSV file.</p>}
    </div>
  );
}
