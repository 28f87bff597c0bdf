import { commands } from '../commands/all.ts';
import { groups, labelOf } from '../commands/command.ts';
import { usePage } from '../state/context.ts';
import { keysInWords } from '../state/keys.ts';
import { Dialogue } from './Dialogue.tsx';

/** Keys that the grid answers itself, beside those of the commands. */
const gridKeys: readonly (readonly [keys: string, does: string])[] = [
  ['Arrows, Tab, Enter', 'Move'],
  ['Mod+Arrows', 'Move to the end of the sheet'],
  ['Shift+Arrows', 'Extend the selection'],
  ['Mod+A', 'Select the whole sheet'],
  ['Mod+Enter', 'Fill selected cells'],
  ['=', 'Start a formula in the cell'],
  ['Escape', 'Cancel the edit'],
];

/** Keys of the formula editor, in the cell and in the line above the sheet. */
const formulaKeys: readonly (readonly [keys: string, does: string])[] = [
  ['Arrows', 'Pick a cell for the formula'],
  ['Shift+Arrows', 'Pick a range for the formula'],
  ['F2', 'Switch between the line above the sheet and the cell'],
  ['Tab, Enter', 'Accept the suggestion, or enter the formula'],
  ['Shift+Tab, Shift+Enter', 'Enter the formula and move back'],
  ['Alt+Enter', 'Start a new line'],
  ['Escape', 'Close the list, or cancel the edit'],
];

/** All keys, from the list of commands. */
export function KeyList({ close }: { close: () => void }) {
  const page = usePage();
  return (
    <Dialogue title="Keys" close={close} wide>
      <div class="keys">
        <Listed title="In the sheet" list={gridKeys} />
        <Listed title="In a formula" list={formulaKeys} />
        {groups.map((group) => {
          const list = commands.filter((one) => one.group === group && one.keys);
          return (
            list.length > 0 && (
              <section key={group}>
                <h3>{group}</h3>
                <dl>
                  {list.map((one) => (
                    <div key={one.id}>
                      <dt>{labelOf(one, page)}</dt>
                      <dd>
                        {one.keys?.map((keys) => (
                          <kbd key={keys}>{keysInWords(keys)}</kbd>
                        ))}
                      </dd>
                    </div>
                  ))}
                </dl>
              </section>
            )
          );
        })}
      </div>
    </Dialogue>
  );
}

function Listed({ title, list }: { title: string; list: typeof gridKeys }) {
  return (
    <section>
      <h3>{title}</h3>
      <dl>
        {list.map(([keys, does]) => (
          <div key={keys}>
            <dt>{does}</dt>
            <dd>
              <kbd>{keys.split(', ').map(keysInWords).join(', ')}</kbd>
            </dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
