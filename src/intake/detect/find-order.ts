import type { Choices, Clock, DateOrder, Finding } from '../api.ts';
import { note } from '../sentences/index.ts';
import type { FileHabits } from './find-marks.ts';
import type { HeadingReading } from './heading.ts';
import type { ColumnLook } from './look.ts';

/** The order of day, month and year, from the whole column. */
export function findDateOrder(
  look: ColumnLook,
  said: HeadingReading,
  habits: FileHabits,
  choices: Choices,
): Finding<DateOrder> {
  if (choices.dateOrder) return { value: choices.dateOrder, certainty: 'sure', because: note('chosen') };
  const dmy = look.dates.of('dmy');
  const mdy = look.dates.of('mdy');
  const open = look.dates.of('open');
  const dotted = look.dates.of('dotted');
  const others: readonly DateOrder[] = ['dmy', 'mdy'];
  if (dmy > 0 && mdy > 0) {
    const value = dmy >= mdy ? 'dmy' : 'mdy';
    return {
      value,
      certainty: 'doubtful',
      because: note('date-order-mixed', {
        dmy: look.dates.example('dmy')!,
        mdy: look.dates.example('mdy')!,
        order: value,
      }),
      others,
    };
  }
  if (dmy > 0 || mdy > 0) {
    const value = dmy > 0 ? 'dmy' : 'mdy';
    return {
      value,
      certainty: 'sure',
      because: note('date-order-proven', { example: look.dates.example(value)!, order: value }),
      others,
    };
  }
  if (said.dateOrder)
    return { value: said.dateOrder, certainty: 'sure', because: note('clock-said', { word: said.word! }) };
  if (open > 0) {
    const value = habits.dateOrder ?? 'dmy';
    return {
      value,
      certainty: habits.dateOrder ? 'likely' : 'doubtful',
      because: note('date-order-open', { example: look.dates.example('open')!, order: value }),
      others,
    };
  }
  const example = look.dates.example('self', 'dotted') ?? look.examples[0] ?? '';
  return {
    value: dotted > 0 ? 'dmy' : 'ymd',
    certainty: 'sure',
    because: note('date-order-written', { example }),
  };
}

/** Whether 1:15 is hours and minutes or minutes and seconds. */
export function findClock(look: ColumnLook, said: HeadingReading): Finding<Clock> {
  const others: readonly Clock[] = ['h:mm', 'm:ss'];
  if (said.clock)
    return {
      value: said.clock,
      certainty: 'sure',
      because: note('clock-said', { word: said.word! }),
      others,
    };
  const proven = (value: Clock, way: 'm:ss' | 'h:mm' | 'three parts'): Finding<Clock> => ({
    value,
    certainty: 'likely',
    because: note('clock-proven', { example: look.durations.example(way)!, clock: value }),
    others,
  });
  if (look.durations.of('m:ss') > 0) return proven('m:ss', 'm:ss');
  const open = look.durations.of('open');
  if (open > 0)
    return {
      value: 'h:mm',
      certainty: 'doubtful',
      because: note('clock-open', { example: look.durations.example('open')!, clock: 'h:mm' }),
      others,
    };
  return proven('h:mm', 'three parts');
}
