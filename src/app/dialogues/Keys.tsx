import { commands } from '../commands/all.ts';
import { groups, labelOf } from '../commands/command.ts';
import { keysInWords } from '../commands/keys.ts';
import { usePage } from '../shell/context.ts';
import { Dialogue } from './Dialogue.tsx';

/** Keys that the grid answers itself, beside those of the commands. */
const gridKeys: readonly (readonly [keys: string, does: string])[] = [
  ['Arrows, Tab, Enter', 'Move'],
  ['Mod+Arrows', 'Move to the end of the sheet'],
  ['Shift+Arrows', 'Choose more cells'],
  ['Mod+A', 'Choose the whole sheet'],
  ['Mod+Enter', 'Put what is typed into all chosen cells'],
  ['Escape', 'Leave the cell as it was'],
];

/** All keys, from the list of commands. */
export function Keys({ close }: { close: () => void }) {
  const page = usePage();
  return (
    <Dialogue title="Keys" close={close} wide>
      <div class="keys">
        <section>
          <h3>In the sheet</h3>
          <dl>
            {gridKeys.map(([keys, does]) => (
              <div key={keys}>
                <dt>{does}</dt>
                <dd>
                  <kbd>{keys.split(', ').map(keysInWords).join(', ')}</kbd>
                </dd>
              </div>
            ))}
          </dl>
        </section>
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
