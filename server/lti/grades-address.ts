/** Addresses of the grade services. They may carry a query (`…/lineitem?type_id=1`), which must stay at the end. */

/** The scores or results of a line item: the segment goes before the query. */
export function underLineItem(lineitem: string, segment: 'scores' | 'results'): string {
  const url = new URL(lineitem);
  url.pathname = `${url.pathname.replace(/\/$/, '')}/${segment}`;
  url.hash = '';
  return url.href;
}

/** The same address with one more query parameter; those it has are kept. */
export function withParameter(address: string, name: string, value: string): string {
  const url = new URL(address);
  url.searchParams.set(name, value);
  return url.href;
}
