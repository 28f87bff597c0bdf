/** The page of the guide about what numbers can and cannot say. */
import type { Page } from '../../../functions/core/pages/page.ts';

interface Props {
  readonly page: Page;
  readonly open: (name: string) => void;
  readonly back: () => void;
}

/** A page about what the numbers can and cannot say. */
export function AboutNumbers({ page, open, back }: Props) {
  return (
    <article class="guide-page about">
      <button type="button" class="firm" onClick={back}>
        All functions
      </button>
      <h2>{page.title}</h2>
      <p>{page.lead}</p>
      {page.sections.map(({ title, paragraphs, table, functions = [], sources = [] }) => (
        <section key={title}>
          <h3>{title}</h3>
          {paragraphs.map((paragraph) => (
            <p key={paragraph}>{paragraph}</p>
          ))}
          {table && (
            // biome-ignore lint/a11y/noNoninteractiveTabindex: a table that scrolls must be reachable by keyboard
            <section class="wide-table" aria-label={table.caption} tabIndex={0}>
              <table>
                <caption>{table.caption}</caption>
                <thead>
                  <tr>
                    {table.headings.map((heading) => (
                      <th key={heading} scope="col">
                        {heading}
                      </th>
                    ))}
                  </tr>
                </thead>
                <tbody>
                  {table.rows.map((row) => (
                    <tr key={row.join('|')}>
                      {row.map((cell, i) => (
                        <td key={table.headings[i]}>{cell}</td>
                      ))}
                    </tr>
                  ))}
                </tbody>
              </table>
            </section>
          )}
          {functions.length > 0 && (
            <p class="guide-see">
              {functions.map((name) => (
                <button key={name} type="button" class="link" onClick={() => open(name)}>
                  {name}
                </button>
              ))}
            </p>
          )}
          {sources.map((source) => (
            <p key={source} class="soft guide-source">
              {source}
            </p>
          ))}
        </section>
      ))}
    </article>
  );
}
