/** `npm start`: serves the built workbench to this machine and prints where. PORT wishes for a port. */
import { fileURLToPath } from 'node:url';
import { serve } from './serve';

const wished = Number(process.env['PORT'] ?? 4180);
const { address, close } = await serve(fileURLToPath(new URL('../dist/web', import.meta.url)), wished);
console.log(`\nArchwright's workbench: ${address}\nStop with Ctrl+C.`);
for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => void close());
