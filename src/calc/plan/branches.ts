import { type Issue, issue } from '../../../functions/core/issue.ts';
import { equalAt, found, readNumber, truthOf } from './coerce.ts';
import {
  BLOCK,
  constantNode,
  type Frame,
  fixedScalar,
  innerFrame,
  type ScalarNode,
  varyingScalar,
} from './plan-nodes.ts';
import { wrongCount, wrongType } from './problems.ts';
import { Tag, type Vector } from './vector.ts';

/** The branch that each row takes, and the errors of rows that take none (`ERROR`). */
interface Choice {
  readonly pick: Int16Array;
  readonly errors: (Issue | undefined)[];
}
const ERROR = -1;

/**
 * A value out of several: `choose` says which in each row, and only the rows that take a branch compute it. A branch that
 * every row of the block takes is handed through as it is.
 */
function branching(
  deciding: readonly ScalarNode[],
  branches: readonly ScalarNode[],
  choose: (vectors: readonly Vector[], n: number, choice: Choice) => void,
): ScalarNode {
  const choice: Choice = { pick: new Int16Array(BLOCK), errors: [] };
  const mix = (frame: Frame, out: Vector): Vector => {
    const n = frame.count;
    choose(
      deciding.map((node) => node.vector(frame)),
      n,
      choice,
    );
    const { pick, errors } = choice;
    const first = pick[0]!;
    let alike = first !== ERROR;
    for (let i = 1; alike && i < n; i++) alike = pick[i] === first;
    if (alike) return branches[first]!.vector(frame);
    out.mixed();
    let numbers = true;
    for (let i = 0; i < n; i++)
      if (pick[i] === ERROR) {
        out.setError(i, errors[i]!);
        numbers = false;
      }
    for (let b = 0; b < branches.length; b++)
      if (!fillBranch(branches[b]!, b, pick, frame, out)) numbers = false;
    if (numbers) out.allNumbers(n);
    return out;
  };
  if ([...deciding, ...branches].every((node) => !node.varies))
    return fixedScalar((frame, out) => {
      const vector = mix(frame, out);
      if (vector !== out) out.copy(0, vector, 0);
    });
  const scratch = varyingScalar(() => undefined);
  return {
    is: 'scalar',
    varies: true,
    written: 'value',
    vector: (frame) => mix(frame, scratch.vector(frame)),
  };
}

/** Writes the rows that take branch b; false when one of them is no plain number. */
function fillBranch(branch: ScalarNode, b: number, pick: Int16Array, frame: Frame, out: Vector): boolean {
  const n = frame.count;
  let taken = 0;
  for (let i = 0; i < n; i++) if (pick[i] === b) taken++;
  if (taken === 0) return true;
  if (!branch.varies || branch.written === 'reference') {
    const vector = branch.vector(frame);
    const { single, plain } = vector;
    for (let i = 0; i < n; i++) {
      if (pick[i] !== b) continue;
      if (plain) {
        out.numbers[i] = vector.numbers[single ? 0 : i]!;
        out.tags[i] = Tag.number;
      } else out.copy(i, vector, single ? 0 : i);
    }
    return plain;
  }
  const which = new Int32Array(taken);
  let k = 0;
  for (let i = 0; i < n; i++) if (pick[i] === b) which[k++] = i;
  const vector = branch.vector(innerFrame(frame, which, taken));
  for (let j = 0; j < taken; j++) out.copy(which[j]!, vector, vector.single ? 0 : j);
  return vector.plain;
}

const placeIn = (vector: Vector, i: number): number => (vector.single ? 0 : i);

/** Reads a condition: 1, 0, or ERROR with the reason. */
function condition(vector: Vector, i: number, { errors }: Choice, at: number): number {
  const truth = truthOf(vector, placeIn(vector, i));
  if (truth >= 0) return truth;
  errors[at] = truth === -1 ? wrongType : vector.errorAt(placeIn(vector, i));
  return ERROR;
}

/** Makes the node of a function that takes one of its arguments. */
export type Choose = (args: readonly ScalarNode[]) => ScalarNode;

const ifNode: Choose = (args) => {
  if (args.length < 2 || args.length > 3) return constantNode(wrongCount);
  const [test, yes, no = constantNode(false)] = args;
  return branching([test!], [yes!, no], ([tests], n, choice) => {
    const { pick } = choice;
    if ((tests!.plain || tests!.decided) && !tests!.single) {
      const { numbers } = tests!;
      for (let i = 0; i < n; i++) pick[i] = numbers[i] !== 0 ? 0 : 1;
      return;
    }
    for (let i = 0; i < n; i++) {
      const truth = condition(tests!, i, choice, i);
      pick[i] = truth === ERROR ? ERROR : 1 - truth;
    }
  });
};

