import { z } from 'zod';

// Without this zod builds validators from text, which the page's content security policy forbids and reports.
z.config({ jitless: true });

export { z };
