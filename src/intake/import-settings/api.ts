/** The shape of import settings and what they point at, for those who do not read files: light, as it loads with every book. */
export { recipePart } from './recipe-references.ts';
export { recipe } from './recipe-shape.ts';
