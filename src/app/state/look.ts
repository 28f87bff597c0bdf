import { computed, effect, signal } from '@preact/signals';

/** How the page looks: kept on this device, not in the book. */

export type Theme = 'system' | 'light' | 'dark';
export type Contrast = 'system' | 'regular' | 'high';
export type Density = 'compact' | 'regular' | 'comfortable';

const themes: readonly Theme[] = ['system', 'light', 'dark'];
const contrasts: readonly Contrast[] = ['system', 'regular', 'high'];
const densities: readonly Density[] = ['compact', 'regular', 'comfortable'];

const recalled = <T extends string>(key: string, known: readonly T[], otherwise: T): T => {
  try {
    const kept = localStorage.getItem(key);
    return known.find((value) => value === kept) ?? otherwise;
  } catch {
    return otherwise;
  }
};

const keep = (key: string, value: string): void => {
  try {
    localStorage.setItem(key, value);
  } catch {
    // A browser that keeps nothing for pages: the choice lasts as long as the page.
  }
};

export const theme = signal<Theme>('system');
const contrast = signal<Contrast>('system');
/** What the device asks for. */
const asked = signal(false);
/** True while edges and writing stand out as far as they can. */
export const highContrast = computed(
  () => contrast.value === 'high' || (contrast.value === 'system' && asked.value),
);
export const density = signal<Density>('regular');

export function chooseTheme(which: Theme): void {
  theme.value = which;
  keep('leverbook-theme', which);
  const root = document.documentElement;
  if (which === 'system') delete root.dataset.theme;
  else root.dataset.theme = which;
}

export function chooseContrast(which: Contrast): void {
  contrast.value = which;
  keep('leverbook-contrast', which);
}

export function chooseDensity(which: Density): void {
  density.value = which;
  keep('leverbook-density', which);
  document.documentElement.dataset.density = which;
}

/** The width at which nothing stands beside the sheet (shell.css). */
const NARROW = '(max-width: 860px)';
/** Whether the page is that narrow now. */
export const narrow = signal(globalThis.matchMedia?.(NARROW).matches ?? false);

/** Applies what was chosen before, at the start of the page. */
export function recallLook(): void {
  chooseTheme(recalled('leverbook-theme', themes, 'system'));
  chooseContrast(recalled('leverbook-contrast', contrasts, 'system'));
  const wish = matchMedia('(prefers-contrast: more)');
  asked.value = wish.matches;
  wish.addEventListener('change', () => {
    asked.value = wish.matches;
  });
  effect(() => {
    if (highContrast.value) document.documentElement.dataset.contrast = 'high';
    else delete document.documentElement.dataset.contrast;
  });
  const width = matchMedia(NARROW);
  width.addEventListener('change', () => {
    narrow.value = width.matches;
  });
  chooseDensity(recalled('leverbook-density', densities, 'regular'));
}
