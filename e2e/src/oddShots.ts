/** A made-up file of shots as a range's screen might write it: headings of its own, semicolons, decimal commas, a broken cell, a row of averages. */
export function oddShots(): string {
  const clubs = [
    ['driver', 215, 15],
    ['3-wood', 196, 12],
    ['5-hybrid', 176, 9],
    ['7-iron', 147, 7],
    ['9-iron', 124, 6],
    ['PW', 110, 5],
  ] as const;
  const rows = clubs.flatMap(([club, carry, spread]) =>
    Array.from({ length: 12 }, (_, i) => {
      const out = carry + spread * Math.sin(5 * i + carry) * 0.8;
      const side = spread * Math.sin(3 * i + 1.7 * carry);
      return `2026-05-14;${club};${out.toFixed(1)};${side.toFixed(1)};${i === 2 ? 'into a breeze' : ''}`;
    }),
  );
  rows[4] = '2026-05-14;driver;21o;3.0;';
  rows.push(';average;160.0;;');
  return `When;Stick;Flew (yd);Off line;Remark\n${rows.join('\n').replaceAll(/(\d)\.(\d)/g, '$1,$2')}\n`;
}
