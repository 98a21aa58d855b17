/** Players that are kept have ids of this shape; the made-up ones, which are files, have no carries to add to. */
const KEPT = /^[0-9a-f]{8}-[0-9a-f-]{27}$/;

export const isKept = (id: string | undefined): id is string => id !== undefined && KEPT.test(id);
