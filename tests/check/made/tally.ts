/** Counts in rows of a table, a row for each name. */
export class Tally {
  private readonly rows = new Map<string, Map<string, number>>();

  add(name: string, column: string): void {
    const row = this.rows.get(name) ?? new Map<string, number>();
    row.set(column, (row.get(column) ?? 0) + 1);
    this.rows.set(name, row);
  }

  print(columns: readonly string[]): void {
    const all = new Map<string, number>();
    const line = (name: string, row: ReadonlyMap<string, number>) =>
      console.log(`  ${name.padEnd(38)}${columns.map((one) => String(row.get(one) ?? 0).padStart(12)).join('')}`);
    console.log(`  ${''.padEnd(38)}${columns.map((one) => one.padStart(12)).join('')}`);
    for (const [name, row] of [...this.rows].sort()) {
      line(name, row);
      for (const [column, count] of row) all.set(column, (all.get(column) ?? 0) + count);
    }
    line('all', all);
  }
}
