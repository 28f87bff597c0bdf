import { useEffect, useRef } from 'preact/hooks';
import { type Guide, pictureName, piecesOf, type Step } from '../../guides/index.ts';
import { usePage } from '../state/context.ts';
import { fileAddress, pictureAddress, showStep, wordsFor } from './show.ts';
import './guides.css';

/** A guide beside the sheet: what to press, step by step, each with a button that leads there. */
export function StepByStep({ guide }: { guide: Guide }) {
  const page = usePage();
  const list = useRef<HTMLElement>(null);
  // Another panel stood here for a while: back to the step that was asked for last.
  useEffect(() => {
    list.current?.querySelector('[aria-current="step"]')?.scrollIntoView({ block: 'center' });
  }, []);
  return (
    <article class="guide-page way" ref={list}>
      <button
        type="button"
        class="firm"
        onClick={() => {
          page.way.value = null;
        }}
      >
        All guides and functions
      </button>
      <h2>{guide.title}</h2>
      <p>{guide.lead}</p>
      <h3>Files to import</h3>
      <ul class="way-files">
        {Object.entries(guide.files).map(([name, about]) => (
          <li key={name}>
            <a href={fileAddress(guide, name)} download={name}>
              {name}
            </a>
            <span class="soft">: {about}</span>
          </li>
        ))}
      </ul>
      <p class="soft">
        Save them first, or open them from the steps. All people in them are invented. Your own files take the
        same steps.
      </p>
      {guide.parts.map(({ title, steps }) => (
        <section key={title}>
          <h3>{title}</h3>
          <ol>
            {steps.map((step) => (
              <One key={step.id} guide={guide} step={step} />
            ))}
          </ol>
        </section>
      ))}
      <h3>Caution</h3>
      <ul class="way-cautions">
        {guide.cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </article>
  );
}

function One({ guide, step }: { guide: Guide; step: Step }) {
  const page = usePage();
  const { id, text, sees, lines, show, picture } = step;
  const address = pictureAddress(pictureName(guide, step));
  const now = page.way.value?.step === id;
  return (
    <li class="way-step" aria-current={now ? 'step' : undefined}>
      <p>
        <Words text={text} />
      </p>
      {sees && (
        <p class="way-sees">
          <Words text={sees} />
        </p>
      )}
      {lines && <pre class="formula">{lines.join('\n')}</pre>}
      {show && (
        <button
          type="button"
          class="firm"
          onClick={() => {
            page.way.value = { guide: guide.id, step: id };
            void showStep(page, guide, show);
          }}
        >
          {wordsFor(show)}
        </button>
      )}
      {address && picture && (
        <details>
          <summary>Picture</summary>
          <img src={address} alt={picture} loading="lazy" />
        </details>
      )}
    </li>
  );
}

function Words({ text }: { text: string }) {
  return (
    <>
      {piecesOf(text).map((piece, i) => {
        if (piece.as === 'plain') return piece.text;
        return piece.as === 'press' ? <b key={i}>{piece.text}</b> : <code key={i}>{piece.text}</code>;
      })}
    </>
  );
}
