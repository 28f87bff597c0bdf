/** What is known of headings, for those who do not read files: light, as it loads with every book. */
export { headingKey, synonymIndex, synonyms } from './synonyms.ts';
