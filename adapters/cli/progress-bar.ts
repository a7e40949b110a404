const WIDTH = 30;

/**
 * A bar for work in `total` pieces, on standard error: redrawn in place on a terminal, else a line each tenth.
 *
 * @returns Call it after each piece, with what it was.
 */
export function progressBar(total: number, err: (text: string) => void, isTty: boolean): (what: string) => void {
  let done = 0;
  return (what) => {
    done++;
    const tenth = Math.floor((done * 10) / total);
    const newTenth = tenth > Math.floor(((done - 1) * 10) / total);
    if (!isTty && !newTenth) return;
    const full = Math.round((done / total) * WIDTH);
    const bar = `[${'#'.repeat(full)}${'.'.repeat(WIDTH - full)}] ${done}/${total}`;
    if (!isTty) err(`${bar}\n`);
    else err(`\r${bar} ${what.padEnd(40).slice(0, 40)}${done === total ? '\n' : ''}`);
  };
}
