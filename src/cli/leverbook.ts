import { registry } from '../../functions/registry.ts';

console.log([...registry.keys()].join('\n'));
