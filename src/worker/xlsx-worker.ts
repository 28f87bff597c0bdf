import type { WorkbookContent } from '../session/xlsx/shape.ts';
import { writeWorkbook } from '../session/xlsx/write.ts';

/** What this worker answers, once. */
export type Written =
  | { readonly ok: true; readonly bytes: Uint8Array }
  | { readonly ok: false; readonly sentence: string };

// Writing a large book takes seconds at a stretch: it has a worker of its own, which can be ended at any time.
addEventListener('message', async ({ data }: MessageEvent<{ content: WorkbookContent; now: Date }>) => {
  let written: Written;
  try {
    written = { ok: true, bytes: await writeWorkbook(data.content, data.now) };
  } catch (reason) {
    written = { ok: false, sentence: reason instanceof Error ? reason.message : String(reason) };
  }
  postMessage(written, written.ok ? [written.bytes.buffer] : []);
});
