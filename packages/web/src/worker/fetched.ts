/** Where the worker's files come from: the JSON at an address, which the server has read and checked. */
export type Fetch = (url: string) => Promise<unknown>;

/** By the browser. */
export const fetchJson: Fetch = async (url) => {
  const response = await fetch(url);
  if (!response.ok) throw new Error(`the file at ${url} was not sent: status ${response.status}`);
  return response.json();
};
