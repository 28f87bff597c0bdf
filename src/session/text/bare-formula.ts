/** A formula as kept: without the "=" in front and the blanks around. */
export const bareFormula = (text: string): string => text.trim().replace(/^=\s*/, '').trim();