const builtIn = (code: Issue['code'], name: string, message: string): Issue =>
  issue(code, 'built-in', { function: name, details: { message } });
const noCondition = builtIn('#N/A', 'IFS', 'None of the conditions were met.');
const noDefault = builtIn('#N/A', 'SWITCH', 'No default option.');
const badSelector = builtIn('#NUM!', 'CHOOSE', 'Selector cannot exceed the number of arguments.');
const tooSmall = builtIn('#NUM!', 'CHOOSE', 'Value too small.');
const notWhole = builtIn('#NUM!', 'CHOOSE', 'Value needs to be an integer.');

// every condition is read before the first that holds is taken: an error in a later one is an error
const ifsNode: Choose = (args) => {
  if (args.length === 0 || args.length % 2 === 1) return constantNode(wrongCount);
  const tests = args.filter((_, k) => k % 2 === 0);
  const values = args.filter((_, k) => k % 2 === 1);
  return branching(tests, values, (vectors, n, choice) => {
    const { pick, errors } = choice;
    for (let i = 0; i < n; i++) {
      let found = -2;
      for (let k = 0; k < vectors.length && found !== ERROR; k++) {
        const truth = condition(vectors[k]!, i, choice, i);
        if (truth === ERROR) found = ERROR;
        else if (truth === 1 && found === -2) found = k;
      }
      if (found === -2) errors[i] = noCondition;
      pick[i] = Math.max(found, ERROR);
    }
  });
};

const switchNode: Choose = (args) => {
  if (args.length < 3) return constantNode(wrongCount);
  const [selector, ...rest] = args;
  const pairs = Math.floor(rest.length / 2);
  const cases = rest.filter((_, k) => k < pairs * 2 && k % 2 === 0);
  const values = rest.filter((_, k) => k < pairs * 2 && k % 2 === 1);
  if (rest.length % 2 === 1) values.push(rest[rest.length - 1]!);
  return branching([selector!, ...cases], values, ([chosen, ...vectors], n, { pick, errors }) => {
    for (let i = 0; i < n; i++) {
      const at = placeIn(chosen!, i);
      if (chosen!.tags[at] === Tag.error) {
        pick[i] = ERROR;
        errors[i] = chosen!.errorAt(at);
        continue;
      }
      let k = 0;
      while (k < vectors.length) {
        const j = placeIn(vectors[k]!, i);
        if (vectors[k]!.tags[j] !== Tag.error && equalAt(chosen!, at, vectors[k]!, j)) break;
        k++;
      }
      pick[i] = k < values.length ? k : ERROR;
      if (k >= values.length) errors[i] = noDefault;
    }
  });
};

const chooseNode: Choose = (args) => {
  if (args.length < 2) return constantNode(wrongCount);
  const [selector, ...values] = args;
  return branching([selector!], values, ([chosen], n, { pick, errors }) => {
    for (let i = 0; i < n; i++) {
      pick[i] = ERROR;
      if (!readNumber(chosen!, placeIn(chosen!, i))) errors[i] = found.error;
      else if (found.value < 1) errors[i] = tooSmall;
      else if (!Number.isInteger(found.value)) errors[i] = notWhole;
      else if (found.value > values.length) errors[i] = badSelector;
      else pick[i] = found.value - 1;
    }
  });
};

const otherwise =
  (applies: (error: Issue) => boolean): Choose =>
  (args) => {
    if (args.length !== 2) return constantNode(wrongCount);
    const [value, instead] = args;
    const kept = onceAFrame(value!);
    return branching([kept], [kept, instead!], ([vector], n, { pick }) => {
      for (let i = 0; i < n; i++) {
        const at = placeIn(vector!, i);
        pick[i] = vector!.tags[at] === Tag.error && applies(vector!.errorAt(at)) ? 1 : 0;
      }
    });
  };

/** A value that decides and is then taken itself: computed once a frame. */
function onceAFrame(node: ScalarNode): ScalarNode {
  let id = 0;
  let vector: Vector | undefined;
  return {
    ...node,
    written: 'reference',
    vector(frame) {
      if (!vector || frame.id !== id) {
        vector = node.vector(frame);
        id = frame.id;
      }
      return vector;
    },
  };
}

/** Functions that take one of their arguments; the others are not computed where they are not needed. */
export const choices = {
  byCondition: ifNode,
  byConditions: ifsNode,
  byValue: switchNode,
  byNumber: chooseNode,
  unlessError: otherwise(() => true),
  unlessMissing: otherwise((error) => error.code === '#N/A'),
} as const;
