/** A share from 0 to 1 as it is read: '35 %'. */
export function percent(share: number): string {
  return `${Math.round(share * 100)} %`;
}
