import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { guides } from '../../guides/index.ts';
import { writeMoment } from '../../units/date.ts';
import { command } from '../commands/all.ts';
import { Dialogue } from '../dialogues/Dialogue.tsx';
import { openGuide } from '../guides/open-guide.ts';
import { offline } from '../offline/offline.ts';
import { newBook, openKept } from '../state/actions.ts';
import { usePage } from '../state/context.ts';
import { library, readLibrary } from '../state/keeping.ts';
import { mayLeave } from '../state/leave.ts';
import { Icon } from '../theme/icons.tsx';
import { openBlank } from './blank.ts';
import './books.css';
import { openBundled, samples, templates } from './bundled.ts';

/** Where books come from: three ways to start first, then the books saved here, templates and samples; notes last. */
export function BooksPage({ close }: { close: () => void }) {
  const page = usePage();
  const leaving = useSignal<string | null>(null);
  useEffect(() => void readLibrary(page), []);
  const then = (work: () => Promise<boolean>) => async () => {
    if (!mayLeave(page)) return;
    if (await work()) close();
  };
  const remove = async (id: string) => {
    await page.service.removeBook(id);
    leaving.value = null;
    await readLibrary(page);
  };
  return (
    <Dialogue title="Books" close={close} wide>
      <ul class="ways" aria-label="Three ways to start">
        <Item
          icon="figure"
          title="Try the sample"
          about="24 invented lifters: lengths, ankle range, lean, heel lifts and training."
          run={then(() => openBundled(page, samples[0]!))}
        />
        <Item
          icon="gathered"
          title="Import my file"
          about="A roster or training log from a CSV, XLSX or ODS file."
          run={then(async () => {
            if (!(await newBook(page))) return false;
            close();
            page.dialogue.value = { is: 'import' };
            return false;
          })}
        />
        <Item
          icon="plus"
          title="Start blank"
          about="An empty sheet, or one with ready-made columns and formulas."
          run={then(() => openBlank(page))}
        />
      </ul>
      <div class="books">
        <section>
          <h3>Saved in this browser</h3>
          {library.value.length === 0 && (
            <p class="panel-note">Nothing yet. Books that you change are saved here automatically.</p>
          )}
          <ul>
            {library.value.map((book) => (
              <li key={book.id} class="book-row">
                <button
                  type="button"
                  class="book-item"
                  onClick={() => void then(() => openKept(page, book.id))()}
                >
                  <Icon name="open" />
                  <span>
                    <strong>{book.title || 'Book without a title'}</strong>
                    <span class="soft">
                      {`changed ${when(book.changed)}${book.origin ? `, from ${book.origin}` : ''}`}
                    </span>
                  </span>
                </button>
                {leaving.value === book.id ? (
                  <button type="button" class="firm" onClick={() => void remove(book.id)}>
                    Remove permanently
                  </button>
                ) : (
                  <button
                    type="button"
                    class="tool"
                    aria-label={`Remove ${book.title} from this browser`}
                    onClick={() => {
                      leaving.value = book.id;
                    }}
                  >
                    <Icon name="close" />
                  </button>
                )}
              </li>
            ))}
            <Item
              icon="open"
              title="Open a book file"
              about="A .leverbook.json file from this device."
              run={async () => {
                await command('open-book').run(page);
                close();
              }}
            />
          </ul>
        </section>
        <section>
          <h3>Templates</h3>
          <ul>
            {templates.map((template) => (
              <Item
                key={template.id}
                icon="worked"
                title={template.title}
                about={template.about}
                run={then(() => openBundled(page, template))}
              />
            ))}
          </ul>
        </section>
        <section>
          <h3>Samples, with invented people</h3>
          <ul>
            {samples.map((sample) => (
              <Item
                key={sample.id}
                icon="figure"
                title={sample.title}
                about={sample.about}
                run={then(() => openBundled(page, sample))}
              />
            ))}
          </ul>
        </section>
        <section>
          <h3>Step by step</h3>
          <ul>
            {guides.map(({ id, title, lead }) => (
              <Item
                key={id}
                icon="guide"
                title={title}
                about={lead}
                run={async () => {
                  openGuide(page, id);
                  close();
                }}
              />
            ))}
          </ul>
        </section>
      </div>
      <footer class="books-notes">
        {page.libraryNote.value && <p>{page.libraryNote.value}</p>}
        {offline.value && <p>Leverbook works offline on this device. Install it from your browser’s menu.</p>}
        <p>Save a book to a file to move it to another device.</p>
      </footer>
    </Dialogue>
  );
}

function Item({
  icon,
  title,
  about,
  run,
}: {
  icon: Parameters<typeof Icon>[0]['name'];
  title: string;
  about: string;
  run: () => Promise<void>;
}) {
  return (
    <li>
      <button type="button" class="book-item" onClick={() => void run()}>
        <Icon name={icon} />
        <span>
          <strong>{title}</strong>
          <span class="soft">{about}</span>
        </span>
      </button>
    </li>
  );
}

const when = (time: number): string => writeMoment(new Date(time), { time: true });
