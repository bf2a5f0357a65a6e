/** `npm run bench -- NAME [ARG…]` runs bench/NAME.ts; without a name, every bench. */
import { readdirSync } from 'node:fs';

const here = new URL('.', import.meta.url);
const names = readdirSync(here)
  .filter((file) => file.endsWith('.ts') && file !== 'run.ts')
  .map((file) => file.replace(/\.ts$/, ''));

async function main([name, ...args]: readonly string[]): Promise<void> {
  if (name !== undefined && !names.includes(name)) {
    console.error(`There is no bench "${name}". There are: ${names.join(', ')}.`);
    process.exitCode = 2;
    return;
  }
  for (const each of name === undefined ? names : [name]) {
    console.log(`\n── ${each}`);
    const bench = (await import(new URL(`${each}.ts`, here).href)) as { run: (args: readonly string[]) => unknown };
    await bench.run(args);
  }
}

await main(process.argv.slice(2));
