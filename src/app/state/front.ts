/** True while a dialogue or a preview is in front of the rest of the page, whose commands wait until it is gone. */
export const isBehind = (): boolean => document.querySelector('dialog:modal, [aria-modal="true"]') !== null;
