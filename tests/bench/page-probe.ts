import type { Page } from 'playwright-core';

/** What is measured inside the page, by its own clock. Each answers milliseconds. */

/** From the book's title on show, when the page has heard of the book, to the first frame with cells of it. */
export const firstPaint = (page: Page, title: string): Promise<number> =>
  page.evaluate(
    (wanted) =>
      new Promise<number>((resolve, reject) => {
        let heard = 0;
        const told = () =>
          `${document.querySelector('.head')?.textContent} ${document.querySelector('.notices')?.textContent}`;
        setTimeout(() => reject(new Error(`the book is not shown after a minute: ${told()}`)), 60_000);
        const look = () => {
          if (heard === 0 && document.querySelector('.book-title')?.textContent === wanted)
            heard = performance.now();
          const cells = document.querySelectorAll(
            '.sheet-grid .ht_master tbody td:not(.waiting):not(:empty)',
          );
          if (
            heard > 0 &&
            cells.length > 20 &&
            document.querySelectorAll('.sheet-grid td.waiting').length === 0
          )
            resolve(performance.now() - heard);
          else requestAnimationFrame(look);
        };
        look();
      }),
    title,
  );

/** A plain table of as many cells, written by a loop and painted: what any page would need for them. */
export const plainTable = (page: Page, rows: number, columns: number): Promise<number> =>
  page.evaluate(
    ([r, c]) =>
      new Promise<number>((resolve) => {
        const start = performance.now();
        const table = document.createElement('table');
        for (let i = 0; i < r; i++) {
          const line = table.insertRow();
          for (let k = 0; k < c; k++) line.insertCell().textContent = `${i * k}`;
        }
        document.body.append(table);
        table.getBoundingClientRect();
        requestAnimationFrame(() =>
          requestAnimationFrame(() => {
            table.remove();
            resolve(performance.now() - start);
          }),
        );
      }),
    [rows, columns] as const,
  );

/** Begins to time from each Enter that ends an entry to the end of the frame in which a cell of its row shows another text. */
export const watchEnter = (page: Page, cell: string): Promise<void> =>
  page.evaluate((selector) => {
    const times: number[] = [];
    Object.assign(window, { enterTimes: times });
    // A message that is sent while a frame is made comes when that frame has been painted.
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = ({ data }) => times.push(performance.now() - data);
    window.addEventListener(
      'keydown',
      (event) => {
        if (event.key !== 'Enter' || !document.querySelector('.sheet-grid .handsontableInput:focus')) return;
        const row = document
          .querySelector('.sheet-grid td.current')
          ?.closest('tr')
          ?.getAttribute('aria-rowindex');
        const at = () =>
          document.querySelector(`.sheet-grid .ht_master tr[aria-rowindex="${row}"] ${selector}`);
        const before = at()?.textContent;
        const watch = new MutationObserver(() => {
          if (at()?.textContent === before) return;
          watch.disconnect();
          port2.postMessage(event.timeStamp);
        });
        watch.observe(document.querySelector('.sheet-grid')!, {
          childList: true,
          characterData: true,
          subtree: true,
        });
      },
      { capture: true },
    );
  }, cell);

/** The times from each frame to the next while something else is done, until told to end. */
export const beginFrames = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const frames: number[] = [];
    const long: number[] = [];
    let last = performance.now();
    const watch = new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) long.push(entry.duration);
    });
    watch.observe({ type: 'longtask' });
    const state = { on: true, frames, long, watch };
    Object.assign(window, { frameState: state });
    const tick = () => {
      const now = performance.now();
      frames.push(now - last);
      last = now;
      if (state.on) requestAnimationFrame(tick);
    };
    requestAnimationFrame(tick);
  });

export const endFrames = (page: Page): Promise<{ readonly frames: number[]; readonly long: number[] }> =>
  page.evaluate(async () => {
    const { frameState } = window as unknown as {
      frameState: { on: boolean; frames: number[]; long: number[]; watch: PerformanceObserver };
    };
    await new Promise((resolve) => setTimeout(resolve, 100));
    frameState.on = false;
    frameState.watch.disconnect();
    return { frames: frameState.frames.slice(1), long: frameState.long };
  });

/** Flings the sheet so many pixels each frame. Answers the frames, and those in which a cell in view was not filled. */
export const fling = (
  page: Page,
  pixels: number,
  frames: number,
): Promise<{ readonly frames: number; readonly unfilled: number }> =>
  page.evaluate(
    ([step, count]) =>
      new Promise<{ frames: number; unfilled: number }>((resolve) => {
        const holder = document.querySelector<HTMLElement>('.sheet-grid .ht_master .wtHolder')!;
        let unfilled = 0;
        let done = 0;
        const tick = () => {
          // What the frame before has painted.
          const view = holder.getBoundingClientRect();
          const waiting = [...holder.querySelectorAll('td.waiting')].some((cell) => {
            const box = cell.getBoundingClientRect();
            return box.bottom > view.top && box.top < view.bottom;
          });
          if (done > 0 && waiting) unfilled++;
          if (done++ === count) return resolve({ frames: count, unfilled });
          holder.scrollTop += step;
          requestAnimationFrame(tick);
        };
        requestAnimationFrame(tick);
      }),
    [pixels, frames] as const,
  );
