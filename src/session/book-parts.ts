/** Every kind of record that a book keeps: whoever adds one adds it here. */

import type { AnyPart } from '../book/references/part.ts';
import { recipePart } from '../intake/import-settings/api.ts';
import { chartPart } from './charts/chart-references.ts';
import { acceptedPart } from './checks/doubts.ts';
import { doubtsPart } from './checks/doubts-data.ts';
import { figurePart } from './figure/figure-lifter.ts';
import { handoutPart } from './handouts/handout-references.ts';
import { provenancePart } from './imports/imports.ts';
import { marksPart } from './marks/mark-references.ts';
import { picturePart } from './picture/copy.ts';
import { reportPart } from './report/report-references.ts';
import { localePart } from './settings.ts';
import { viewPart } from './sheet/sheet-view.ts';

export const bookParts = [
  chartPart,
  handoutPart,
  reportPart,
  figurePart,
  recipePart,
  provenancePart,
  marksPart,
  viewPart,
  acceptedPart,
  doubtsPart,
  picturePart,
  localePart,
] as readonly unknown[] as readonly AnyPart[];
