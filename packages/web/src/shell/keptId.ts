/** Players that are kept have ids of this shape; the made-up ones, which are files, have nothing that could be added to. */
const KEPT = /^[0-9a-f]{8}-[0-9a-f-]{27}$/;

export const isKeptId = (id: string | undefined): id is string => id !== undefined && KEPT.test(id);
